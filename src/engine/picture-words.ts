/** A drawing in words, for people who can't see it: the edges of each piece with their lengths, its marks, and what is measured. */

import { measureShape, type Shape } from "../../functions/drawing/shapes.ts";
import { phrase, translated } from "../../functions/phrase.ts";
import { edgeLength, type Role } from "../../functions/pieces/piece.ts";
import { labelled, wordsOf } from "./picture.ts";
import { ROLE_WORDS } from "./roles.ts";
import { type Rule, show } from "./show.ts";

/** More edges or lines than these are only counted: an outline from a file may have thousands. */
const MOST = 24;

const listed = (items: readonly string[]): string =>
  items.length > MOST
    ? phrase`${items.slice(0, MOST).join(", ")} and ${items.length - MOST} more`
    : items.join(", ");

type Outline = Extract<Shape, { kind: "outline" }>;

/** "waist 13 1/2, centre front 9, edge 3 8 1/4" */
const edgesOf = ({ piece }: Outline, rule: Rule): string =>
  listed(
    piece.edges.map((edge, i) =>
      labelled(piece.names[i] || phrase`edge ${i + 1}`, show(edgeLength(edge), "length", rule)),
    ),
  );

/** One sentence for each piece, one for the lines of each kind, one for the rest: "skirt: waist 13 1/2, hem 54; grain line: 17; notches × 2". */
export function drawingInWords(shapes: readonly Shape[], rule: Rule): string {
  const outlines = shapes.filter((shape): shape is Outline => shape.kind === "outline");
  const named = new Set(
    outlines.flatMap(({ piece }) => piece.names.flatMap((name) => [name, translated(name)])),
  );
  const lines = new Map<Role, string[]>();
  const rest: string[] = [];
  for (const shape of shapes) {
    if (shape.kind === "outline") continue;
    const words = wordsOf(shape, rule).replaceAll("\n", ", ");
    // An edge with the name of a side of a piece is described with the piece.
    if (shape.kind === "edge" && !named.has(shape.label ?? "")) {
      const length = show(measureShape(shape)!, "length", rule);
      const own = labelled(shape.label ?? "", length);
      lines.set(shape.role, [...(lines.get(shape.role) ?? []), own]);
    } else if (words !== "" && !named.has(words)) rest.push(words);
  }
  return [
    ...outlines.map((shape) => {
      const words = wordsOf(shape, rule).replaceAll("\n", ", ");
      return `${words || phrase`an outline`}: ${edgesOf(shape, rule)}`;
    }),
    ...[...lines].map(([role, items]) => `${ROLE_WORDS[role]}: ${listed(items)}`),
    ...rest,
  ].join("; ");
}
