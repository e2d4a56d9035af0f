import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { collarNeck, flatCollar } from "../drafting/flat-collar.ts";
import { BODICE_NECK, bothNecklines } from "../drafting/neckline.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { degrees } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, pieceArea } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";

/**
 * Half of a flat collar as a piece, in the book's unit, without allowances, developed from the front and
 * the back of a bodice: centre back upright at the left from (0, 0), to lie on the fold. Edges: 1 neck edge,
 * as long as both necklines with half the ease; 2 front; 3 outer edge; 4 centre back. The pieces' shoulders
 * are laid together at the neck with their ends overlapped (functions/drafting/flat-collar.ts): without overlap the collar lies flat
 * as the bodice does, with more it stands up at the neck. A notch marks the shoulder seam. Both pieces are to be without
 * allowances. Source: geometry; the overlap is common practice.
 */
export const FLAT_COLLAR = define({
  name: "FLAT_COLLAR",
  summary:
    "Half a flat collar that follows the neckline of a bodice, drafted from its front and back pieces with an overlap at the shoulder.",
  source: "geometry; common practice for the overlap",
  words:
    "flat collar peter pan round collar sailor collar bertha cape collar lying collar neckline shoulder overlap",
  takes: {
    ...BODICE_NECK,
    depth: {
      kind: "length",
      usual: [2, 40],
      about: "depth of the collar from the neck edge to the outer edge",
      from: 0.5,
      to: 100,
    },
    overlap: {
      kind: "length",
      usual: [0, 6],
      about: "how far the shoulders' ends lie over each other; more makes the collar stand at the neck",
      from: 0,
      to: 50,
      otherwise: { cm: 1.5, in: 5 / 8 },
    },
    ease: {
      kind: "length",
      usual: [-1, 1],
      about: "how much longer the neck edge of the whole collar is than the neckline; negative to stretch it",
      from: -10,
      to: 10,
      otherwise: 0,
    },
    shape: {
      kind: "text",
      about: "the front end: round, or square to the neck edge",
      choices: ["round", "square"],
      otherwise: "round",
    },
  },
  returns: "piece",
  usual: ["overlap <= depth"],
  compute(given, { step, measure, cm }) {
    const { depth, overlap, ease, shape } = given;
    const { front, back } = bothNecklines(given);
    const ahead = measure("front_line", "along the neckline of the front", edgeLength(front.neck));
    const behind = measure("back_line", "along the neckline of the back", edgeLength(back.neck));
    const neck = step("neckline", "front_line + back_line", ahead + behind);
    if (isBelow(neck + ease / 2, 0.5 * neck))
      throw new Refusal(
        (say) => phrase`ease must leave a neck edge: at least ${say(-neck, ease)}, not ${say(ease, -neck)}`,
      );
    const half = { front, back, overlap, depth, ease: ease / 2, shape };
    const { edge, corner } = collarNeck(half);
    measure(
      "corner",
      "degrees of the corner at the shoulder, which is spread over the neck edge",
      Math.abs(degrees(corner)),
    );
    const piece = refuseUnlessSimple(
      "depth and the necklines give a collar that lies over itself: check the two pieces and their edges",
      flatCollar(half, edge, cm(0.001)),
    );
    step("neck_edge", "neckline + ease / 2", edgeLength(piece.edges[0]!));
    const outer = measure("outer_edge", "along the outer edge", edgeLength(piece.edges[2]!));
    step("outer_longer", "outer_edge - neck_edge", outer - (neck + ease / 2));
    step("depth_behind", "depth", depth);
    measure("area", "area of half the collar", pieceArea(piece));
    const shoulder = (behind * (neck + ease / 2)) / neck;
    return { ...piece, marks: [notchOn(piece, 1, shoulder, cm(0.4))] };
  },
  draw({ depth }, _, piece) {
    if (typeof piece !== "object") return [];
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: piece.edges[0]!, role: "seam", label: phrase`neck edge`, shows: "neck_edge" },
      { kind: "edge", edge: piece.edges[2]!, role: "seam", label: phrase`outer edge`, shows: "outer_edge" },
      ...edgeLabelsDrawn(piece, [2]),
      grainDrawn(piece),
      dimension([-depth / 5, 0], [-depth / 5, depth], { label: phrase`centre back`, shows: "depth_behind" }),
    ];
  },
  examples: [
    {
      given: {
        front:
          "M 0 20 A 8 8 0 0 0 8 12 L 20 12 L 20 40 L 0 40 Z | edges neckline, shoulder, side, waist, centre front",
        front_neck: "neckline",
        front_shoulder: "shoulder",
        back: "M 0 4 A 8 8 0 0 1 8 12 L 20 12 L 20 40 L 0 40 Z | edges neckline, shoulder, side, waist, centre back",
        back_neck: "neckline",
        back_shoulder: "shoulder",
        depth: 6,
        overlap: 0,
        shape: "square",
      },
      gives: { edges: [8 * Math.PI, 6, 14 * Math.PI, 6] },
      within: 1e-6,
      unit: "cm",
      because: "a round neck of 8 cm radius without overlap: half a ring from 8 to 14 cm",
    },
    {
      given: {
        front:
          "M 0 8 C 1.8 8 3 6 3 4 L 8 5.5 L 9 16 L 0 16 Z | edges neckline, shoulder, side, waist, centre front",
        front_neck: 1,
        front_shoulder: 2,
        back: "M 0 4.8 C 1.5 4.8 2.8 4.8 3 4 L 8 5.5 L 9 16 L 0 16 Z | edges neckline, shoulder, side, waist, centre back",
        back_neck: 1,
        back_shoulder: 2,
        depth: 3,
        ease: -0.25,
      },
      gives: { edges: [8.699174171] },
      within: 1e-6,
      because: "both necklines as a general-purpose curve library measures them, less an eighth to stretch",
    },
  ],
});
