/** The working of chosen cells on paper, from tape to cut: the text that `explain` gives. */
import { phrase, plural } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { estimateText } from "../engine/estimates.ts";
import { chainPlaces, explain } from "../engine/explain.ts";
import { cellTextWithName } from "../engine/label.ts";
import { laidText } from "../engine/laid.ts";
import { originBelow } from "../engine/lays-below.ts";
import { workingText } from "../engine/working-text.ts";
import { cellsAsked } from "./cells-asked.ts";
import type { Asked, Built } from "./documents.ts";
import { bookLine } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";

export function workingDocument(engine: Engine, { request, manner, letters }: Asked): Built | NotPrinted {
  const cells = cellsAsked(engine, request.cells);
  if (cells && "reason" in cells) return cells;
  if (!cells) return { reason: phrase`say of which cells the working is printed, by name or address` };
  const flow = new Flow(letters, manner, phrase`Working, from tape to cut`);
  flow.say(bookLine(engine));
  // What several chosen cells rest on is printed once, with the first of them.
  const done = new Set<string>();
  for (const place of cells) {
    for (const one of chainPlaces(engine, place)) {
      const isChosen = placeKey(one) === placeKey(place);
      if (isChosen && done.has(placeKey(one))) {
        flow.heading(cellTextWithName(engine.book, one));
        flow.say(phrase`The working stands above.`);
      }
      if (done.has(placeKey(one))) continue;
      done.add(placeKey(one));
      sayWorking(flow, engine, one, isChosen);
    }
  }
  const problems = cells.filter((place) => engine.view(place).problem).length;
  return {
    sheets: flow.sheets(),
    says: phrase`the working of ${plural(cells.length, "# cell", "# cells")}`,
    sentences:
      problems > 0
        ? [
            phrase`${plural(problems, "# of the cells has", "# of the cells have")} something to check, which is printed beside the value`,
          ]
        : [],
  };
}

function sayWorking(flow: Flow, engine: Engine, place: Place, isChosen: boolean): void {
  const origin = originBelow(engine, place);
  for (const [i, line] of workingText(explain(engine, place), engine.book).split("\n").entries()) {
    const indent = (line.length - line.trimStart().length) * flow.size;
    if (i === 0 && isChosen) flow.heading(line);
    else flow.say(line.trim(), { bold: i === 0, indent });
    if (i === 0 && origin) flow.say(phrase`rests on a lay: ${laidText(origin)}`, { indent: flow.size });
  }
  const estimate = estimateText(engine, place);
  if (estimate !== "") flow.say(estimate, { indent: flow.size });
  flow.space(0.4);
}
