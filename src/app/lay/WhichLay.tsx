/** Which lay of a cell is shown, where its pieces are shared out between several: on the cloth in stock, and on cloth to buy. */
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Answered } from "./asked.ts";

interface Props {
  readonly all: readonly Answered[];
  readonly shown: Answered;
  /** The cloth of a lay in words. */
  readonly clothOf: (asked: Answered) => string;
  readonly onShow: (hash: string) => void;
}

export function WhichLay({ all, shown, clothOf, onShow }: Props) {
  if (all.length < 2) return null;
  return (
    <label className="lay-which">
      <span>{phrase`Show the lay on`}</span>{" "}
      <select value={shown.hash} onChange={(event) => onShow(event.target.value)}>
        {all.map((one) => (
          <option key={one.hash} value={one.hash}>
            {phrase`${clothOf(one)}: ${plural(one.lay.placements.length, "# piece", "# pieces")}`}
          </option>
        ))}
      </select>
    </label>
  );
}
