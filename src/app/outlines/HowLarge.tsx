/** The question how large the drawing is: as its file says, or by one length that is known. */

import { useId } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Found } from "../../exchange/outlines/find-pieces.ts";
import { knownThings, type Sizing } from "./sizing.ts";

interface Props {
  readonly found: Found;
  readonly names: readonly string[];
  readonly sizing: Sizing;
  readonly onSizing: (change: Partial<Sizing>) => void;
  /** What is still wanted, in a sentence. */
  readonly wanted: string | null;
}

export function HowLarge({ found, names, sizing, onSizing, wanted }: Props) {
  const id = useId();
  const isKnown = found.millimetres !== null;
  return (
    <fieldset className="outlines-large">
      <legend>{phrase`How large is it?`}</legend>
      <label>
        <input
          type="radio"
          name={id}
          checked={sizing.by === "file"}
          disabled={!isKnown}
          onChange={() => onSizing({ by: "file" })}
        />
        {phrase` As the file says. `}
        <span className="aside">{found.size}</span>
      </label>
      <label>
        <input
          type="radio"
          name={id}
          checked={sizing.by === "known"}
          onChange={() => onSizing({ by: "known" })}
        />
        {phrase` I know a length. `}
        <span className="aside">{phrase`Press an edge in a drawing, or choose it here.`}</span>
      </label>
      {sizing.by === "known" && (
        <div className="outlines-known">
          <label>
            <span>{phrase`This is`}</span>
            <select value={sizing.what} onChange={(event) => onSizing({ what: event.target.value })}>
              {knownThings(found, names).map(({ value, words }) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>{phrase`Its true length`}</span>
            <input
              value={sizing.typed}
              inputMode="text"
              autoComplete="off"
              placeholder={phrase`such as 40 cm`}
              aria-invalid={wanted !== null && sizing.typed.trim() !== ""}
              aria-describedby={`${id}-wanted`}
              onChange={(event) => onSizing({ typed: event.target.value })}
            />
          </label>
        </div>
      )}
      <p
        id={`${id}-wanted`}
        role="status"
        className={wanted && sizing.typed.trim() !== "" ? "look" : "aside"}
      >
        {wanted}
      </p>
    </fieldset>
  );
}
