import { define } from "../define.ts";
import { fitSleeve, SLEEVE_MEASURES, SLEEVE_SHARES, SLEEVE_USUAL } from "../drafting/sleeve.ts";
import { twoPieceSleeve } from "../drafting/two-piece-sleeve.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { outline } from "../drawing/shapes.ts";
import { radians } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, type Piece, pieceArea } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";

/**
 * The top sleeve or the under sleeve of a tailored two-piece sleeve, in the book's unit, without
 * allowances, right side up for the right arm; the crown of the top sleeve lies at (0, 0). Edges of the top: 1 cap,
 * 2 front seam, 3 wrist, 4 back seam; of the under sleeve: 1 cap, 2 back seam, 3 wrist, 4 front seam. Both caps
 * together are as long as the armhole with its ease, both wrists as the wrist; the two front seams are
 * equal, and so are the two back seams. Notches: those of SET_IN_SLEEVE on whichever cap they fall, the elbow on
 * both seams, the underarm on the under sleeve. No published draft is followed: the lengths are geometry
 * (functions/drafting/two-piece-sleeve.ts), the places of the seams and the bend are common practice. The cap is about as high as
 * that of a published sleeve with the same width and length of cap (Every Woman's Encyclopaedia): see the test.
 */
export const TWO_PIECE_SLEEVE = define({
  name: "TWO_PIECE_SLEEVE",
  summary:
    "The top or the under piece of a tailored two-piece sleeve, bent at the elbow, its cap fitted to an armhole.",
  source: "geometry, not a published draft; common practice for the places of the seams and the bend",
  words:
    "tailored coat jacket sleeve two piece top sleeve under sleeve upper forearm hindarm seam false seam elbow bend cap",
  takes: {
    part: { kind: "text", about: "which of the two pieces", choices: ["top", "under"] },
    ...SLEEVE_MEASURES,
    length: {
      kind: "length",
      usual: [20, 90],
      about: "from the crown of the cap over the bent elbow to the wrist edge",
      from: 2,
      to: 200,
    },
    elbow: {
      kind: "length",
      about: "width of the sleeve at the elbow, all round; half-way from bicep to wrist when it is left out",
      from: 4,
      to: 200,
      otherwise: null,
    },
    elbow_length: {
      kind: "length",
      about: "from the crown down to the elbow; half-way from underarm to wrist when it is left out",
      from: 2,
      to: 150,
      otherwise: null,
    },
    bend: {
      kind: "angle",
      usual: [0, 25],
      about: "how far the forearm turns to the front, in degrees",
      from: 0,
      to: 45,
      otherwise: 12,
    },
    front_shift: {
      kind: "length",
      about: "how far the front seam lies beyond the front fold, on the under side",
      from: 0,
      to: 30,
      otherwise: { cm: 2.5, in: 1 },
    },
    back_shift: {
      kind: "length",
      about: "how far the back seam lies beyond the back fold, on the under side",
      from: 0,
      to: 30,
      otherwise: 0,
    },
    ...SLEEVE_SHARES,
  },
  returns: "piece",
  usual: [
    ...SLEEVE_USUAL,
    "elbow <= 1.05 * bicep",
    "wrist <= elbow",
    "elbow_length <= 0.75 * length",
    "front_shift <= 0.15 * bicep",
    "back_shift <= front_shift",
  ],
  alike: {
    "armhole, length": "a short sleeve may be shorter than its armhole, a long one is longer",
    "ease, front_shift": "either may be the greater",
    "wrist, elbow_length": "a sleeve may be wider or narrower than its elbow lies below the crown",
  },
  compute(given, context) {
    const { step, measure, cm } = context;
    const { part, bicep, length, wrist, front_shift, back_shift } = given;
    const fitted = fitSleeve(given, context);
    const { cap } = fitted;
    const elbow = step(
      "elbow_width",
      'IF(elbow=""; (bicep + wrist) / 2; elbow)',
      given.elbow ?? (bicep + wrist) / 2,
    );
    const elbow_length = step(
      "elbow_depth",
      'IF(elbow_length=""; (cap_height + length) / 2; elbow_length)',
      given.elbow_length ?? (cap.height + length) / 2,
    );
    const bend = radians(given.bend);
    const both = twoPieceSleeve({
      cap, bicep, elbow, wrist, elbow_length, length, bend, front_shift, back_shift,
    }); // biome-ignore format: a list
    const says = "bicep, elbow, wrist and the shifts give seams that cross one another: check these figures";
    const [top, under] = [both.top, both.under].map((one) => refuseUnlessSimple(says, one)) as [Piece, Piece];
    const [piece, other] = part === "top" ? [top, under] : [under, top];
    measure("cap_part", () => phrase`the cap of the ${part} sleeve`, edgeLength(piece.edges[0]!));
    step("other_cap", "cap - cap_part", edgeLength(other.edges[0]!));
    measure("wrist_part", () => phrase`the wrist edge of the ${part} sleeve`, edgeLength(piece.edges[2]!));
    step("other_wrist", "wrist - wrist_part", edgeLength(other.edges[2]!));
    measure("front_seam", "the front seam, on both pieces", edgeLength(both.front_seam.line));
    measure("back_seam", "the back seam, on both pieces", edgeLength(both.back_seam.line));
    measure("area", () => phrase`area of the ${part} sleeve`, pieceArea(piece));
    const size = cm(0.5);
    const onCap = [...fitted.back_notches, fitted.crown, fitted.front_notch].flatMap((at) => {
      const onTop = at >= both.back_cut && at <= both.front_cut;
      if (onTop !== (part === "top")) return [];
      if (onTop) return [at - both.back_cut];
      return [at > both.front_cut ? at - both.front_cut : fitted.length - both.front_cut + at];
    });
    if (part === "under") onCap.push(fitted.length - both.front_cut);
    const [front, back] = part === "top" ? [2, 4] : [4, 2];
    // The left seam is drawn upwards.
    const elbowOn = (edge: number, { line, to_elbow }: typeof both.front_seam) =>
      notchOn(piece, edge, edge === 2 ? to_elbow : edgeLength(line) - to_elbow, size);
    return {
      ...piece,
      marks: [
        ...onCap.map((at) => notchOn(piece, 1, at, size)),
        elbowOn(front!, both.front_seam),
        elbowOn(back!, both.back_seam),
      ],
    };
  },
  draw({ part }, _, piece) {
    if (typeof piece !== "object") return [];
    const [front, back] = part === "top" ? [1, 3] : [3, 1];
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: piece.edges[0]!, role: "seam", label: phrase`cap`, shows: "cap_part" },
      {
        kind: "edge",
        edge: piece.edges[front!]!,
        role: "seam",
        label: phrase`front seam`,
        shows: "front_seam",
      },
      { kind: "edge", edge: piece.edges[back!]!, role: "seam", label: phrase`back seam`, shows: "back_seam" },
      { kind: "edge", edge: piece.edges[2]!, role: "seam", label: phrase`wrist`, shows: "wrist_part" },
      grainDrawn(piece),
    ];
  },
  examples: [
    {
      given: {
        part: "under",
        armhole: 46,
        ease: 3.5,
        bicep: 36,
        length: 60,
        wrist: 36,
        elbow: 36,
        bend: 0,
        front_shift: 0,
      },
      gives: { width: 18 },
      unit: "cm",
      because: "a straight sleeve with both seams at its folds: the under sleeve is half as wide",
    },
    {
      given: { part: "top", armhole: 46, ease: 3.5, bicep: 36, length: 60, wrist: 27 },
      gives: { edges: [29.227499998, 47.103651045, 15.943494267, 55.000169975] },
      within: 1e-6,
      unit: "cm",
      because: "a coat sleeve: its edges as a general-purpose curve library measures them",
    },
    {
      given: {
        part: "top",
        armhole: 18,
        ease: 1.5,
        bicep: 14,
        length: 24,
        wrist: 14,
        elbow: 14,
        elbow_length: 13.5,
        bend: 0,
        front_shift: 0.75,
        back_shift: 0.5,
        front: 8.75,
        front_notch: 3,
        back_notch: 3.75,
      },
      gives: { width: 8.25, length: 24 },
      because: "half of 14 in, and the shifts of both seams",
    },
  ],
});
