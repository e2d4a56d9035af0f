/**
 * A strip slashed into equal sections and opened, or folded out, by a gap of its own at each slash.
 *
 * A maker trues the cornered edges of the opened paper with a smooth line. Here every section
 * keeps its own straight grain at its middle, and from one middle to the next the edges run in
 * arcs about one centre that turn by just what the slash between them opens: smooth, no longer and
 * no shorter than the paper, and with even gaps and half gaps at the edges one arc all along. A gap
 * is what the hem gains at the slash (or the top loses), measured along the trued edge.
 */
import type { Takes } from "../define.ts";
import { arcFrom, directionDown, pointAhead } from "../geometry/constant-curvature.ts";
import { type Edge, line, type Point, pointAt, type Stroke } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The arguments that say how many gaps a strip with even gaps has. */
export const SECTIONS = {
  sections: {
    kind: "count",
    about: "how many strips there are between the slashes, the outer two included",
    from: 1,
    to: 200,
  },
  edge_share: {
    kind: "share",
    about: "how much of a gap each outer edge takes",
    from: 0,
    to: 1,
    otherwise: 0.5,
  },
} as const satisfies Takes;

export interface SlashedStrip {
  /** From the left end: the top and the hem. */
  readonly top: Edge;
  readonly hem: Edge;
  /** The middle of each section from top to hem, and how far its grain leans, in radians. */
  readonly middles: readonly Stroke[];
  readonly leans: readonly number[];
  /** Each slash from its end at the top to the two sides of its gap at the hem. */
  readonly slashes: readonly (readonly [top: Point, before: Point, after: Point])[];
  /** Lean of the right side; the left one leans by `start`. */
  readonly end: number;
}

/** The gain of each stretch of edge from middle to middle; the outer half sections are first and last. */
const gains = (gaps: readonly number[], edgeShare: number): number[] => [
  edgeShare * gaps[0]!,
  ...gaps,
  edgeShare * gaps.at(-1)!,
];

/** The sum of all gaps, including the shares at the edges. */
export const totalGap = (gaps: readonly number[], edgeShare: number): number =>
  gains(gaps, edgeShare).reduce((sum, gap) => sum + gap, 0);

/** The opened strip, its upper left corner at (0, 0), its left side leaning by `start` radians. */
export function slashedStrip(
  strip: number,
  depth: number,
  gaps: readonly number[],
  folded: boolean,
  edgeShare: number,
  start: number,
): SlashedStrip {
  const sections = gaps.length + 1;
  const width = strip / sections;
  const turn = totalGap(gaps, edgeShare) / depth;
  if (turn > 2 * Math.PI * (1 + 1e-9)) {
    throw new Refusal(
      (say) =>
        phrase`gaps must come to at most ${say(2 * Math.PI * depth, depth, turn * depth)} at a depth of ${say(depth, 2 * Math.PI * depth, turn * depth)}, not ${say(turn * depth, 2 * Math.PI * depth, depth)}: that needs more than one circle: cut it in panels`,
    );
  }
  const top: Stroke[] = [];
  const hem: Stroke[] = [];
  const middles: Stroke[] = [];
  const leans: number[] = [];
  const slashes: [Point, Point, Point][] = [];
  let at: Point = [0, 0];
  let low: Point = pointAhead(at, directionDown(start), depth);
  let lean = start;
  gains(gaps, edgeShare).forEach((gain, i, all) => {
    const outer = i === 0 || i === all.length - 1;
    const long = outer ? width / 2 : width;
    const short = folded ? long - gain : long;
    if (short <= 1e-9 * width) {
      const share = outer ? edgeShare : 1;
      throw new Refusal(
        (say) =>
          phrase`gaps must be less than ${say(long / share, gain / share)}, the length that a section has at the top, not ${say(gain / share, long / share)}`,
      );
    }
    const bend = gain / depth / short;
    const above = arcFrom(at, lean, bend, short);
    const below = arcFrom(low, lean, bend / (1 + depth * bend), short + gain);
    top.push(above);
    hem.push(below);
    if (!outer) {
      const half = folded ? 0 : gain / (short + gain) / 2;
      slashes.push([pointAt(above, 0.5), pointAt(below, 0.5 - half), pointAt(below, 0.5 + half)]);
    }
    [at, low] = [above.to, below.to];
    lean += gain / depth;
    if (i < all.length - 1) {
      middles.push(line(at, low));
      leans.push(lean);
    }
  });
  return { top, hem, middles, leans, slashes, end: lean };
}
