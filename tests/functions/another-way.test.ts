/**
 * The answers of functions whose own tests are short, each worked out by another way than the function's: counted one
 * by one, walked along a drawn line, or measured between points. Each runs over a grid of figures.
 */
import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell } from "../../functions/define.ts";
import { isRefused, run } from "../../functions/run.ts";

type Point = readonly [x: number, y: number];
type Grid = readonly (readonly (number | string)[])[];
type Way = [name: string, how: string, grid: Grid, other: (...args: never[]) => number];

/** The length of a curve, walked in straight steps; twice as many steps give its error, which is then taken off. */
function walked(at: (share: number) => Point): number {
  const steps = (count: number) => {
    let [sum, before] = [0, at(0)];
    for (let i = 1; i <= count; i += 1) {
      const here = at(i / count);
      sum += Math.hypot(here[0] - before[0], here[1] - before[1]);
      before = here;
    }
    return sum;
  };
  return (4 * steps(800) - steps(400)) / 3;
}

const circle = (radius: number, part: number, turn = 0) =>
  walked((share) => [
    radius * Math.cos(turn + 2 * Math.PI * part * share),
    radius * Math.sin(turn + 2 * Math.PI * part * share),
  ]);

const walkedRound = (ring: readonly Point[]) =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);

/** Where a rising function reaches a value, by halving. */
function reached(rising: (x: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i += 1) {
    const middle = (a + b) / 2;
    if (rising(middle) < wanted) a = middle;
    else b = middle;
  }
  return b;
}

/** The least whole number from `first` on for which this holds, found by trying one after the other. */
function least(first: number, holds: (count: number) => boolean): number {
  let count = first;
  while (!holds(count)) count += 1;
  return count;
}

/** How many things stand in a row with no gap above `spacing`; one is enough where the row has no length. */
const inRow = (row: number, spacing: number) =>
  row < 1e-9 ? 1 : least(2, (count) => row / (count - 1) <= spacing * (1 + 1e-9));

/** The radius of the circle through three points, from the sides of their triangle and its area (Heron). */
function radiusThrough(a: Point, b: Point, c: Point): number {
  const side = (p: Point, q: Point) => Math.hypot(p[0] - q[0], p[1] - q[1]);
  const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
  return (side(a, b) * side(b, c) * side(c, a)) / (4 * area);
}

const angleBetween = ([ax, ay]: Point, [bx, by]: Point) =>
  (Math.acos((ax * bx + ay * by) / Math.hypot(ax, ay) / Math.hypot(bx, by)) * 180) / Math.PI;

/** How much longer the line is that runs `away` outside an oval, walked along both. */
function roundOval(girth: number, away: number): number {
  const [a, b] = [3, 2];
  const oval = (size: number, out: number) =>
    walked((share) => {
      const [c, s] = [Math.cos(2 * Math.PI * share), Math.sin(2 * Math.PI * share)];
      const normal = Math.hypot(b * c, a * s);
      return [size * a * c + (out * b * c) / normal, size * b * s + (out * a * s) / normal];
    });
  return oval(girth / oval(1, 0), away);
}

const WAYS: Way[] = [
  ["ARC_CHORD", "the angle found by halving, then the width of the arc", [[4, 12.7, 90], [0.25, 2, 3.9]], (r: number, rise: number) =>
    2 * r * Math.sin(reached((angle) => r * (1 - Math.cos(angle)), rise, 0, Math.PI))],
  ["ARC_RISE", "the angle found by halving, then the height of the arc", [[13, 40, 700], [0.5, 7, 26]], (r: number, chord: number) =>
    r * (1 - Math.cos(reached((angle) => 2 * r * Math.sin(angle), chord, 0, Math.PI / 2)))],
  ["ARC_RADIUS", "the circle through both ends and the middle", [[3, 20, 88], [0.4, 5, 44, 60]], (chord: number, rise: number) =>
    radiusThrough([-chord / 2, 0], [0, rise], [chord / 2, 0])],
  ["ARC_LENGTH", "walked along the circle through both ends and the middle", [[3, 20, 88], [0.4, 5, 44, 60]], (chord: number, rise: number) => {
    const r = radiusThrough([-chord / 2, 0], [0, rise], [chord / 2, 0]);
    return circle(r, Math.atan2(chord / 2, r - rise) / Math.PI);
  }],
  ["BIAS_SQUARE", "the square found by halving, its rounds counted", [[60, 300, 2000], [2, 3.3, 12], [0, 0.6]], (length: number, strip: number, seam: number) =>
    reached((side) => {
      const clear = side - 2 * seam;
      return Math.floor(clear / Math.SQRT2 / strip + 1e-12) * clear * Math.SQRT2;
    }, length, 0, 10_000)],
  ["BINDING_LENGTH", "the line round an edge of even corners, as far out as the binding is wide", [[24, 61], [0, 3], [3, 4, 6], [0.6, 2.5], [60, 90, 120]], (edge: number, lap: number, corners: number, width: number, angle: number) => {
    // Two unit lines meet at the corner; the mitre is where the lines beside them meet.
    const half = (angle / 360) * Math.PI;
    const out: Point = [-width / Math.sin(half), 0];
    const along: Point = [Math.cos(half), Math.sin(half)];
    return edge + lap + corners * 2 * Math.abs(out[0] * along[0] + out[1] * along[1]);
  }],
  ["BUTTON_COUNT", "one more button until no gap is too wide", [[20, 61, 100], [3, 7.5, 20], [0, 2.5], [0, 4, 17.5]], (edge: number, spacing: number, top: number, bottom: number) =>
    inRow(edge - top - bottom, spacing)],
  ["HOOK_COUNT", "one more hook until no gap is too wide", [[5, 36, 40.6], [1.25, 2.5, 5], [0, 0.3, 2.5]], (edge: number, spacing: number, inset: number) =>
    inRow(edge - 2 * inset, spacing)],
  ["EYELET_COUNT", "one more eyelet until no gap is too wide", [[5, 36, 40.6], [1.25, 2.5, 5], [0, 0.3, 2.5]], (edge: number, spacing: number, inset: number) =>
    inRow(edge - 2 * inset, spacing)],
  ["BUTTON_COVER", "walked across the mould, from raw edge to raw edge", [[1.2, 2.5, 4], [0, 0.3], [0.2, 0.6]], (d: number, t: number, u: number) => {
    const way: Point[] = [[u, -t], [0, -t], [0, 0], [d, 0], [d, -t], [d - u, -t]];
    return way.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - way[i]![0], y - way[i]![1]), 0);
  }],
  ["BUTTON_LOOP", "walked half round a ball, there and back, loop by loop", [[1, 1.3, 2.2], [0], [0, 1], [1, 7], ["ball"]], (d: number, _t: number, seam: number, count: number) =>
    Array.from({ length: count }).reduce<number>((sum) => sum + 2 * (circle(d / 2, 0.5) + seam), 0)],
  ["CHANNEL_WIDTH", "walked half round a hoop", [[0.4, 2.5], [0], [0, 0.8], ["round"]], (d: number, _t: number, ease: number) => circle(d / 2, 0.5, 1) + ease],
  ["CURVED_HEM", "walked along the hem of the ring", [[20, 72], [5, 60], [30, 180, 360]], (top: number, depth: number, angle: number) =>
    circle(top / ((angle * Math.PI) / 180) + depth, angle / 360)],
  ["DART_ANGLE", "between the two legs as they are drawn", [[1, 4, 12], [3, 9, 25]], (intake: number, length: number) =>
    angleBetween([-intake / 2, -length], [intake / 2, -length])],
  ["DART_PEAK", "where the folded middle line meets the straight edge beside the leg", [[1, 3, 5], [7, 9, 25]], (intake: number, length: number) => {
    // The middle line turned over about the leg, from the point up to the edge.
    const [lx, ly] = [-intake / 2, length];
    const over: Point = [2 * lx * ly, ly * ly - lx * lx];
    return (length / over[1]) * Math.hypot(...over) - length;
  }],
  ["FLOUNCE_COUNT", "one more ring until the edge is reached", [[50, 254, 900], [6, 10.16], [0.5, 1], [0, 1]], (edge: number, radius: number, part: number, seam: number) =>
    least(1, (count) => count * (circle(radius, part) - 2 * seam) >= edge * (1 - 1e-9))],
  ["GIRTH_OVER", "walked round an oval and round the line that far outside it", [[60, 90], [0.2, 1.5], [1, 4]], (girth: number, thick: number, layers: number) =>
    roundOval(girth, thick * layers)],
  ["GRADE", "size by size, half sizes last", [[40, 92], [-1.5, 0, 4], [-3, 0.5, 6.5]], (base: number, step: number, sizes: number) => {
    let figure = base;
    for (let left = Math.abs(sizes); left > 0; left -= 1) figure += Math.sign(sizes) * Math.min(1, left) * step;
    return figure;
  }],
  ["HOOP_GIRTH", "the quarter wave summed up from its slope", [[1, 2, 4, 5], [150], [150, 320], [5], ["bell"]], (number: number, top: number, bottom: number, count: number) => {
    const [steps, end] = [2000, ((number - 1) / (count - 1)) * (Math.PI / 2)];
    const slope = (i: number) => Math.cos(((i + 0.5) / steps) * end);
    const sum = Array.from({ length: steps }, (_, i) => slope(i)).reduce((all, one) => all + one, 0);
    return top + (bottom - top) * sum * (end / steps);
  }],
  ["MATCH_MARK", "walked along both edges in small steps", [[0, 8, 30, 45], [45], [42, 45, 46], [0, 10], [20, 45]], (at: number, notched: number, other: number, from: number, to: number) => {
    let place = 0;
    const steps = 9000;
    for (let i = 0; i < steps; i += 1) {
      const here = ((i + 0.5) / steps) * at;
      place += (at / steps) * (here > from && here < to ? 1 - (notched - other) / (to - from) : 1);
    }
    return place;
  }],
  ["PACKS_TO_BUY", "pack after pack until there are enough", [[0, 5, 34, 120], [0, 5, 34], [1, 6, 12], [0, 0.1, 0.5]], (needed: number, stock: number, pack: number, spare: number) =>
    least(0, (packs) => packs * pack >= Math.max(0, needed - stock) * (1 + spare) - 1e-9)],
  ["PIPING_WIDTH", "walked round the cord", [[0.3, 0.6, 2], [0, 1.5]], (cord: number, seam: number) => circle(cord / 2, 1) + 2 * seam],
  ["POLE_CASING", "walked half round the pole", [[1, 3.5], [0, 1.2], [0, 1], [0, 4]], (d: number, ease: number, turning: number, heading: number) =>
    circle(d / 2, 0.5) + ease + heading + turning],
  ["STRIP_YARDAGE", "one more breadth until the strip is long enough", [[70, 236, 900], [5, 15], [75, 90, 140], [0, 2]], (flat: number, depth: number, width: number, seam: number) =>
    depth * least(1, (count) => count * (width - seam) >= flat * (1 - 1e-9))],
  ["SHOULDER_SLOPE", "the slope at which the shoulder line drops so far", [[11, 12.7], [0, 3, 6.35]], (shoulder: number, drop: number) =>
    (reached((angle) => shoulder * Math.sin(angle), drop, 0, Math.PI / 2) * 180) / Math.PI],
  ["THREAD_LENGTH", "two threads walked stitch by stitch", [[0.5, 10, 50], [0.25, 0.5], [0, 0.12]], (seam: number, stitch: number, thick: number) => {
    let thread = 0;
    for (let i = 0; i < Math.round(seam / stitch); i += 1) thread += 2 * (thick / 2 + stitch + thick / 2);
    return thread;
  }],
  ["TRIM_LENGTH", "the outer edge of plain lace walked round a frame", [[40, 120], [1], [4], [0, 2, 7.5]], (edge: number, _ratio: number, corners: number, width: number) =>
    // A square frame, and the square that its lace reaches.
    walkedRound([[0, 0], [1, 0], [1, 1], [0, 1]].map(([x, y]): Point => [x! * (edge / corners + 2 * width), y! * (edge / corners + 2 * width)]))],
  ["TURN_OF_CLOTH", "walked along the inner and the outer layer of a bend", [[0.1, 0.4], [1, 3], [45, 180, 360]], (thick: number, layers: number, angle: number) =>
    circle(2 + thick * layers, angle / 360) - circle(2, angle / 360)],
  ["UNEVEN_ALLOWANCE", "the layers of the folded cloth counted place by place", [["1;2.5;4"], ["knife", "box", "inverted"]], (_depths: string, style: string) => {
    // Under each depth of a knife pleat lie two more layers; a box pleat is two knife pleats back to back.
    const [depths, sides] = [[1, 2.5, 4], style === "knife" ? 1 : 2];
    let hidden = 0;
    for (let x = 0.005; x < 5; x += 0.01) for (const depth of depths) hidden += x < depth ? 2 * sides * 0.01 : 0;
    return hidden;
  }],
]; // biome-ignore format: a table

/** All calls of a grid: each first argument with each second one, and so on. */
const callsOf = (grid: Grid): (number | string)[][] =>
  grid.reduce<(number | string)[][]>(
    (rows, values) => rows.flatMap((row) => values.map((one) => [...row, one])),
    [[]],
  );

test.each(WAYS)("%s: %s", (name, _how, grid, other) => {
  let answered = 0;
  for (const call of callsOf(grid)) {
    const args = call.map((one): Cell | Cell[] => (one === "1;2.5;4" ? [1, 2.5, 4] : one));
    const found = run(catalogue.get(name)!, args, { unit: "cm" });
    if (isRefused(found)) continue;
    answered += 1;
    const wanted = (other as (...all: unknown[]) => number)(...call);
    const within = 1e-6 * Math.max(1, Math.abs(wanted));
    expect(
      Math.abs((found as number) - wanted),
      `${name}(${call.join("; ")}): ${found} against ${wanted}`,
    ).toBeLessThanOrEqual(within);
  }
  expect(answered, "how many calls were answered").toBeGreaterThan(callsOf(grid).length / 3);
});
