/** Below the drawing of a lay: the search for one that takes less cloth. */

import { useLayoutEffect, useRef, useState, useSyncExternalStore } from "react";
import { unclearFigure } from "../../../functions/decimal.ts";
import { readTape } from "../../../functions/fractions.ts";
import type { Lay, Placement } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { BOOK_UNITS } from "../../../functions/units.ts";
import type { Asked } from "../../engine/lays-asked.ts";
import { lengthText, show } from "../../engine/show.ts";
import type { Store } from "../../store/store.ts";
import { handOn } from "../keyboard.ts";
import { backgroundOf } from "./background.ts";
import { onSearchesByItself, searchesByItself, setSearchesByItself } from "./by-itself.ts";
import { type Session, sessionOf } from "./search-session.ts";

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

/** An example of a length to stop at, as a share of the lay that is there. */
const SHORTER = 0.95;

const SECONDS = [10, 30, 60, 300];
const timeText = (seconds: number): string =>
  seconds < 60 ? phrase`${seconds} s` : phrase`${seconds / 60} min`;

export function LaySearch({ store, asked, cell, pinned, start, onBegin }: Props) {
  const session = sessionOf(store);
  const searching = useSyncExternalStore(session.subscribe, session.state);
  const [seconds, setSeconds] = useState(10);
  const [enough, setEnough] = useState("");
  const { unit, decimal } = store.shown;
  const say = (length: number) => lengthText(length, store.shown);
  const figure = (length: number) => show(length, "length", store.shown);
  const limit = enough.trim() === "" ? null : readTape(enough, unit, decimal);
  const wrong = enough.trim() !== "" && !limit;
  const here = searching.hash === asked.hash;

  if (searching.running) {
    return (
      <div className="lay-search">
        <label className="lay-progress">
          {here ? phrase`Looking for a better lay` : phrase`Looking for a better lay of ${searching.cell}`}
          <progress value={searching.progress} max={1} />
        </label>
        <span>{phrase`${say(searching.now)}, ${percent(searching.density)} of the cloth covered`}</span>
        <StopKey onStop={() => session.stop()} />
      </div>
    );
  }
  return (
    <div className="lay-search">
      <button
        type="button"
        disabled={wrong}
        onClick={() => {
          handOn(".lay-search");
          session.begin({ asked, cell, seconds, enough: limit?.length ?? null, pinned, start });
          onBegin();
        }}
      >
        {pinned.length > 0 ? phrase`Look for a better lay of the rest` : phrase`Look for a better lay`}
      </button>
      <label>
        <span>{phrase`for`}</span>
        <select value={seconds} onChange={(event) => setSeconds(Number(event.target.value))}>
          {SECONDS.map((one) => (
            <option key={one} value={one}>
              {timeText(one)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{phrase`or stop at`}</span>
        <input
          className="lay-enough"
          value={enough}
          placeholder={phrase`such as ${figure(SHORTER * Math.max(...start.lengths))}`}
          aria-label={phrase`Good enough: stop at this length`}
          aria-invalid={wrong}
          onChange={(event) => setEnough(event.target.value)}
        />
      </label>
      <ByItself store={store} hash={asked.hash} />
      <p role="status" className="lay-state">
        {wrong
          ? (unclearFigure(enough, decimal ?? "point") ??
            phrase`good enough must be a length such as ${BOOK_UNITS[unit].cloth} or ${figure(SHORTER * Math.max(...start.lengths))}, not "${enough.slice(0, 24)}"`)
          : here && searching.ending !== null && toldOf(searching, say)}
      </p>
      {here && searching.trouble && <p className="look">{searching.trouble}</p>}
    </div>
  );
}

/** Ends the search. The search may end by itself, and the keyboard then goes to the button that begins another. */
function StopKey({ onStop }: { onStop: () => void }) {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const own = button.current;
    return () => {
      if (document.activeElement === own) handOn(".lay-board");
    };
  }, []);
  return <button ref={button} type="button" onClick={onStop}>{phrase`Stop here`}</button>;
}

/** Whether lays are searched for without being asked for, and whether that goes on for this one. */
function ByItself({ store, hash }: { store: Store; hash: string }) {
  const background = backgroundOf(store);
  const { is, hash: now, seconds } = useSyncExternalStore(background.subscribe, background.state);
  const on = useSyncExternalStore(onSearchesByItself, searchesByItself);
  return (
    <span className="lay-by-itself">
      <label>
        <input type="checkbox" checked={on} onChange={(event) => setSearchesByItself(event.target.checked)} />
        <span>{phrase`Search automatically`}</span>
      </label>
      {/* It keeps its width, or what is beside it would move under the pointer. */}
      <span className="lay-so-far" aria-live="off">
        {on && now === hash && is !== "idle" && phrase`${Math.floor(seconds)} s so far`}
      </span>
    </span>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function toldOf({ before, now, ending, apart }: Session, say: (length: number) => string): string {
  const proved = ending === "best" ? phrase`No lay can be shorter.` : "";
  if (before - now <= 1e-6 * before) {
    return proved || phrase`No better lay was found this time; a longer search may find one.`;
  }
  const found = phrase`Found ${say(now)} where ${say(before)} was needed.`;
  const enough = ending === "enough" ? phrase`That is good enough.` : "";
  const kept = apart ? phrase`The book keeps its own lay, which is no longer.` : phrase`The book keeps it.`;
  return [found, enough, proved, kept].filter((sentence) => sentence !== "").join(" ");
}
