import { isAbove, isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { developedPoint } from "../drafting/body-cone.ts";
import { flaredPanel } from "../drafting/flared-panel.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { degrees, distance, type Edge, type Point, QUARTER_CIRCLE } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgePart, reverseEdge } from "../pieces/edges.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, movePiece, type Piece, pieceArea, pieceBounds, turnPiece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * A stand collar as a piece, whole, in the book's unit, without allowances, centre back
 * upright with its top at (0, 0). Edges: 1 upper edge, 2 right front, 3 neck edge, 4 left front. The neck
 * edge is as long as the neckline with the ease, and the overlap beyond the right centre front. The upper edge is `shorter` less
 * from centre front to centre front: both edges are arcs about one centre, so that the collar leans in to the
 * neck alike all round. With nothing shorter it is a straight strip. Notches on the neck edge: centre back, centre front where there is an
 * overlap, and the shoulder seams when `back_neck` is given. Source: geometry.
 */
export const STAND_COLLAR = define({
  name: "STAND_COLLAR",
  summary: "A stand collar, straight or curved so that its upper edge is shorter, fitted to a neckline.",
  source: "geometry",
  words: "standing collar band collar mandarin military officer neckband stand neckline curved collar",
  takes: {
    neck: {
      kind: "length",
      usual: [20, 90],
      about: "the neckline it is sewn to, from centre front round to centre front",
      from: 5,
      to: 300,
    },
    height: {
      kind: "length",
      usual: [1, 15],
      about: "height of the collar at centre back",
      from: 0.5,
      to: 60,
    },
    shorter: {
      kind: "length",
      usual: [-5, 10],
      about: "how much shorter the upper edge is than the neck edge; negative to stand away from the neck",
      from: -100,
      to: 100,
      otherwise: 0,
    },
    ease: {
      kind: "length",
      usual: [-1, 2],
      about: "how much longer the neck edge is than the neckline; negative to stretch it",
      from: -20,
      to: 50,
      otherwise: 0,
    },
    overlap: {
      kind: "length",
      about: "how far the right end goes on beyond centre front",
      from: 0,
      to: 30,
      otherwise: 0,
    },
    back_neck: {
      kind: "length",
      about: "half the back neckline, from centre back to the shoulder seam, for its notches",
      from: 0.5,
      to: 100,
      otherwise: null,
    },
    corner: {
      kind: "length",
      about: "how far the upper front corners are rounded",
      from: 0,
      to: 30,
      otherwise: 0,
    },
  },
  returns: "piece",
  usual: [
    "height <= 0.3 * neck",
    "shorter <= 0.2 * neck",
    "shorter <= 2 * height",
    "overlap <= 0.2 * neck",
    "back_neck <= 0.3 * neck",
    "0.1 * neck <= back_neck",
    "corner <= height",
    "height <= 1.2 * back_neck",
    "ease <= 0.1 * neck",
  ],
  alike: {
    "height, shorter": "a low collar may be shorter above by more or by less than it is high",
    "height, overlap": "a low collar may lap over by more than it is high",
    "shorter, corner": "both are small figures of the same shape",
    "ease, overlap": "both are small figures along one edge",
  },
  compute(given, { step, measure, cm }) {
    const { neck, height, shorter, ease, overlap, back_neck, corner } = given;
    const edge = step("neck_edge", "neck + ease", neck + ease);
    const least = 0.05 * neck;
    if (isBelow(edge, least))
      throw new Refusal(
        (say) =>
          phrase`ease must leave a neck edge: at least ${say(least - neck, ease)}, not ${say(ease, least - neck)}`,
      );
    const upper = step("upper_edge", "neck_edge - shorter", edge - shorter);
    if (isBelow(upper, 0.05 * edge))
      throw new Refusal(
        (say) =>
          phrase`shorter must leave an upper edge: less than the neck edge of ${say(edge, shorter)}, not ${say(shorter, edge)}`,
      );
    const more = step("longer_by", "(neck_edge + overlap) / neck_edge", (edge + overlap) / edge);
    const turn = Math.abs((more * shorter) / height);
    if (isAbove(turn, 2 * Math.PI * 0.95))
      throw new Refusal(
        (say) =>
          phrase`shorter must be less for a collar ${say(height)} high, not ${say(shorter)}: it would come round to a full circle`,
      );
    measure("curve", "degrees that the collar turns from end to end", degrees((more * shorter) / height));
    if (isAbove(corner, height) || isAbove(2 * corner, more * upper))
      throw new Refusal(
        (say) =>
          phrase`corner must be at most ${say(Math.min(height, (more * upper) / 2), corner)} for this height and upper edge, not ${say(corner, Math.min(height, (more * upper) / 2))}`,
      );
    if (back_neck !== null && !isBelow(2 * back_neck, neck))
      throw new Refusal(
        (say) =>
          phrase`back_neck must be less than half the neckline, ${say(neck / 2, back_neck)}, not ${say(back_neck, neck / 2)}`,
      );
    const square = centreBackUpright(
      flaredPanel(more * upper, more * edge, height, "left", COLLAR_EDGES),
      more * upper,
      (more * shorter) / height,
      edge / 2 / (edge + overlap),
    );
    const piece = corner > 1e-6 * height ? roundCorners(square, corner) : square;
    const sewn = step("sewn_edge", "neck_edge + overlap", edgeLength(piece.edges[2]!));
    step("height_of_ends", "height", height);
    measure("area", "area of the collar", pieceArea(piece));
    // The neck edge is drawn from its right end.
    const back = overlap + edge / 2;
    const shoulder = back_neck === null ? null : (back_neck * edge) / neck;
    const places = [
      ...(overlap > 0 ? [overlap] : []),
      ...(shoulder === null ? [back] : [back - shoulder, back, back + shoulder]),
    ];
    return { ...piece, marks: places.filter((at) => at < sewn).map((at) => notchOn(piece, 3, at, cm(0.4))) };
  },
  draw({ height }, _, piece) {
    if (typeof piece !== "object") return [];
    const { left, right, high } = pieceBounds(piece);
    const off = height / 2;
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: piece.edges[2]!, role: "seam", label: phrase`neck edge`, shows: "sewn_edge" },
      ...edgeLabelsDrawn(piece, [1, 2, 4]),
      grainDrawn(piece),
      dimension([0, 0], [0, height], { label: phrase`height`, shows: "height_of_ends" }),
      dimension([left, high + off], [right, high + off]),
    ];
  },
  examples: [
    {
      given: { neck: 13, height: 2.5, shorter: 1 },
      gives: { edges: [12, 2.5, 13, 2.5] },
      because:
        "Ingalls, Text-Book on Domestic Art, 1911, collar to fasten at the back: 13 in at the base, 12 in at the top, 2 1/2 in high",
    },
    {
      given: { neck: 40, height: 4, ease: 0.5, overlap: 2, back_neck: 8 },
      gives: { area: 170, edges: [42.5, 4, 42.5, 4], width: 42.5 },
      unit: "cm",
      because: "a straight strip: 40 and half a centimetre of ease, 2 to lap over",
    },
    {
      given: { neck: 38, height: 4, shorter: 2.5, corner: 1.5 },
      gives: { area: 147 - 2 * 1.5 ** 2 * 0.21 },
      within: 0.12,
      unit: "cm",
      because: "(38 + 35.5)/2 × 4, less two corners of about a fifth of their square",
    },
  ],
});

const COLLAR_EDGES = ["upper edge", "right front", "neck edge", "left front"] as const;

/** The collar moved and turned so that its centre back, at this share of its upper edge from the left, stands upright with its top at (0, 0). */
function centreBackUpright(piece: Piece, upper: number, angle: number, share: number): Piece {
  const [x, y] = developedPoint(upper, angle, 0, share);
  return turnPiece(movePiece(piece, -x, -y), degrees(angle * share));
}

/** The collar with both ends of its upper edge rounded; the curves are parts of the front edges. */
function roundCorners(piece: Piece, corner: number): Piece {
  const [upper, right, neck, left] = piece.edges as [Edge, Edge, Edge, Edge];
  const rest = edgePart(upper, corner, edgeLength(upper) - corner);
  /** The front downwards from the end of the upper edge. */
  const rounded = (top: Point, tip: Point, front: Edge): Edge => {
    const below = edgePart(front, corner, edgeLength(front));
    const start = below[0]!.from;
    const towards = (from: Point): Point => {
      const share = (QUARTER_CIRCLE * corner) / distance(from, tip);
      return [from[0] + (tip[0] - from[0]) * share, from[1] + (tip[1] - from[1]) * share];
    };
    return [
      { kind: "curve", from: top, c1: towards(top), c2: towards(start), to: start },
      ...(edgeLength(front) - corner > 1e-9 * corner ? below : []),
    ];
  };
  const [start, end] = [rest[0]!.from, rest.at(-1)!.to];
  return {
    ...piece,
    edges: [
      rest,
      rounded(end, right[0]!.from, right),
      neck,
      reverseEdge(rounded(start, left.at(-1)!.to, reverseEdge(left))),
    ],
  };
}
