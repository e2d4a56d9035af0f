import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * Flat width of cloth for smocking, in the book's unit: the finished width times the ratio it
 * draws up by, up to whole gathering dots, for each dot makes one tube. Cloth draws up to about a
 * quarter; tight stitches and thin cloth more. Work a sample. Source: rule "about one-fourth".
 */
export const SMOCK_WIDTH = define({
  name: "SMOCK_WIDTH",
  summary: "How wide to cut cloth for smocking, and how many gathering dots to mark across it.",
  source:
    '"Construction of Clothing", textbook page, University of Wisconsin digital collection: about one-fourth',
  words: "smocking dots tubes reeds honeycomb gathers yoke bishop how much",
  takes: {
    finished: { kind: "length", about: "width once smocked", from: 1, to: 1000 },
    dots: { kind: "length", about: "distance from dot to dot along a row", from: 0.1, to: 10 },
    ratio: {
      kind: "share",
      usual: [2, 6],
      about: "fullness: width before smocking over width afterwards",
      from: 1,
      to: 10,
      otherwise: 4,
    },
  },
  returns: "length",
  compute({ finished, dots, ratio }, { step }) {
    const exact = step("exact", "finished * ratio", finished * ratio);
    const tubes = step("tubes", "ROUNDUP(ROUND(exact / dots; 8); 0)", roundUpToWhole(exact / dots));
    step("dots_marked", "tubes + 1", tubes + 1);
    step("tube_width", "finished / tubes", finished / tubes);
    return step("flat", "tubes * dots", tubes * dots);
  },
  draw({ finished, dots }, { flat = 0, dots_marked = 0 }) {
    const width = finished / 4;
    const shapes = drawStrips(
      { length: flat, width, label: phrase`flat`, lengthShows: "flat" },
      { length: finished, width, label: phrase`smocked` },
    );
    const rows: Shape[] = [0.3, 0.7].map((row, i) => ({
      kind: "marks",
      at: Array.from({ length: Math.min(dots_marked, 2000) }, (_, k) => [k * dots, row * width] as const),
      mark: "dot",
      ...(i === 0 && dots_marked <= 2000 ? { shows: "dots_marked" } : {}),
    }));
    return [...shapes, ...rows, dimension([0, -width / 4], [dots, -width / 4], { label: phrase`dots` })];
  },
  examples: [
    { given: { finished: 12, dots: 0.25 }, gives: 48, because: "draws up to about a quarter: 192 tubes" },
    { given: { finished: 20, dots: 0.6, ratio: 3 }, gives: 60, unit: "cm", because: "100 tubes of 0.6 cm" },
    { given: { finished: 5, dots: 0.375, ratio: 3 }, gives: 15, because: "40 tubes" },
  ],
});
