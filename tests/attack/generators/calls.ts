import { HyperFormula } from "hyperformula";
import { Engine } from "../../../src/engine/engine.ts";
import { register } from "../../../src/engine/register.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { define } from "../generator.ts";
import { call } from "../pieces-of-formula.ts";
import { bookWith, SHORT } from "../probe.ts";

register();
const NAMES = HyperFormula.getRegisteredFunctionNames("enGB").toSorted();
const engine = new Engine(bookWith([]), layDesk, SHORT);

export const generator = define<string>({
  name: "calls",
  about:
    "every function with odd arguments, worked as in the formula bar: an answer or a sentence, in good time",
  make: (random) => `=${call(random, NAMES)}`,
  attempt(formula) {
    const answer = engine.evaluate(formula);
    if ("problem" in answer)
      return /^.{5,400}$/.test(answer.problem) ? null : `says ${JSON.stringify(answer.problem)}`;
    const { value } = answer;
    return typeof value === "number" && !Number.isFinite(value) ? `gives ${value}` : null;
  },
  longest: 2000,
});
