import { define } from "../define.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { arc, line, type Point } from "../geometry/strokes.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, pieceArea, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * A godet as a piece: a wedge let into a slit or seam, in the book's unit, without allowances, its
 * point at (0, 0). Edges: 1 right side from the point down, 2 hem, 3 left side. Curved, the hem is
 * `width` along its arc and hangs level; straight, `width` is straight across. Sides are as long
 * as the slit. Source: geometry.
 */
export const GODET = define({
  name: "GODET",
  summary: "A wedge of cloth to let into a slit or seam for more width at the hem, as a piece.",
  source: "geometry",
  words: "godet gusset wedge insert triangle flare slit fullness hem fan",
  takes: {
    width: { kind: "length", about: "how much it adds to the hem", from: 0.5, to: 2000 },
    length: { kind: "length", about: "length of the slit it is let into", from: 0.5, to: 300 },
    shape: {
      kind: "text",
      about: "curved: a hem that hangs level; straight: a plain triangle",
      choices: ["curved", "straight"],
      otherwise: "curved",
    },
  },
  returns: "piece",
  alike: { "width, length": "it may be wider or longer" },
  compute({ width, length, shape }, { step, measure }) {
    const most = shape === "curved" ? 2 * Math.PI * length : 2 * length;
    if (shape === "straight" ? width >= most : width > most * (1 + 1e-9)) {
      throw new Refusal(
        (say) =>
          phrase`width must be ${shape === "curved" ? phrase`at most` : phrase`less than`} ${say(most, length, width)} for a ${shape} godet ${say(length, most, width)} long, not ${say(width, most, length)}: use two godets`,
      );
    }
    const half = shape === "curved" ? width / length / 2 : Math.asin(width / length / 2);
    step(
      "angle",
      'DEGREES(IF(shape = "curved"; width / length; 2 * ASIN(width / length / 2)))',
      (half * 360) / Math.PI,
    );
    step("side", "length", length);
    step("hem", "width", width);
    const [right, left]: Point[] = [-1, 1].map(
      (side): Point => [-side * length * Math.sin(half), length * Math.cos(half)],
    ) as [Point, Point];
    const hem =
      shape === "curved"
        ? { ...arc([0, 0], length, Math.PI / 2 - half, Math.PI / 2 + half), from: right!, to: left! }
        : line(right!, left!);
    const edges = [[line([0, 0], right!)], [hem], [line(left!, [0, 0])]];
    const piece = pieceOf(edges, ["right side", "hem", "left side"]);
    measure("area", "area of the piece", pieceArea(piece));
    return piece;
  },
  draw({ length }, _, piece) {
    if (typeof piece !== "object") return [];
    const [right, hem] = piece.edges;
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: hem!, role: "seam", label: phrase`hem`, shows: "hem" },
      dimension(right![0]!.from, right![0]!.to, { shows: "side" }),
      grainDrawn(piece),
      { kind: "note", at: [0, length * 0.15], text: phrase`hem ${numberText(edgeLength(hem!), 5)}` },
    ];
  },
  examples: [
    {
      given: { width: 12, length: 10 },
      gives: { area: 60, edges: [10, 12, 10] },
      because: "a sector: half its hem times its side",
    },
    {
      given: { width: 30, length: 25, shape: "straight" },
      gives: { area: 300, width: 30, length: 20, edges: [25, 30, 25] },
      unit: "cm",
      because: "two 15-20-25 triangles back to back",
    },
    {
      given: { width: 8 * Math.PI, length: 8 },
      gives: { area: 32 * Math.PI },
      because: "half a circle let in",
    },
  ],
});
