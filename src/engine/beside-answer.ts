/** What is to be read beside a cell's answer: of what the figure is one, or how its parts come out on the tape. */
import { catalogue, ofCatalogue } from "../../functions/catalogue.ts";
import { besideAnswer } from "../../functions/run.ts";
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";
import { sharedOutAt } from "./shared-out.ts";

/** Finds a call of a function that has something to say beside its answer. */
const speaking = ofCatalogue(() => {
  const names = [...catalogue.values()].flatMap(({ name, beside }) => (beside ? [name] : []));
  return names.length > 0 ? new RegExp(String.raw`\b(?:${names.join("|")})\s*\(`, "i") : null;
});

/** In a sentence; "" for a cell whose answer says all. */
export function besideText(engine: Engine, place: Place): string {
  const typed = typedAt(engine.book, place.page, place.row, place.column);
  const parts = sharedOutAt(engine, place) ?? "";
  // A formula is calculated once more for it, so only those that have something to say.
  if (!isFormula(typed) || !speaking()?.test(typed)) return parts;
  const said = engine
    .calls(place)
    .map(({ declaration, args }) => besideAnswer(declaration, args, engine.setting));
  return [parts, ...new Set(said)].filter(Boolean).join("; ");
}
