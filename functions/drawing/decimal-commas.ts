/** The decimal commas of a book that shows them, in the words of a drawing. */
import { withDecimalMark } from "../decimal.ts";
import type { Shape } from "./shapes.ts";

/** A shape whose words have decimal commas. */
export function withCommas(shape: Shape): Shape {
  if (shape.kind === "note") return { ...shape, text: withDecimalMark(shape.text, "comma") };
  return "label" in shape && shape.label ? { ...shape, label: withDecimalMark(shape.label, "comma") } : shape;
}
