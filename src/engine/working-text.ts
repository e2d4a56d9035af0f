/** The working of a cell as text, from tape to cut: for the command line and for paper. */

import type { Kind } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { careText } from "./cautions.ts";
import type { Working } from "./explain.ts";
import { cellTextWithName } from "./label.ts";
import { hasAnswer } from "./sentences.ts";
import { shownWithDecimals } from "./show.ts";

/** A longer text is the outline of a piece, which nobody reads here. */
const LONGEST = 60;

const headText = (figure: string, problem: Working["problem"]): string =>
  problem ? phrase`${hasAnswer(problem) ? `${figure}  ` : ""}check: ${problem.sentence}` : figure;

/** How the figure of a cell came about, in lines; what belongs to a line stands beneath it, indented. */
export function workingText(
  { place, typed, shown, value, kind, problem, parts, calls }: Working,
  book: Book,
): string {
  const figure = (text: string, exact: unknown, of: Kind) =>
    text === "" ? phrase`(blank)` : text.length > LONGEST ? "…" : shownWithDecimals(text, exact, of, book);
  const lines = [`${cellTextWithName(book, place)}  ${headText(figure(shown, value, kind), problem)}`];
  if (typed.startsWith("=")) lines.push(`  ${typed}`);
  if (parts) lines.push(`  ${parts}`);
  for (const { declaration, given, steps, answer, value: gives, refused } of calls) {
    const takes = given.map((one) => `${one.name} ${figure(one.shown, one.value, one.kind)}`);
    lines.push(`  ${declaration.name}: ${takes.join(", ")}`);
    for (const step of steps) {
      const how = step.filled === step.rule && !step.formula ? `${step.rule}:` : `${step.filled} =`;
      lines.push(`    ${step.name} = ${how} ${figure(step.shown, step.value, step.kind)}`);
      if (step.parts) lines.push(`      ${step.parts}`);
    }
    lines.push(phrase`    gives ${refused ? answer : figure(answer, gives, declaration.returns)}`);
    if (declaration.cautions) lines.push(`    ${careText(declaration.cautions)}`);
  }
  return lines.join("\n");
}
