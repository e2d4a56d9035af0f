/** Which measurements a result hangs on most: measure those twice. */

import { useMemo, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { type Effect, measuringErrorOf } from "../../engine/sensitivity.ts";
import { show } from "../../engine/show.ts";
import type { Watched } from "../../engine/sweep.ts";
import { figureText } from "../../engine/varied-cell.ts";
import type { Asking } from "./asking.ts";
import { Calculating } from "./Calculating.tsx";
import { Choose } from "./Choose.tsx";
import { keyOf, spoken, watchChoices } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { LaidNote } from "./LaidNote.tsx";
import { useAnswer } from "./useAnswer.ts";

export function Matters({ store, place, client }: Asking) {
  const book = useEditedBook(store);
  const [key, setKey] = useState("");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the engine follows the book
  const results = useMemo(
    () => watchChoices(store.engine, place).filter(({ kind }) => kind !== "verdict" && kind !== "flag"),
    [book, place],
  );
  const chosen = results.find((one) => keyOf(book, one.place) === (key || keyOf(book, place)));
  const answer = useAnswer({ store, client }, chosen ? { is: "sensitivity", watched: chosen } : null);
  const { effects, busy, problem, laid, refining } = answer;
  const telling = (effects ?? []).filter(({ weight }) => weight > 0);
  const idle = (effects ?? []).length - telling.length;
  const most = Math.max(0, ...telling.map(({ weight }) => (Number.isFinite(weight) ? weight : 0)));
  return (
    <div className="matters">
      <Choose
        book={book}
        label={phrase`Result`}
        of={results}
        value={key}
        none={phrase`the selected cell`}
        onChoose={setKey}
      />
      {!chosen && (
        <p className="empty">{phrase`Select a calculated cell in the grid, or choose one from this list.`}</p>
      )}
      {problem && (
        <p className="look" role="alert">
          {problem}
        </p>
      )}
      <Calculating answer={answer} late />
      <div role="status" aria-busy={busy}>
        {effects && <LaidNote laid={laid} refining={refining} decimal={book.decimal} />}
        {chosen && effects && (
          <p className="aside">
            {effects.length === 0
              ? phrase`No measurement affects ${chosen.label}.`
              : phrase`How much ${chosen.label} changes when each measurement is ${figureText(book, "length", measuringErrorOf(book))} ${book.unit} off. Measure the first ones twice.`}
          </p>
        )}
      </div>
      {chosen && effects && (
        <ol className="bars">
          {telling.map((effect) => (
            <li key={effect.measurement.label}>
              <span className="bar-name">{spoken(book, effect.measurement)}</span>
              <span className="bar-words">{wordsOf(effect, chosen, book)}</span>
              <span className="bar-track" aria-hidden="true">
                <span className="bar" style={{ width: `${lengthOf(effect, most)}%` }} />
              </span>
            </li>
          ))}
        </ol>
      )}
      {chosen && idle > 0 && (
        <p className="aside">
          {phrase`${plural(idle, "One more length has", "# more lengths have")} no effect at present.`}
        </p>
      )}
    </div>
  );
}

const lengthOf = ({ weight }: Effect, most: number): number =>
  Number.isFinite(weight) ? (most > 0 ? (100 * weight) / most : 0) : 100;

function wordsOf(
  { longer, shorter, sentence, unsure }: Effect,
  { kind }: Watched,
  book: Asking["store"]["book"],
): string {
  if (sentence) return sentence;
  const say = (change: number | null) => {
    const shown = show(Math.abs(change ?? 0), kind, book);
    return /^0(\.0*)?$/.test(shown) && (change ?? 0) !== 0
      ? kind === "length"
        ? phrase`less than ${book.mark}`
        : phrase`less than shown`
      : `${(change ?? 0) < 0 ? "−" : "+"}${shown}`;
  };
  const words = phrase`longer ${say(longer)}, shorter ${say(shorter)}`;
  return unsure ? phrase`${words} (unsure: a longer search may change as much)` : words;
}
