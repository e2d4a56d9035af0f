import { comparedName } from "../compared-name.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { changeOf } from "../seams/carried-change.ts";
import { EXAMPLE_LOG, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { LOG_LIST, logOf } from "../seams/log-list.ts";
import { JOINING, SEAM_LIST, seamsOf } from "../seams/seam-list.ts";

/**
 * By how much an edge has changed all round in the fittings that the log still counts, in the book's unit: let
 * out positive, taken in negative. Its own entries count: those all round, and twice those for each side. An
 * edge without entries takes the change of the edge it is sewn to, through plain and eased seams of the list of
 * seams, through several in a row, each once; of edges in succession the changes add up. `end` asks for the top
 * or the bottom of a seam; an entry without an end counts for both. Changes that are not counted, across gathers
 * or under the other name of the seam, are said. With "each side" the answer is half. Refuses
 * a name that neither list knows, a misspelt entry, an amount that names no seam, and neighbours that disagree.
 * Source: common practice.
 */
export const FITTING_CHANGE = define({
  name: "FITTING_CHANGE",
  summary:
    "The net change of an edge in the fitting log; where it has no entries, that of the edge it is sewn to, carried along the list of seams.",
  source: "common practice",
  words:
    "fitting log net alteration carry neighbour page of seams let out taken in each side all round mock-up",
  takes: {
    fitting_log: {
      kind: "block",
      about:
        "the fitting log with its headings: piece, seam, amount, in or out, top or bottom, each side or all round",
      list: LOG_LIST,
    },
    seam: { kind: "text", about: 'the piece and its edge: "bodice waist"' },
    seams: {
      kind: "block",
      about:
        "the list of seams, along which a change is carried; without it only the edge's own entries count",
      list: SEAM_LIST,
      reads: JOINING,
      otherwise: null,
    },
    end: {
      kind: "text",
      about: "top or bottom, for a seam that was altered at one end",
      choices: ["top", "bottom"],
      otherwise: null,
    },
    per: {
      kind: "text",
      about: "whether the change is wanted all round or on each side",
      choices: ["all round", "each side"],
      otherwise: "all round",
    },
  },
  returns: "length",
  compute({ fitting_log, seam, seams, end, per }, { measure, step, doubt }) {
    const name = comparedName(seam);
    if (name === "")
      throw new Refusal(phrase`seam is empty: write the piece and its edge, such as "bodice waist"`);
    const log = logOf(fitting_log);
    const { from, way, uncounted } = changeOf(name, end, log, seams ? seamsOf(seams) : []);
    const rows = from.flatMap(({ entries }) => entries.map(({ number }) => number));
    const listed = () =>
      rows.length === 0
        ? phrase`entries that count, in no row of the fitting log`
        : phrase`entries that count, in row ${rows.join(", ")} of the fitting log`;
    measure("entries", listed, rows.length);
    if (way.length > 0)
      measure(
        "carried",
        () => phrase`carried through ${way.map((one) => `"${one}"`).join(", ")}; the seams passed`,
        way.length - 1,
      );
    const sum = (part: "allRound" | "eachSide") => from.reduce((total, one) => total + one[part], 0);
    const round = measure("all_round", "sum of the amounts all round; let out is +", sum("allRound"));
    const sides = measure("each_side", "sum of the amounts for each side; let out is +", sum("eachSide"));
    const net = step("net", "all_round + 2 * each_side", round + 2 * sides);
    for (const sentence of uncounted) doubt(sentence);
    return per === "each side" ? step("on_each_side", "net / 2", net / 2) : net;
  },
  draw(_, { net = 0 }) {
    if (net === 0) return [];
    const tall = 2 * Math.abs(net);
    return [
      stroke([[0, 0], [0, tall]], "stitch", { label: phrase`first stitching` }),
      stroke([[net, 0], [net, tall]], "seam", { label: phrase`now` }),
      dimension([0, tall / 2], [net, tall / 2], net > 0 ? { label: phrase`let out`, shows: "net" } : { label: phrase`taken in` }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { fitting_log: EXAMPLE_LOG, seam: "skirt waist", seams: EXAMPLE_SEAMS },
      gives: 0.75,
      because:
        "the front's waist was let out by 1/4 on each side, the back's by 1/4, and the skirt is sewn to both",
      formula: '=FITTING_CHANGE(fitting_log; "skirt waist"; seams)',
    },
    {
      given: { fitting_log: EXAMPLE_LOG, seam: "front waist" },
      gives: 0.5,
      because: "1/4 in on each side is 1/2 in all round",
      formula: '=FITTING_CHANGE(fitting_log; "front waist")',
    },
    {
      given: { fitting_log: EXAMPLE_LOG, seam: "sleeve cap", seams: EXAMPLE_SEAMS, per: "each side" },
      gives: -0.125,
      because: "the armhole was taken in by 1/8 in on each side, and each sleeve follows it",
      formula: '=FITTING_CHANGE(fitting_log; "sleeve cap"; seams; ; "each side")',
    },
  ],
});
