/** The watched cells as the book keeps them and as tried, and what the difference is. */

import { useEffect, useRef } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { shownChange } from "../../engine/apart.ts";
import { isUnsure, laidSign, laidText } from "../../engine/laid.ts";
import { answerText } from "../../engine/sentences.ts";
import type { Watched } from "../../engine/sweep.ts";
import type { CellView } from "../../engine/view.ts";
import type { Store } from "../../store/store.ts";
import { handOn } from "../keyboard.ts";
import { useSaid } from "../spoken.ts";
import { Choose } from "./Choose.tsx";
import { keyOf } from "./choices.ts";

interface Props {
  readonly store: Store;
  readonly watched: readonly Watched[];
  readonly following: readonly Watched[];
  readonly most: number;
  readonly onWatched: (watched: readonly Watched[]) => void;
}

export function WatchTable({ store, watched, following, most, onWatched }: Props) {
  const { book, engine } = store;
  // What the cells held before anything was tried.
  const before = useRef<ReadonlyMap<string, CellView>>(new Map());
  useEffect(() => {
    if (!store.trying) {
      before.current = new Map(following.map((one) => [keyOf(book, one.place), engine.view(one.place)]));
    }
  });
  const spoken = useSaid(
    store.trying
      ? watched
          .map((one) => {
            const kept = before.current.get(keyOf(book, one.place));
            const { after, change } = inWords(store, one, kept, engine.view(one.place));
            return change && change !== "none" ? `${one.label} ${after}, ${change}` : `${one.label} ${after}`;
          })
          .join("; ")
      : "",
  );
  const rest = following.filter((one) => !watched.some(({ label }) => label === one.label));
  return (
    <div className="watch">
      <p className="unseen" role="status">
        {spoken}
      </p>
      {watched.length > 0 && (
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">{phrase`Watched`}</th>
              <th scope="col">{phrase`Now`}</th>
              <th scope="col">{phrase`Preview`}</th>
              <th scope="col">{phrase`Change`}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {watched.map((one) => {
              const now = engine.view(one.place);
              const kept = store.trying ? before.current.get(keyOf(book, one.place)) : now;
              const words = inWords(store, one, kept, now);
              return (
                <tr key={one.label}>
                  <th scope="row">{one.label}</th>
                  <td title={kept?.origin ? laidText(kept.origin) : undefined}>
                    {kept ? withSign(kept, words.before) : words.before}
                  </td>
                  <td
                    className={now.problem ? "look" : undefined}
                    title={now.problem?.sentence ?? (now.origin ? laidText(now.origin) : undefined)}
                  >
                    {store.trying ? withSign(now, words.after) : words.after}
                  </td>
                  <td>{words.change}</td>
                  <td>
                    <button
                      type="button"
                      className="quiet"
                      onClick={() => {
                        handOn(".watch");
                        onWatched(watched.filter((other) => other !== one));
                      }}
                    >
                      <span aria-hidden="true">×</span>
                      <span className="unseen">{phrase`Stop watching ${one.label}`}</span>
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {following.length === 0 && (
        <p className="empty">{phrase`No named cell depends on this one. Give a calculated cell a name to watch it here.`}</p>
      )}
      {rest.length > 0 && watched.length < most && (
        <Choose
          book={book}
          label={phrase`Watch`}
          of={rest}
          value=""
          none={watched.length === 0 ? phrase`choose a cell` : phrase`another cell`}
          onChoose={(key) => {
            const one = rest.find((other) => keyOf(book, other.place) === key);
            handOn(".watch");
            if (one) onWatched([...watched, one]);
          }}
        />
      )}
    </div>
  );
}

/** The cell as kept, as tried and what it gained, on a mark at which the three agree. */
function inWords(store: Store, { kind }: Watched, kept: CellView | undefined, now: CellView) {
  if (!kept || !store.trying) return { before: kept?.shown ?? "–", after: "–", change: "" };
  if (typeof kept.value !== "number" || typeof now.value !== "number") {
    return { before: kept.shown, after: answerText(now), change: kept.shown === now.shown ? "none" : "" };
  }
  const words = shownChange(kept.value, now.value, kind, store.book);
  const unsure = isUnsure(kept.value, now.value, [kept.origin, now.origin]);
  return unsure && words.change !== "none" ? { ...words, change: phrase`${words.change} (unsure)` } : words;
}

/** A laid length with the sign of its lay. */
const withSign = ({ origin, problem }: CellView, text: string): string =>
  origin && !problem ? `${laidSign(origin)} ${text}` : text;
