/** A garment that is being begun: the unit, the answers typed so far and what is to be said of them. */
import { useMemo, useState } from "react";
import type { Decimal } from "../../../functions/decimal.ts";
import type { Unit } from "../../../functions/units.ts";
import type { Garment, Question } from "../../book/garment.ts";
import { type Answers, type Begun, begin, exampleOf } from "../../engine/begin.ts";

export interface Beginning {
  readonly answers: Answers;
  readonly answer: (name: string, typed: string) => void;
  readonly begun: Begun;
  /** What is shown in an empty field. */
  readonly exampleOf: (question: Question) => string;
  /** What is said of an answer: at once of one that was typed, of an empty one once the garment was to be begun. */
  readonly said: (question: Question) => { readonly sentence: string; readonly fault: boolean } | null;
  /** Whether it can be begun; from then on what is missing is said. */
  readonly ready: () => boolean;
  /** Whether example figures take the place of what is missing. */
  readonly withExamples: boolean;
  readonly setWithExamples: (on: boolean) => void;
  /** How many answers are still needed. */
  readonly missing: number;
}

/** The day in the reader's own time, as ISO writes it. */
export function todayHere(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export function useBeginning(garment: Garment, unit: Unit, decimal: Decimal): Beginning {
  const [answers, setAnswers] = useState<Answers>({});
  const [asked, setAsked] = useState(false);
  const [withExamples, setWithExamples] = useState(false);
  const how = useMemo(() => ({ unit, decimal, today: todayHere() }), [unit, decimal]);
  const begun = useMemo(() => begin(garment, answers, how), [garment, answers, how]);
  const typed = (name: string) => (answers[name] ?? "").trim() !== "";
  const stops = begun.remarks.filter(({ name, fault }) => fault && (typed(name) || !withExamples));
  return {
    answers,
    answer: (name, text) => setAnswers((now) => ({ ...now, [name]: text })),
    begun,
    exampleOf: (question) => (question.kind === "date" ? how.today : exampleOf(garment, question, how)),
    said: ({ name }) => {
      const remark = begun.remarks.find((one) => one.name === name);
      if (!remark || (!typed(name) && (!asked || withExamples))) return null;
      return remark;
    },
    ready: () => {
      setAsked(true);
      return stops.length === 0;
    },
    withExamples,
    setWithExamples,
    missing: stops.length,
  };
}
