/** Below the drawing of a lay: the search for one that takes less cloth. */
import { useState, useSyncExternalStore } from "react";
import { readTape, tapeText } from "../../../functions/fractions.ts";
import type { Asked } from "../../engine/question.ts";
import { isFound } from "../../lay/desk.ts";
import type { Store } from "../../store/store.ts";
import { type Hunting, huntOf } from "./hunt.ts";

interface Props {
  readonly store: Store;
  readonly asked: Asked;
  /** The cell, as it is called. */
  readonly cell: string;
}

const SECONDS = [10, 30, 60, 300];
const timeText = (seconds: number): string =>
  seconds < 60 ? `${seconds} seconds` : seconds === 60 ? "1 minute" : `${seconds / 60} minutes`;

export function LaySearch({ store, asked, cell }: Props) {
  const hunt = huntOf(store);
  const hunting = useSyncExternalStore(hunt.subscribe, hunt.state);
  const [seconds, setSeconds] = useState(10);
  const [enough, setEnough] = useState("");
  const { unit, mark } = store.shown;
  const say = (length: number) => `${tapeText(length, unit, mark)} ${unit}`;
  const limit = enough.trim() === "" ? null : readTape(enough, unit);
  const wrong = enough.trim() !== "" && !limit;
  const here = hunting.hash === asked.hash;

  if (hunting.running) {
    return (
      <div className="lay-search">
        <label className="lay-progress">
          {here ? "Looking for a better lay" : `Looking for a better lay of ${hunting.cell}`}
          <progress value={hunting.progress} max={1} />
        </label>
        <span>
          {say(hunting.now)}, {percent(hunting.density)} of the cloth covered
        </span>
        <button type="button" onClick={() => hunt.stop()}>
          Stop here
        </button>
      </div>
    );
  }
  return (
    <div className="lay-search">
      <button
        type="button"
        disabled={wrong}
        onClick={() => hunt.begin(asked, cell, seconds, limit?.length ?? null)}
      >
        Look for a better lay
      </button>
      <label>
        <span>for</span>
        <select value={seconds} onChange={(event) => setSeconds(Number(event.target.value))}>
          {SECONDS.map((one) => (
            <option key={one} value={one}>
              {timeText(one)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>good enough at</span>
        <input
          className="lay-enough"
          value={enough}
          placeholder="any length"
          aria-invalid={wrong}
          onChange={(event) => setEnough(event.target.value)}
        />
      </label>
      <p role="status" className="lay-told">
        {wrong
          ? `good enough must be a length such as 2 yd or 40 1/2, not "${enough.slice(0, 24)}"`
          : here
            ? toldOf(hunting, say)
            : isFound(asked.question, store.shown.lays)
              ? "This is the best lay found so far; the book keeps it."
              : "This is a quick lay, made at once."}
      </p>
      {here && hunting.trouble && <p className="look">{hunting.trouble}</p>}
    </div>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function toldOf({ before, now, ending }: Hunting, say: (length: number) => string): string {
  const saved = before - now;
  const proved = ending === "best" ? " No lay can be shorter." : "";
  if (saved <= 1e-6 * before) {
    return `${proved ? "" : "No better lay was found this time; a longer search may find one."}${proved}`.trim();
  }
  const enough = ending === "enough" ? " That is good enough." : "";
  return `Found ${say(now)} where ${say(before)} was needed: ${say(saved)} less.${enough}${proved} The book keeps it.`;
}
