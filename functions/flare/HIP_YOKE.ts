import { define } from "../define.ts";
import { BODY_AND_DIP, developSeam, LEVEL_BACK, seamLevel, seamSteps } from "../drafting/body-cone.ts";
import { curvedEdge, curvedLevel, hipYoke, pointedEdge } from "../drafting/hip-yoke.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { degrees } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, movePiece, pieceArea, pieceBounds, turnPiece } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { between, skirt } from "../worn/skirt.ts";

/**
 * Half of a yoke from the waist down over the hip, in the book's unit, without allowances: the body between
 * waist and hip taken as a cone and rolled out flat, so that the yoke fits without darts. Edges: 1 waist,
 * 2 centre front, 3 lower edge, 4 centre back. A pointed lower edge is the seam of SEAM_GIRTH and DIPPED_PANEL of the same
 * figures, to which such a panel is sewn; a curved one runs level at both centres and changes most at the side. With
 * equal depths both are level. Source: geometry.
 */
export const HIP_YOKE = define({
  name: "HIP_YOKE",
  summary: "Half a yoke fitted over the hip without darts, its lower edge level, curved or pointed.",
  source: "geometry: the cone through waist and hip, rolled out flat",
  words:
    "skirt yoke hip yoke basque shaped waistband contour band pleated skirt gathered skirt sewn to a yoke",
  takes: {
    waist: BODY_AND_DIP.waist,
    hip: {
      ...BODY_AND_DIP.hip,
      about: "girth at hip_drop below the waist; a girth near the yoke's lower edge fits it most closely",
    },
    hip_drop: BODY_AND_DIP.hip_drop,
    depth: {
      kind: "length",
      about: "from the waist down to the lower edge at centre back",
      from: 0.5,
      to: 60,
    },
    front_depth: {
      kind: "length",
      about: "from the waist down to the lower edge at centre front; as at the back when it is left out",
      from: 0.5,
      to: 60,
      otherwise: null,
    },
    edge: {
      kind: "text",
      about: "pointed: level at the back, then straight to a point in front; curved: smooth all round",
      choices: ["pointed", "curved"],
      otherwise: "pointed",
    },
    start: LEVEL_BACK.start,
    straight: {
      kind: "text",
      about: "which edge lies along the grain, centre back or centre front",
      choices: ["back", "front"],
      otherwise: "back",
    },
  },
  returns: "piece",
  usual: [
    "waist <= 1.1 * hip",
    "hip_drop <= 0.6 * waist",
    "depth <= 1.2 * hip_drop",
    "front_depth <= 1.5 * hip_drop",
  ],
  alike: {
    "depth, front_depth": "a yoke may be deeper in front or at the back",
    "hip_drop, depth": "a yoke may end above or below the hip",
    "hip_drop, front_depth": "a yoke may end above or below the hip",
  },
  compute({ waist, hip, hip_drop, depth, front_depth, edge, start, straight }, { step, measure }) {
    const back_drop = step("back_drop", "depth", depth);
    const front_drop = step("front_drop", 'IF(front_depth=""; depth; front_depth)', front_depth ?? depth);
    const yoke = { waist, back_drop, front_drop };
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    const { angle } = seam;
    let lower = curvedEdge(yoke, angle);
    if (edge === "pointed") {
      lower = pointedEdge(yoke, seam);
      seamSteps(step, seam, "lower_edge");
    } else {
      step("angle", "(hip - waist) / hip_drop", angle);
      measure("lower_edge", "half the lower edge, along its curve", edgeLength(lower));
    }
    const piece = refuseUnlessSimple(
      "waist, hip, hip_drop and depth give a yoke that lies over itself: check these figures",
      hipYoke(yoke, angle, lower),
    );
    step("half_waist", "waist / 2", edgeLength(piece.edges[0]!));
    step("lower_all_round", "2 * lower_edge", 2 * edgeLength(lower));
    step("front_edge", "front_drop", edgeLength(piece.edges[1]!));
    step("front_lean", "DEGREES(angle / 2)", degrees(angle / 2));
    measure("area", "area of the half yoke", pieceArea(piece));
    if (straight === "back") return piece;
    const [x, y] = piece.edges[1]![0]!.from;
    return turnPiece(movePiece(piece, -x, -y), degrees(angle / 2));
  },
  draw({ depth }, _, piece) {
    if (typeof piece !== "object") return [];
    const [waist, front, lower, back] = piece.edges;
    const { left, right, high } = pieceBounds(piece);
    const off = depth / 6;
    const [from, to] = [back![0]!.to, back![0]!.from];
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: waist!, role: "seam", label: phrase`waist`, shows: "half_waist" },
      { kind: "edge", edge: front!, role: "seam", label: phrase`centre front`, shows: "front_edge" },
      { kind: "edge", edge: lower!, role: "seam", label: phrase`lower edge`, shows: "lower_edge" },
      grainDrawn(piece),
      dimension([from[0] - off, from[1]], [to[0] - off, to[1]], {
        label: phrase`centre back`,
        shows: "back_drop",
      }),
      dimension([left, high + off], [right, high + off]),
    ];
  },
  worn({ waist, hip, hip_drop, edge, start }, { back_drop = 0, front_drop = 0, lower_edge = 0 }, lengths) {
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    const level = (share: number) => {
      const half = Math.min(share, 1 - share);
      return edge === "curved"
        ? curvedLevel({ waist, back_drop, front_drop }, half)
        : seamLevel(waist, seam, back_drop, front_drop, half);
    };
    return skirt({ waist, hip, hip_drop, depth: level, round: between(waist, 2 * lower_edge) }, lengths);
  },
  examples: [
    {
      given: { waist: 72, hip: 96, hip_drop: 12, depth: 10 },
      gives: { edges: [36, 10, 46, 10] },
      unit: "cm",
      because: "the girth grows by 2 cm for each centimetre down: 92 all round at 10",
    },
    {
      given: { waist: 30, hip: 42, hip_drop: 8, depth: 4, front_depth: 7 },
      gives: { edges: [15, 7, 18.95299563, 4] },
      within: 1e-6,
      because: "worked by hand: 9 in level, then √(3² + 36 · 40.5 · (2 sin 0.1875 ÷ 1.5)²) to the point",
    },
    {
      given: { waist: 70, hip: 70, hip_drop: 20, depth: 8, front_depth: 14 },
      gives: { area: 8 * 17.5 + 11 * 17.5, edges: [35, 14, 17.5 + Math.hypot(17.5, 6), 8] },
      unit: "cm",
      because: "a straight body: level for half the way, then 6 down in 17.5",
    },
  ],
});
