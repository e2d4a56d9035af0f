/** The trials of a book: their comparison, and the commands that keep, adopt and delete one. */
import { useState } from "react";
import { trialPlaces } from "../../engine/trials.ts";
import { typedFor } from "../../engine/varied-cell.ts";
import type { Command } from "../../store/store.ts";
import { adoptTrial, deleteTrial, keepTrial } from "../../store/trials.ts";
import type { Asking } from "./asking.ts";
import { keyOf } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { useAnswer } from "./useAnswer.ts";

export function useTrials({ store, trying, client }: Asking) {
  const book = useEditedBook(store);
  const [title, setTitle] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const has = book.trials.length > 0;
  const answer = useAnswer({ store, client }, has ? { is: "compare" } : null);
  const run = (command: Command): boolean => {
    const sentence = store.run(command);
    setRefusal(sentence);
    return sentence === null;
  };
  const keep = () => {
    const tried = trying.changes.map(([cell, figure]) => ({
      ...cell.place,
      typed: typedFor(book, cell, figure),
    }));
    const known = new Set(tried.map((place) => keyOf(book, place)));
    // Cells that other trials set are kept as they stand, so that all trials can be told apart later.
    const others = trialPlaces(book).filter((place) => !known.has(keyOf(book, place)));
    if (run(keepTrial(title, [...tried, ...others]))) setTitle("");
  };
  return {
    has,
    title,
    setTitle,
    refusal,
    answer,
    comparison: has ? answer.comparison : null,
    keep,
    adopt: (one: string) => run(adoptTrial(one)),
    remove: (one: string) => run(deleteTrial(one)),
  };
}

export type TrialsState = ReturnType<typeof useTrials>;
