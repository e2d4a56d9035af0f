import { define } from "../define.ts";
import { bodiceBack, bodiceFront } from "../drafting/bodice-foundation.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { pieceArea } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";

/**
 * Half of the front or of the back of a close-fitting bodice to the waist, in the book's unit, without allowances,
 * its centre at the left along the grain. Edges: shoulder, armhole, side, waist, centre front or centre back,
 * neckline. Shoulders and sides of front and back are equal, the bust lines together are half of the bust with its ease, the waists
 * with their darts sewn half of the waist with its ease; both necklines and both armholes meet smoothly. The waist
 * edges are straight, as in both books, and meet at the side at a slight angle.
 *
 * Published figures. Front: every point of the French lining draft of C. C. Ingalls, Text-Book on Domestic Art
 * (1911), from centre front to the side. Back: I. Rosenfeld, The Practical Designer (1911), lesson 142. Both
 * take in 3/4 in at the centres. Common practice, because neither book says how: the side seam midway under the
 * arm (Ingalls has it at the back of the armhole), a neck broad by a fifth of its girth (Ingalls has 2 1/2 in, a
 * fifth of 12 1/2), darts with equal legs, the dart of the back, the shape of the curves.
 */
export const BODICE_FOUNDATION = define({
  name: "BODICE_FOUNDATION",
  summary:
    "The front or the back of a close-fitting bodice, drafted from direct measurements, with its darts.",
  source:
    "C. C. Ingalls, Text-Book on Domestic Art (San Francisco 1911), French lining draft, for the front; I. Rosenfeld, The Practical Designer (New York 1911), lesson 142, for the back; common practice for the side seam, the breadth of the neck, the curves and the back dart",
  words:
    "bodice draft a bodice block sloper foundation basic waist lining blouse shirt waist pattern front back bust darts body block toile",
  takes: {
    part: { kind: "text", about: "the front or the back", choices: ["front", "back"] },
    bust: {
      kind: "length",
      usual: [70, 140],
      about: "girth over the fullest part of the bust",
      from: 50,
      to: 250,
    },
    waist: { kind: "length", usual: [45, 130], about: "girth of the waist", from: 35, to: 240 },
    neck: { kind: "length", usual: [28, 48], about: "girth of the neck at its base", from: 20, to: 80 },
    back_length: {
      kind: "length",
      usual: [33, 50],
      about: "from the bone at the nape down to the waist",
      from: 20,
      to: 90,
    },
    back_depth: {
      kind: "length",
      usual: [13, 26],
      about: "from the bone at the nape down to the level of the underarm",
      from: 8,
      to: 50,
    },
    back_width: {
      kind: "length",
      usual: [28, 48],
      about: "across the back from arm to arm, half-way down the armholes",
      from: 15,
      to: 90,
    },
    front_length: {
      kind: "length",
      usual: [28, 48],
      about: "from the pit of the neck down to the waist",
      from: 15,
      to: 90,
    },
    front_depth: {
      kind: "length",
      usual: [8, 20],
      about: "from the pit of the neck down to the level of the underarm",
      from: 4,
      to: 45,
    },
    chest: {
      kind: "length",
      usual: [26, 48],
      about: "across the chest from arm to arm, half-way down the armholes",
      from: 15,
      to: 90,
    },
    shoulder: {
      kind: "length",
      usual: [9, 17],
      about: "from the side of the neck to the end of the shoulder",
      from: 4,
      to: 30,
    },
    dart_height: {
      kind: "length",
      usual: [10, 24],
      about: "height of the front darts above the waist",
      from: 2,
      to: 50,
    },
    bust_ease: {
      kind: "length",
      usual: [0, 15],
      about: "room at the bust, all round; the published draft has none",
      from: 0,
      to: 60,
      otherwise: 0,
    },
    waist_ease: {
      kind: "length",
      usual: [0, 12],
      about: "room at the waist, all round; the published draft has none",
      from: 0,
      to: 60,
      otherwise: 0,
    },
    darts: { kind: "count", about: "darts in each half of the front", from: 1, to: 2, otherwise: 1 },
  },
  returns: "piece",
  usual: [
    "waist <= 0.95 * bust",
    "neck <= 0.7 * waist",
    "front_length <= back_length",
    "back_depth <= 0.6 * back_length",
    "front_depth <= 0.6 * front_length",
    "front_depth < back_depth",
    "dart_height <= front_length - front_depth",
    "chest <= 1.1 * back_width",
    "back_width <= 0.45 * bust",
    "shoulder <= 0.5 * chest",
    {
      rule: "chest <= 2 * (neck / 5 + shoulder)",
      says: "the chest is broader than the neck and both shoulders together, so that the armhole slants outwards below the shoulder",
    },
    {
      rule: "back_width <= 2 * (neck / 5 + shoulder)",
      says: "the back_width is broader than the neck and both shoulders together, so that the armhole slants outwards below the shoulder",
    },
  ],
  alike: {
    "neck, back_length": "a neck may measure more or less than the back is long",
    "neck, back_width": "a neck may measure more or less than the back is broad",
    "neck, front_length": "a neck may measure more or less than the front is long",
    "neck, chest": "a neck may measure more or less than the chest is broad",
    "back_length, back_width": "a back may be longer or broader",
    "back_length, chest": "a chest may be broader than the back is long",
    "back_depth, dart_height": "a dart may be longer or shorter than the armhole is deep",
    "back_width, front_length": "a back may be broader than the front is long",
    "back_width, chest": "a chest may be as broad as the back, or a little broader",
    "front_length, chest": "a front may be longer or broader",
    "front_depth, shoulder": "a shoulder may be longer than the front of the armhole is deep",
    "front_depth, dart_height": "a dart may be longer or shorter than the armhole is deep",
    "shoulder, dart_height": "a dart may be longer or shorter than the shoulder",
    "bust_ease, waist_ease": "either may have more room",
  },
  compute(given, context) {
    const piece = refuseUnlessSimple(
      "these measurements give an outline that crosses itself: check back_depth, front_depth, shoulder and the widths",
      given.part === "front" ? bodiceFront(given, context) : bodiceBack(given, context),
    );
    context.measure("area", "area of this half", pieceArea(piece));
    return piece;
  },
  draw: (_, __, piece) => (typeof piece === "object" ? drawPattern(piece, { area: "area" }) : []),
  examples: [
    {
      given: { part: "front", bust: 36, waist: 24, neck: 12.5, back_length: 15.5, back_depth: 7, back_width: 13.5, front_length: 14, front_depth: 5, chest: 13, shoulder: 5, dart_height: 6.5 }, // biome-ignore format: one figure's measurements
      gives: { edges: [5] },
      because: "the shoulder is as long as measured",
    },
    {
      given: { part: "back", bust: 36, waist: 24, neck: 15, back_length: 15.5, back_depth: 7, back_width: 15, front_length: 14, front_depth: 5, chest: 14, shoulder: 6, dart_height: 6.5 }, // biome-ignore format: one figure's measurements
      gives: { length: 16.5 },
      because: "Rosenfeld's size 36: 15 1/2 to the natural waist, and the neck point 1 above the top line",
    },
    {
      given: { part: "front", bust: 96, waist: 74, neck: 37, back_length: 41, back_depth: 19, back_width: 36, front_length: 36, front_depth: 14, chest: 34, shoulder: 12.5, dart_height: 17, bust_ease: 5, waist_ease: 3, darts: 2 }, // biome-ignore format: one figure's measurements
      gives: { edges: [12.5] },
      unit: "cm",
      because: "with room at bust and waist, and two darts",
    },
  ],
  cautions:
    "This is a foundation to be fitted: sew it in cheap cloth first, over what is worn beneath, and mark the neck, the armholes and the darts on the wearer.",
});
