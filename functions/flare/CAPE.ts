import { CORDS, FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { drawPanel, flaredPanel } from "../drafting/flared-panel.ts";
import { directionAcross, pointAhead as move } from "../geometry/constant-curvature.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { mark, type Piece, pieceArea } from "../pieces/piece.ts";
import { cape } from "../worn/cape.ts";

/**
 * Half of a cape cut as part of a circle, centre back on the fold along the y axis, in the book's
 * unit, without allowances. Edges: 1 half the neck with the front's overlap, 2 front edge, 3 hem,
 * 4 centre back; (0, 0) is centre back at the neck. The overlap is a straight strip beyond
 * centre front, as wide all the way down. Shoulders are not shaped: up to about three quarters of
 * a circle a cape needs darts or a seam there. Source: geometry.
 */
export const CAPE = define({
  name: "CAPE",
  summary:
    "Half a circular cape or cloak as a piece, with the neck at the wanted length and fronts that overlap.",
  source: "geometry",
  words: "cloak cape mantle capelet circle half pelerine collar bertha neck overlap",
  takes: {
    neck: {
      kind: "length",
      usual: [25, 58],
      about: "neck seam all round, from centre front to centre front",
      from: 10,
      to: 300,
    },
    length: { kind: "length", about: "from neck to hem", from: 1, to: 250 },
    circle: {
      kind: "share",
      about: "how much of a circle both halves together make: 0.5 half a circle",
      from: 0.1,
      to: 1,
      otherwise: 0.75,
    },
    overlap: {
      kind: "length",
      about: "how far each front reaches beyond centre front",
      from: 0,
      to: 100,
      otherwise: 0,
    },
  },
  returns: "piece",
  usual: ["overlap < length"],
  compute({ neck, length, circle, overlap }, { step, measure }) {
    step("neck_radius", "neck / (2 * PI() * circle)", neck / (2 * Math.PI * circle));
    const half = step("half_neck", "neck / 2", neck / 2);
    const turn = Math.PI * circle;
    step("angle", "180 * circle", 180 * circle);
    step("half_hem", "half_neck + PI() * circle * length", half + turn * length);
    step("neck_edge", "half_neck + overlap", half + overlap);
    step("hem_edge", "half_hem + overlap", half + turn * length + overlap);
    step("front_edge", "length", length);
    const plain = flaredPanel(half, half + turn * length, length, "left", [
      "neck",
      "front edge",
      "hem",
      "centre back",
    ]);
    const piece = overlap > 0 ? withStrip(plain, turn, overlap) : plain;
    measure("area", "area of the half cape", pieceArea(piece));
    return piece;
  },
  draw: ({ neck }, _, piece) =>
    typeof piece === "object"
      ? drawPanel(piece, [neck / 30, 0], {
          area: "area",
          top: "neck_edge",
          hem: "hem_edge",
          side: "front_edge",
        })
      : [],
  worn: (given, { half_hem = 0 }, lengths) => cape({ ...given, hem: 2 * half_hem }, lengths),
  examples: [
    {
      given: { neck: 18, length: 30, circle: 1 },
      gives: { edges: [9, 30, 9 + 30 * Math.PI, 30] },
      because: "half of a full circle gains π × 30 from neck to hem",
    },
    {
      given: { neck: 44, length: 60, circle: 0.5, overlap: 8 },
      gives: { edges: [30, 60, 30 + 30 * Math.PI, 60], area: (22 + 15 * Math.PI) * 60 + 480 },
      unit: "cm",
      because: "a quarter circle for each half and a strip of 8 × 60 beyond centre front",
    },
  ],
  cautions: `${CORDS} ${FLAME}`,
});

/** A panel whose right side, leaning by `lean`, is moved out by a strip of even width. */
function withStrip(panel: Piece, lean: number, width: number): Piece {
  const [top, side, hem, left] = panel.edges;
  const { from, to } = side![0]!;
  const out = (point: Point): Point => move(point, directionAcross(lean), width);
  return {
    names: panel.names,
    edges: [
      [...top!, line(from, out(from))],
      [line(out(from), out(to))],
      [line(out(to), to), ...hem!],
      left!,
    ],
    marks: [mark([line(from, to)], "placement")],
  };
}
