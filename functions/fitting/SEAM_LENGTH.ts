import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { phrase } from "../phrase.ts";
import { askedSeam, SEAM_ASKED, SEAMS } from "../seams/asked-seam.ts";
import { EXAMPLE_PIECES, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { JOINING, sideName } from "../seams/seam-list.ts";
import { doubtCounts, measuredSeam, seamsBeside, seamsText } from "../seams/seam-sides.ts";

/**
 * The length of one side of a seam of the list as the garment has it, in the book's unit: along the edge that is
 * asked about, along the one it is sewn to, or the difference, the first less the second. Where the garment has several
 * such seams it is the length of one of them, which stands beside the answer. Edges in
 * succession are added up; pieces on the fold and pieces of which there are several are counted as in SEAM_VERDICT.
 * Source: geometry.
 */
export const SEAM_LENGTH = define({
  name: "SEAM_LENGTH",
  summary:
    "How long either side of a seam of the list is in the garment, or by how much the first side is longer.",
  source: "geometry",
  words: "page of seams edge length both sides difference ease list sewn",
  takes: {
    ...SEAM_ASKED,
    seams: { ...SEAMS, reads: JOINING },
    which: {
      kind: "text",
      about: "the side that piece and edge name, the second that it is sewn to, or the difference of both",
      choices: ["first", "second", "difference"],
      otherwise: "first",
    },
  },
  returns: "length",
  compute({ which, ...asked }, { measure, step, doubt }) {
    const { seam, asked: own } = askedSeam(asked);
    const measured = measuredSeam(seam, asked.pieces);
    doubtCounts(measured, doubt);
    const { sides, seams } = measured;
    const [first, second] = [sides[own], sides[own === 0 ? 1 : 0]];
    measure("such_seams", () => seamsText(seams), seams);
    const a = measure("first_edge", () => phrase`along ${first.text}`, first.length);
    const b = measure("second_edge", () => phrase`along ${second.text}`, second.length);
    const difference = step("difference", "first_edge - second_edge", a - b);
    return { first: a, second: b, difference }[which];
  },
  beside({ which, ...asked }, answer, { say }) {
    const { seam } = askedSeam(asked);
    return seamsBeside(measuredSeam(seam, asked.pieces).seams, Number(answer), say);
  },
  draw(given, { first_edge = 0, second_edge = 0 }) {
    const { seam, asked } = askedSeam(given);
    const names = asked === 0 ? seam.sides : seam.sides.toReversed();
    return twoSeams(first_edge, second_edge, { names: names.map(sideName) as [string, string] });
  },
  examples: [
    {
      given: {
        seams: EXAMPLE_SEAMS,
        pieces: EXAMPLE_PIECES,
        piece: "front + back",
        edge: "waist",
        sewn_to: "skirt",
        its_edge: "waist",
      },
      gives: 29,
      because: "two fronts of 8 in and a back on the fold of twice 6 1/2 in",
      formula: "=SEAM_LENGTH(seams; pieces; A2; B2; C2; D2)",
    },
    {
      given: {
        seams: EXAMPLE_SEAMS,
        pieces: EXAMPLE_PIECES,
        piece: "sleeve",
        edge: "cap",
        which: "difference",
      },
      gives: 0.5,
      because: "each cap is half an inch longer than its armhole",
      formula: '=SEAM_LENGTH(seams; pieces; "sleeve"; "cap"; ; ; "difference")',
    },
  ],
});
