/** Below the drawing of a lay: the search for one that takes less cloth. */
import { useState, useSyncExternalStore } from "react";
import { readTape, tapeText } from "../../../functions/fractions.ts";
import type { Lay, Placement } from "../../../functions/lay.ts";
import type { Asked } from "../../engine/question.ts";
import type { Store } from "../../store/store.ts";
import { type Hunting, huntOf } from "./hunt.ts";

interface Props {
  readonly store: Store;
  readonly asked: Asked;
  /** The cell, as it is called. */
  readonly cell: string;
  /** Copies that stay where they lie, and the lay they are of. */
  readonly pinned: readonly Placement[];
  readonly start: Lay;
  readonly onBegin: () => void;
}

const SECONDS = [10, 30, 60, 300];
const timeText = (seconds: number): string => (seconds < 60 ? `${seconds} s` : `${seconds / 60} min`);

export function LaySearch({ store, asked, cell, pinned, start, onBegin }: Props) {
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
        onClick={() => {
          hunt.begin({ asked, cell, seconds, enough: limit?.length ?? null, pinned, start });
          onBegin();
        }}
      >
        {pinned.length > 0 ? "Look for a better lay of the rest" : "Look for a better lay"}
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
        <span>or until</span>
        <input
          className="lay-enough"
          value={enough}
          placeholder="40 1/2"
          aria-label="Good enough: stop at this length"
          aria-invalid={wrong}
          onChange={(event) => setEnough(event.target.value)}
        />
      </label>
      <p role="status" className="lay-told">
        {wrong
          ? `good enough must be a length such as 2 yd or 40 1/2, not "${enough.slice(0, 24)}"`
          : here && hunting.ending !== null && toldOf(hunting, say)}
      </p>
      {here && hunting.trouble && <p className="look">{hunting.trouble}</p>}
    </div>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function toldOf({ before, now, ending, apart }: Hunting, say: (length: number) => string): string {
  const proved = ending === "best" ? " No lay can be shorter." : "";
  if (before - now <= 1e-6 * before) {
    return proved.trim() || "No better lay was found this time; a longer search may find one.";
  }
  const kept = apart ? "The book keeps its own lay, which is no longer." : "The book keeps it.";
  const enough = ending === "enough" ? " That is good enough." : "";
  return `Found ${say(now)} where ${say(before)} was needed.${enough}${proved} ${kept}`;
}
