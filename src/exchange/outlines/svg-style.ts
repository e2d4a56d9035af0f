/** What CSS says in an element's own style attribute, as far as it moves or hides a line. */
import { phrase } from "../../../functions/phrase.ts";
import { type Matrix, readTransform, UNCHANGED } from "./affine.ts";
import type { SvgElement } from "./svg-elements.ts";
import type { Property } from "./svg-shapes.ts";

/** Properties that move a line and are not read. */
const MOVES = ["transform-origin", "transform-box", "rotate", "scale", "translate", "offset-path", "zoom"];

/** The declarations of a style attribute by their names; a later one counts. */
function declarations(style: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const part of style.replace(/\/\*[\s\S]*?\*\//g, " ").split(";")) {
    const at = part.indexOf(":");
    if (at < 0) continue;
    const value = part.slice(at + 1).replace(/!\s*important\s*$/i, "");
    found.set(part.slice(0, at).trim().toLowerCase(), value.trim());
  }
  return found;
}

/** Attributes whose property of the same name may stand in a style attribute. */
const OF_BOTH = new Set(["x", "y", "width", "height", "cx", "cy", "r", "rx", "ry", "display", "visibility", "transform"]); // biome-ignore format: a list

/** An element's properties: its style attribute first, then the attribute of that name. */
export function propertyOf(element: SvgElement): Property {
  const style = element.attribute("style");
  if (style === undefined) return element.attribute;
  const own = declarations(style);
  return (name) => (OF_BOTH.has(name) ? own.get(name) : undefined) ?? element.attribute(name);
}

export const isHidden = (property: Property): boolean => property("display")?.trim() === "none";

/** The element's own map. Throws an Error with a sentence when it can't be read. */
export function transformOf(element: SvgElement, property: Property): Matrix {
  const own = declarations(element.attribute("style") ?? "");
  const found = MOVES.find(
    (name) => own.has(name) || (name.startsWith("transform-") && element.attribute(name)),
  );
  if (found) throw new Error(phrase`it is moved by "${found}", which is not read; write it as a transform`);
  const text = property("transform");
  return text === undefined ? UNCHANGED : readTransform(text);
}

/** Whether a style sheet has a rule that may move, hide or draw lines. */
export const movesLines = (sheet: string): boolean =>
  /(?:^|[{;\s])(?:transform|translate|rotate|scale|display|visibility|d|width|height|x|y|cx|cy|r|rx|ry)\s*:/i.test(
    sheet,
  );
