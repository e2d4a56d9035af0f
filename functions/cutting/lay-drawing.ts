/** A lay drawn on its cloth: x along the selvedge, the cloths of a question under one another. */

import { grainLine } from "../drawing/grain-line.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { boundingBox, type Point, radians } from "../geometry/strokes.ts";
import type { Lay, LayPiece, LayQuestion, Placement } from "../lay.ts";
import { asRead, phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/** The cloths with their selvedges and every placed copy, and below them the pieces that found no place. With `shows`, the first cloth's length shows the step `length`. */
export function drawLay(question: LayQuestion, lay: Lay, shows?: "length"): Shape[] {
  const shapes: Shape[] = [];
  let top = 0;
  question.cloths.forEach((cloth, i) => {
    const used = lay.lengths[i] ?? 0;
    const long = cloth.length ?? used;
    const { width } = cloth;
    const margin = width / 16;
    const at = (x: number, y: number): Point => [x, top + y];
    shapes.push(
      stroke([at(0, 0), at(long, 0)], "guide", { label: asRead(cloth.name) }),
      stroke([at(0, width), at(long, width)], "guide"),
      stroke([at(0, 0), at(0, width)], "cut"),
      stroke([at(long, 0), at(long, width)], "cut"),
      dimension(at(-margin, 0), at(-margin, width), { label: phrase`width` }),
    );
    for (const placement of lay.placements) {
      if (placement.cloth === i)
        shapes.push(...drawCopy(question.pieces[placement.piece]!, placement, at(0, 0)));
    }
    const from = at(0, width + margin);
    if (used > 0)
      shapes.push(
        dimension(from, [used, from[1]], { label: phrase`length`, ...(shows && i === 0 ? { shows } : {}) }),
      );
    if (long > used)
      shapes.push(
        dimension([used, from[1] + margin], [long, from[1] + margin], { label: phrase`left over` }),
      );
    top += width + 6 * margin;
  });
  // Under the cloths, side by side, what found no place.
  let x = 0;
  for (const [piece, count] of lay.missing) {
    const { outline, name } = question.pieces[piece]!;
    shapes.push({
      kind: "outline",
      piece: polygon(outline.map(([px, py]): Point => [px + x, py + top])),
      label: phrase`no place: ${count} of ${name}`,
    });
    x += boundingBox(outline).right * 1.1;
  }
  return shapes;
}

function drawCopy({ name, outline }: LayPiece, { turn, x, y }: Placement, origin: Point): Shape[] {
  const cos = Math.cos(radians(turn));
  const sin = Math.sin(radians(turn));
  const place = ([px, py]: Point): Point => [
    origin[0] + x + px * cos - py * sin,
    origin[1] + y + px * sin + py * cos,
  ];
  const [from, to] = grainLine(outline);
  return [
    { kind: "outline", piece: polygon(outline.map(place)), label: asRead(name) },
    stroke([place(from), place(to)], "grain"),
  ];
}
