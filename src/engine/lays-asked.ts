/** The lay questions that a cell asks: its calls are calculated once more with a planner that records them. */

import { questionHash } from "../../functions/cutting/lay-question.ts";
import type { LayQuestion, Planner } from "../../functions/lay.ts";
import { run } from "../../functions/run.ts";
import type { Place } from "../book/address.ts";
import type { Engine } from "./engine.ts";

export interface Asked {
  /** With the pieces' names in it, as the cut list has them. */
  readonly question: LayQuestion;
  /** The name under which the book keeps a lay found for it. */
  readonly hash: string;
  /** The function that asks. */
  readonly by: string;
}

/** Every lay question whose lay the formula of a cell rests on, each once, in the order asked. */
export function laysAsked(engine: Engine, place: Place): Asked[] {
  const asked = new Map<string, Asked>();
  const { plan } = engine.setting;
  if (!plan) return [];
  for (const { declaration, args } of engine.calls(place)) {
    const listening: Planner = (question) => {
      const hash = questionHash(question);
      if (!question.passing && !question.start && !asked.has(hash))
        asked.set(hash, { question, hash, by: declaration.name });
      return plan(question);
    };
    run(declaration, args, { ...engine.setting, plan: listening });
  }
  return [...asked.values()];
}
