import { define } from "../define.ts";
import { breeches } from "../drafting/breeches-foundation.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { pieceArea } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";

/**
 * One leg of the front or of the back of breeches, knickerbockers, drawers or trousers, in the book's unit, without
 * allowances, the side at the left, the grain down the leg. Edges: waist, centre front or seat seam, inside leg, lower edge, side. Front and back
 * together are half of the waist with its fullness, half of the seat with its ease, the knee and the small; sides
 * are equal and so are inside legs, and the crotch is one smooth line under the body. The fullness is gathered or pleated into the band.
 *
 * Published figures. Front: I. Rosenfeld, The Practical Designer, underwear (1918), lessons 411 and 427; the quarter of the
 * seat, its twelfth for the fork and the slope of the seat are also those of the article "Pants" of G. F. Hertzer, Garment
 * Cutting in the Twentieth Century (1892). Derived, because no published draft of the back could be read whole: another twelfth
 * of the seat for the back's fork (common practice), and its depth, from the two inside legs that must be equal.
 */
export const BREECHES_FOUNDATION = define({
  name: "BREECHES_FOUNDATION",
  summary: "The front or the back of breeches, knickerbockers or trousers, drafted from direct measurements.",
  source:
    "I. Rosenfeld, The Practical Designer, underwear (New York 1918), lessons 411 and 427, for the front; G. F. Hertzer, Garment Cutting in the Twentieth Century (1892), for the slope of the seat; the rest of the back is common practice and geometry, not a published draft",
  words:
    "breeches trousers draft drawers bloomers knickerbockers pants pantaloons crotch rise fork inside leg seat seam block foundation",
  takes: {
    part: { kind: "text", about: "the front or the back", choices: ["front", "back"] },
    waist: {
      kind: "length",
      usual: [50, 130],
      about: "girth of the waist, with the room wanted in the band",
      from: 30,
      to: 260,
    },
    seat: {
      kind: "length",
      usual: [55, 150],
      about: "girth over the fullest part of the seat",
      from: 40,
      to: 280,
    },
    rise: {
      kind: "length",
      usual: [15, 42],
      about: "from the waist down to the seat of a chair, at the side",
      from: 10,
      to: 80,
    },
    knee_length: {
      kind: "length",
      usual: [28, 75],
      about: "from the waist down the side to the knee",
      from: 20,
      to: 120,
    },
    side_length: {
      kind: "length",
      usual: [30, 120],
      about: "from the waist down the side to the lower edge, below the knee",
      from: 22,
      to: 200,
    },
    knee: {
      kind: "length",
      usual: [22, 62],
      about: "width at the knee all round: girth with its ease",
      from: 15,
      to: 200,
    },
    small: {
      kind: "length",
      usual: [19, 60],
      about:
        "width of the lower edge all round: girth of the small, below the knee, or of the ankle, with its ease",
      from: 12,
      to: 200,
    },
    seat_ease: {
      kind: "length",
      usual: [2, 14],
      about: "room at the seat, all round; it lies in the back",
      from: 0,
      to: 60,
      otherwise: { cm: 5, in: 2 },
    },
    fullness: {
      kind: "length",
      usual: [0, 60],
      about: "extra width at the top, all round, to be gathered or pleated into the band",
      from: 0,
      to: 200,
      otherwise: 0,
    },
    seat_raise: {
      kind: "length",
      usual: [2, 12],
      about: "how far the seat seam rises above the waist at centre back",
      from: 0,
      to: 30,
      otherwise: { cm: 6, in: 2.5 },
    },
    slope: {
      kind: "angle",
      usual: [5, 25],
      about: "how far the seat seam leans from the grain; less for a flat seat, more for riding",
      from: 0,
      to: 35,
      otherwise: 15,
    },
  },
  returns: "piece",
  usual: [
    "waist <= seat",
    "rise <= 0.36 * seat",
    "rise <= 0.6 * knee_length",
    "knee_length <= 0.8 * seat",
    "knee <= 0.6 * seat",
    "knee <= 0.9 * knee_length",
    "small <= 0.98 * knee",
    "seat_ease <= 0.1 * seat",
    "fullness <= 0.25 * seat",
    "seat_ease <= 0.4 * small",
    {
      rule: "seat <= 4.2 * (knee_length - rise)",
      says: "the leg from rise to knee is short for the seat, so that the fork of the back lies low",
    },
  ],
  alike: {
    "waist, knee_length": "a waist may measure more or less than the way down to the knee",
    "waist, side_length": "a waist may measure more or less than the way down the side",
    "seat, side_length": "a seat may measure more or less than the way down the side",
  },
  compute(given, context) {
    const piece = refuseUnlessSimple(
      "these measurements give an outline that crosses itself: check knee, small, seat and the lengths",
      breeches(given, context),
    );
    context.measure("area", "area of this piece", pieceArea(piece));
    return piece;
  },
  draw: (_, __, piece) => (typeof piece === "object" ? drawPattern(piece, { area: "area" }) : []),
  examples: [
    {
      given: {
        part: "front",
        waist: 34,
        seat: 39,
        rise: 11,
        knee_length: 23,
        side_length: 27,
        knee: 16,
        small: 14,
      },
      gives: { length: 27.5, width: 13 },
      because: "half an inch is added at the side; a quarter and a twelfth of the seat are 13 in across",
    },
    {
      given: { part: "back", waist: 34, seat: 39, rise: 11, knee_length: 23, side_length: 27, knee: 16, small: 14, seat_ease: 3, fullness: 8, seat_raise: 3, slope: 18 }, // biome-ignore format: one figure's measurements
      gives: { length: 30 },
      because: "a full seat: the seat seam rises 3 in above the waist",
    },
    {
      given: {
        part: "front",
        waist: 72,
        seat: 100,
        rise: 29,
        knee_length: 60,
        side_length: 104,
        knee: 52,
        small: 46,
      },
      gives: { length: 105.27, width: 100 / 3 },
      unit: "cm",
      because: "trousers: 104 cm down the side and half an inch; a quarter and a twelfth of 100 across",
    },
  ],
  cautions:
    "This is a foundation to be fitted: sew it in cheap cloth first, sit, climb a step and bend in it, and mark the seat seam and the fork on the wearer.",
});
