/**
 * The line of the cloth round the body at one level, as places beside the supporting section: how
 * far round (a share of its girth from centre back) and how far out. Soft folds are even waves;
 * pleats are folded flat, their hidden layers one behind the other.
 */
import type { PleatTurn } from "./garment.ts";

export interface FoldLine {
  /** Shares of the way round, 0 to 1; they go back where a pleat does. */
  readonly along: Float64Array;
  /** How far out each place is for pleats alone. */
  readonly layer: Float64Array;
  /** How far out each place is for a soft fold of 1: 0 in a hollow, 2 on a crest. */
  readonly wave: Float64Array;
}

/** How many places draw one soft fold. */
const FINE = 24;
/** How many times three places draw the whole way round, where cloth is pleated. */
const ROUND = 80;

/**
 * The line at the level `down` (0 at the top, 1 at the hem). `girth` is the way round the body at that
 * level, `thick` the thickness with which a layer of cloth is drawn. Every level has the same number of places, so that the
 * places of one number hang one below the other.
 */
export function foldLine(
  folds: number,
  pleats: readonly PleatTurn[],
  down: number,
  girth: number,
  thick: number,
): FoldLine {
  const along: number[] = [];
  const layer: number[] = [];
  const put = (at: number, out: number) => {
    along.push(at);
    layer.push(out);
  };
  const run = (from: number, to: number, a: number, b: number, count: number) => {
    for (let i = 0; i < count; i += 1) put(from + ((to - from) * i) / count, a + ((b - a) * i) / count);
  };
  if (pleats.length === 0) run(0, 1, 0, 0, folds * FINE);
  else {
    const first = pleats[0]!;
    const [start, end] = [before(first), after(pleats.at(-1)!)];
    // The layer where the ring closes, at centre back: on the slope from the last pleat to the first.
    const gap = first.at + 1 - pleats.at(-1)!.at;
    const closing = end + ((start - end) * (1 - pleats.at(-1)!.at)) / Math.max(gap, 1e-9);
    let [at, out] = [0, closing * thick];
    // As many places between two pleats at every level: the distance on the first level decides.
    const places = (to: number, i: number) =>
      3 * Math.max(2, Math.round((to - (i === 0 ? 0 : pleats[i - 1]!.at)) * ROUND));
    for (const [i, turn] of pleats.entries()) {
      const deep = (turn.depth[0] + (turn.depth[1] - turn.depth[0]) * down) / girth;
      run(at, turn.at, out, before(turn) * thick, places(turn.at, i));
      const inner = turn.at + turn.side * deep;
      const [one, two] = turn.side < 0 ? [thick, 0] : [0, thick];
      put(turn.at, before(turn) * thick);
      run(turn.at, inner, turn.side < 0 ? one : 0, one, 6);
      run(inner, turn.at, two, two, 6);
      [at, out] = [turn.at, after(turn) * thick];
    }
    run(at, 1, out, closing * thick, places(1, pleats.length));
  }
  const wave = Float64Array.from(along, (at) => 1 + Math.cos(2 * Math.PI * folds * at));
  return { along: Float64Array.from(along), layer: Float64Array.from(layer), wave };
}

/**
 * How many layers of cloth lie under the line just before a pleat turns, and just after it. A pleat whose
 * fold points back to the beginning is reached on top of its two hidden layers and left on the body;
 * one whose fold points forward is reached on the body and left on top.
 */
const before = ({ side }: PleatTurn): number => (side < 0 ? 2 : 0);
const after = ({ side }: PleatTurn): number => (side < 0 ? 0 : 2);
