/** A small garment's lists, for the examples of the functions that read them. Lengths in inches. */
import { asBlock } from "../block.ts";

/** A bodice of two fronts and a back on the fold, a skirt of two halves, a band. */
export const EXAMPLE_PIECES = asBlock(
  [
    ["front", "M 0 0 L 8 0 L 8 15 L 0 15 Z | edges shoulder, side, waist, centre front", 2, null],
    ["back", "M 0 0 L 6.5 0 L 6.5 15 L 0 15 Z | edges neck, side, waist, centre back", 1, "yes"],
    [
      "skirt",
      "M 0 0 L 14.5 0 L 17.5 4 L 17.5 34 L 0 34 Z | edges waist, hip, side, hem, centre back",
      2,
      null,
    ],
    ["gathered skirt", "M 0 0 L 29 0 L 29 34 L 0 34 Z | edges waist, side, hem, centre back", 2, null],
    ["sleeve", "M 0 0 L 9 0 L 9 16 L 0 16 Z | edges cap, front, wrist, back", 2, null],
    ["armhole", "M 0 0 L 8.5 0 L 8.5 8 L 0 8 Z | edges lower, side, upper, end", 2, null],
  ].flat(),
  4,
  ["Piece", "Outline", "How many", "On the fold"],
);

export const EXAMPLE_SEAMS = asBlock(
  [
    ["front + back", "waist", "skirt", "waist", "plain", null],
    ["front", "side", "back", "side", null, null],
    ["gathered skirt", "waist", "front + back", "waist", "gathered", 29],
    ["sleeve", "cap", "armhole", "lower", "eased", 0.5],
  ].flat(),
  6,
  ["Piece", "Edge", "Sewn to", "Its edge", "How", "Wanted difference"],
);

export const EXAMPLE_LOG = asBlock(
  [
    ["front", "waist", 0.25, "out", "each side"],
    ["back", "waist", 0.5, "out", null],
    ["back", "waist", 0.25, "in", "all round"],
    ["armhole", "lower", 0.125, "in", "each side"],
  ].flat(),
  5,
  ["Piece", "Seam", "Amount", "In or out", "Each side or all round"],
);
