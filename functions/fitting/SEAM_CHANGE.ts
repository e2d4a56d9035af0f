import { define } from "../define.ts";
import { seamRows } from "../drafting/fitting-log.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much a seam's girth has gained in all fittings together, in the book's unit: the sum of the
 * amounts in the rows of a fitting log that name this piece and this seam. Let out counts
 * positive, taken in negative, and an amount is the change of the girth, both edges of the seam
 * together: a fold of 1/4 in pinned at a seam takes in 1/2 in and is written −1/2. Names are
 * compared without regard to capitals or spaces at the ends; rows without names and amount are
 * passed over. A seam never fitted has changed by 0 when the log is blank or `garment` lists the
 * seam; otherwise a name that the log does not have is refused, for it may be misspelt, and so is a
 * row of the log that names a seam not in `garment`. Refuses columns of unequal length, a row of
 * this seam without an amount, and an amount that names no seam. Source: common practice.
 */
export const SEAM_CHANGE = define({
  name: "SEAM_CHANGE",
  summary: "The net amount by which a seam has been let out or taken in, over all rows of the fitting log.",
  source: "common practice",
  words: "fitting log net alteration mock-up toile sum let out taken in",
  takes: {
    pieces: { kind: "text", about: "the log's column of pieces", many: true, blanks: true },
    seams: { kind: "text", about: "the log's column of seams", many: true, blanks: true },
    amounts: {
      kind: "length",
      usual: [-30, 30],
      about: "the log's column of amounts: let out positive, taken in negative",
      from: -500,
      to: 500,
      many: true,
      blanks: true,
    },
    piece: { kind: "text", about: "the piece asked about" },
    seam: { kind: "text", about: "the seam of that piece" },
    garment: {
      kind: "text",
      about:
        'all seams of the garment, one in each cell, such as "bodice side"; a listed seam that was never fitted has changed by 0',
      otherwise: null,
      many: true,
      blanks: true,
    },
  },
  returns: "length",
  compute({ piece, seam, ...log }, { step, measure }) {
    const rows = seamRows(log, piece, seam);
    const sum = (side: number) => rows.reduce((total, amount) => total + Math.max(0, side * amount), 0);
    measure("times", "rows of the log that name this piece and seam", rows.length);
    const out = measure("let_out", "sum of the amounts let out in those rows", sum(1));
    const taken = measure("taken_in", "sum of the amounts taken in in those rows", sum(-1));
    return step("net", "let_out - taken_in", out - taken);
  },
  draw({ piece, seam, ...log }, { net = 0 }) {
    // From the first stitching line, one step for each fitting, and where the seam is now.
    const rows = seamRows(log, piece, seam);
    const tall = Math.max(...rows.map(Math.abs), Math.abs(net), 0);
    if (tall === 0) return [];
    let at = 0;
    const steps = rows.map((amount, i): Shape => {
      const y = i * tall * 0.3;
      const from = at;
      at += amount;
      return dimension([from, y], [at, y], { label: amount < 0 ? phrase`taken in` : phrase`let out` });
    });
    const low = rows.length * tall * 0.3;
    return [
      stroke([[0, -tall * 0.3], [0, low]], "stitch", { label: phrase`first stitching` }),
      stroke([[net, -tall * 0.3], [net, low]], "seam", { label: phrase`now` }),
      ...steps,
      dimension([0, low], [net, low], net >= 0 ? { label: phrase`net`, shows: "net" } : { label: phrase`net, taken in` }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: {
        pieces: ["bodice", "skirt", "Bodice", "bodice", null],
        seams: ["side", "side", "side ", "shoulder", null],
        amounts: [-0.5, 1, 0.25, -0.375, null],
        piece: "bodice",
        seam: "side",
      },
      gives: -0.25,
      because: "half an inch taken in at the first fitting, a quarter let out again at the second",
    },
    {
      given: {
        pieces: ["skirt"],
        seams: ["side"],
        amounts: [1],
        piece: "bodice",
        seam: "side",
        garment: ["skirt side", "bodice side"],
      },
      gives: 0,
      because: "the bodice side was never altered",
    },
  ],
});
