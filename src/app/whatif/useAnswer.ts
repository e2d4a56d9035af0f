/** Asks the worker whenever the question changes and gathers what it tells. */
import { useEffect, useState } from "react";
import type { Effect } from "../../engine/sensitivity.ts";
import type { Solution } from "../../engine/solve.ts";
import type { Row } from "../../engine/sweep.ts";
import type { Thresholds } from "../../engine/thresholds.ts";
import type { Comparison } from "../../engine/trials.ts";
import type { Question, QuestionNews } from "../../worker/question.ts";
import type { QuestionClient } from "../../worker/question-client.ts";

export interface Answer {
  /** The question these answers belong to. */
  readonly question: Question | null;
  readonly rows: readonly Row[];
  readonly thresholds: readonly Thresholds[];
  readonly solution: Solution | null;
  readonly effects: readonly Effect[] | null;
  readonly comparison: Comparison | null;
  readonly problem: string | null;
  /** True until the first answer is whole. */
  readonly busy: boolean;
  /** Seconds that each lay of the answer was searched for, 0 for quick lays; null where nothing is laid. */
  readonly seconds: number | null;
  /** True while longer searches go on, after the first answer. */
  readonly refining: boolean;
}

const NOTHING: Answer = {
  question: null, rows: [], thresholds: [], solution: null, effects: null, comparison: null, problem: null, busy: false, seconds: null, refining: false,
}; // biome-ignore format: a list

/** A question waits so long, in milliseconds, for the hand that is still typing it. */
const SETTLE = 120;
/** The screen is not told more often than this. */
const TELL = 60;

function heard(answer: Answer, news: QuestionNews): Answer {
  if ("rows" in news) return { ...answer, rows: [...answer.rows, ...news.rows] };
  if ("thresholds" in news) return { ...answer, thresholds: [...answer.thresholds, news.thresholds] };
  if ("settled" in news) return { ...answer, busy: false, seconds: news.seconds, refining: true };
  if ("round" in news) return { ...answer, ...news.round };
  if ("done" in news) return { ...answer, busy: false, refining: false };
  return { ...answer, ...news };
}

/** `question` must be the same object as long as it is the same question; null asks nothing. */
export function useAnswer(client: QuestionClient, question: Question | null): Answer {
  const [answer, setAnswer] = useState<Answer>(NOTHING);
  useEffect(() => {
    if (!question) {
      setAnswer(NOTHING);
      return;
    }
    let gathered: Answer = { ...NOTHING, question, busy: true };
    let telling: ReturnType<typeof setTimeout> | undefined;
    let stop = () => {};
    const tell = () => {
      telling = undefined;
      setAnswer(gathered);
    };
    const settled = setTimeout(() => {
      stop = client.ask(question, (news) => {
        gathered = heard(gathered, news);
        if (!gathered.busy) {
          clearTimeout(telling);
          tell();
        } else telling ??= setTimeout(tell, TELL);
      });
    }, SETTLE);
    return () => {
      clearTimeout(settled);
      clearTimeout(telling);
      stop();
    };
  }, [client, question]);
  return answer;
}
