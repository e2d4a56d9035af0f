/** What every panel of What if does: it asks the worker whenever its question changes, and gathers the answer. */
import { useEffect, useMemo, useRef, useState } from "react";
import { type Answer, heard, NOTHING_HEARD, type Question } from "../../engine/question.ts";
import { searchesByItself } from "../lay/by-itself.ts";
import type { Asking } from "./asking.ts";
import { useEditedBook } from "./edited-book.ts";

/** A question as a panel asks it; the book and the effort are the same for all panels. */
export type PanelQuestion = Question extends infer One
  ? One extends Question
    ? Omit<One, "book" | "rounds" | "mostLays">
    : never
  : never;

export interface Heard extends Answer {
  /** Whether the maker has stopped it. */
  readonly isStopped: boolean;
  /** The question this answer belongs to. */
  readonly question: Question | null;
}

const NOTHING_ASKED: Heard = { ...NOTHING_HEARD, busy: false, isStopped: false, question: null };

/** An answer and what the maker can do while it is awaited. */
export interface StoppableAnswer extends Heard {
  /** Ends the work on the answer; what was heard of it stays. */
  readonly stop: () => void;
  /** Asks the same question again. */
  readonly again: () => void;
}

/** A question waits so long, in milliseconds, for the hand that is still typing it. */
const SETTLE = 120;
/** The screen is drawn anew no more often than this. */
const TELL = 60;

/** How long each lay is searched for while the answer is looked at, in seconds, round by round. */
const ROUNDS = [0.2, 1, 4];
const MOST_LAYS = 120;

/**
 * The answer to a question about the book as it was last changed; null asks nothing. The answer to
 * the question before stays until something is heard of this one.
 */
export function useAnswer(
  { store, client }: Pick<Asking, "store" | "client">,
  asked: PanelQuestion | null,
): StoppableAnswer {
  const book = useEditedBook(store);
  const key = JSON.stringify(asked);
  const question = useMemo<Question | null>(() => {
    const one = JSON.parse(key) as PanelQuestion | null;
    return one && { ...one, book, rounds: searchesByItself() ? ROUNDS : [], mostLays: MOST_LAYS };
  }, [book, key]);
  const [answer, setAnswer] = useState<Heard>(NOTHING_ASKED);
  const [round, setRound] = useState(0);
  const ending = useRef(() => {});
  // biome-ignore lint/correctness/useExhaustiveDependencies: each round asks anew
  useEffect(() => {
    if (!question) {
      setAnswer(NOTHING_ASKED);
      return;
    }
    let gathered: Heard = { ...NOTHING_HEARD, isStopped: false, question };
    let telling: ReturnType<typeof setTimeout> | undefined;
    let stop = () => {};
    const tell = () => {
      telling = undefined;
      setAnswer(gathered);
    };
    setAnswer((before) => ({ ...before, busy: true, isStopped: false }));
    const settled = setTimeout(() => {
      stop = client.ask(question, (news) => {
        gathered = { ...heard(gathered, news), isStopped: false, question };
        if (!gathered.busy) {
          clearTimeout(telling);
          tell();
        } else telling ??= setTimeout(tell, TELL);
      });
    }, SETTLE);
    const end = () => {
      clearTimeout(settled);
      clearTimeout(telling);
      stop();
    };
    ending.current = () => {
      end();
      // A worker in the middle of a long step hears nothing: it is ended.
      client.close();
      setAnswer((before) => ({ ...before, busy: false, refining: false, isStopped: true }));
    };
    return end;
  }, [client, question, round]);
  const again = () => {
    // A worker that is still at the question, or stuck in it, would not hear it asked again.
    if (answer.busy) client.close();
    setRound(round + 1);
  };
  return { ...answer, stop: () => ending.current(), again };
}
