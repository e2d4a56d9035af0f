/**
 * Outlines from loose lines: lines whose ends meet are joined, and each joined group gives the line round its
 * outside. What stands off or runs across within stays a line of its own.
 */
import { arcCurves } from "../../../functions/geometry/path.ts";
import {
  boundingBox,
  direction,
  distance,
  type Edge,
  flatten,
  type Point,
  type Stroke,
  strokeLength,
} from "../../../functions/geometry/strokes.ts";
import { reverseEdge } from "../../../functions/pieces/edges.ts";
import type { DrawnLine } from "./drawn-lines.ts";

/** A closed line, how wide the widest gap was that was closed in it, and of how many lines it is made. */
export interface Loop extends DrawnLine {
  readonly gap: number;
  readonly made: number;
}

export interface Chained {
  readonly loops: readonly Loop[];
  readonly open: readonly DrawnLine[];
}

/** Ends of two lines meet when they lie within this share of the drawing's larger side. */
const JOINT = 1e-3;

/** The ends of one line are brought together when they lie within this share of its length. */
const NEARLY = 5e-3;

/** An end of a line at a node: which line, and whether its beginning stands here. */
interface End {
  readonly line: number;
  readonly begins: boolean;
}

/** Closes what closes: single lines whose ends nearly meet, and lines that together go round. */
export function chained(lines: readonly DrawnLine[]): Chained {
  const box = boundingBox(lines.flatMap(({ strokes }) => strokes.flatMap(({ from, to }) => [from, to])));
  const joint = JOINT * Math.max(box.right - box.left, box.high - box.low, 0);
  const lengths = lines.map(({ strokes }) => strokes.reduce((sum, stroke) => sum + strokeLength(stroke), 0));
  const ends = lines.map(({ strokes }): readonly [Point, Point] => [strokes[0]!.from, strokes.at(-1)!.to]);
  const loops: Loop[] = [];
  const rest: number[] = [];
  lines.forEach((line, i) => {
    const gap = distance(...ends[i]!);
    if (gap <= NEARLY * lengths[i]!)
      loops.push({ ...line, strokes: joined([line.strokes]), closed: true, gap, made: 1 });
    else rest.push(i);
  });
  // A line not much longer than a joint would be closed in on itself.
  const long = rest.filter((i) => lengths[i]! > 4 * joint);
  const graph = new Graph(lines, long, joint);
  for (const walk of graph.outsides()) loops.push(loopOf(lines, walk));
  return { loops, open: rest.filter((i) => !graph.taken.has(i)).map((i) => lines[i]!) };
}

/** Lines in the order and the direction in which a walk goes along them. */
type Walk = readonly { readonly line: number; readonly forwards: boolean }[];

class Graph {
  readonly taken = new Set<number>();
  readonly #lines: readonly DrawnLine[];
  readonly #points = new Map<number, readonly Point[]>();
  /** The node at each end of each line. */
  readonly #nodeOf = new Map<number, readonly [from: number, to: number]>();
  readonly #at: End[][] = [];

  constructor(lines: readonly DrawnLine[], members: readonly number[], joint: number) {
    this.#lines = lines;
    const nodes = clusters(
      members.flatMap((i) => [lines[i]!.strokes[0]!.from, lines[i]!.strokes.at(-1)!.to]),
      joint,
    );
    members.forEach((line, k) => {
      const pair = [nodes[2 * k]!, nodes[2 * k + 1]!] as const;
      this.#nodeOf.set(line, pair);
      for (const [j, node] of pair.entries()) {
        this.#at[node] ??= [];
        this.#at[node].push({ line, begins: j === 0 });
      }
    });
    this.#prune([...this.#at.keys()]);
  }

  /** Takes lines away whose end meets nothing, and then those that stand off alone because of it. */
  #prune(nodes: readonly number[]): void {
    const left = [...nodes];
    for (let node = left.pop(); node !== undefined; node = left.pop()) {
      const ends = this.#at[node];
      if (ends?.length === 1) left.push(...this.#remove(ends[0]!.line));
    }
  }

  #remove(line: number): readonly number[] {
    const nodes = this.#nodeOf.get(line)!;
    for (const node of nodes) this.#at[node] = this.#at[node]!.filter((end) => end.line !== line);
    this.#nodeOf.delete(line);
    return nodes;
  }

  /** The line round the outside of each group; several where a group hangs together in one point only. */
  outsides(): Walk[] {
    const found: Walk[] = [];
    for (let seed = this.#first(); seed !== undefined; seed = this.#first()) {
      const group = this.#groupOf(seed);
      const walk = this.#outside(group);
      const once = new Set<number>();
      const twice = walk.filter(({ line }) => once.size === once.add(line).size);
      if (twice.length > 0) {
        // Lines between two groups: the walk goes along them there and back.
        this.#prune(twice.flatMap(({ line }) => this.#remove(line)));
        continue;
      }
      for (const part of this.#apart(walk)) {
        found.push(part);
        for (const { line } of part) this.taken.add(line);
      }
      for (const line of group) this.#remove(line);
    }
    return found;
  }

  #first(): number | undefined {
    return this.#nodeOf.keys().next().value;
  }

  #groupOf(seed: number): Set<number> {
    const group = new Set([seed]);
    const left = [seed];
    for (let line = left.pop(); line !== undefined; line = left.pop())
      for (const node of this.#nodeOf.get(line)!)
        for (const other of this.#at[node]!)
          if (!group.has(other.line)) {
            group.add(other.line);
            left.push(other.line);
          }
    return group;
  }

  #pointsOf(line: number): readonly Point[] {
    const known = this.#points.get(line);
    if (known) return known;
    const { strokes } = this.#lines[line]!;
    const size = strokes.reduce((sum, { from, to }) => sum + distance(from, to), 0);
    const points = [strokes[0]!.from, ...strokes.flatMap((stroke) => flatten(stroke, size / 2000))];
    this.#points.set(line, points);
    return points;
  }

  /** Walks clockwise on paper, always along the line farthest to the outside, from the group's leftmost point. */
  #outside(group: ReadonlySet<number>): Walk {
    let [start, best, forwards] = [-1, Number.POSITIVE_INFINITY, true];
    for (const line of group) {
      const points = this.#pointsOf(line);
      for (const [k, [x]] of points.entries()) {
        if (x >= best) continue;
        // At its leftmost point the outside is passed upwards.
        const [before, after] = [points[k - 1] ?? points[k]!, points[k + 1] ?? points[k]!];
        [start, best, forwards] = [line, x, after[1] < before[1]];
        if (k === 0 || k === points.length - 1) {
          const node = this.#nodeOf.get(line)![k === 0 ? 0 : 1]!;
          const first = this.#next(node, Math.PI, null);
          [start, forwards] = [first.line, first.begins];
        }
      }
    }
    const walk: { line: number; forwards: boolean }[] = [];
    let here = { line: start, begins: forwards };
    do {
      walk.push({ line: here.line, forwards: here.begins });
      const node = this.#nodeOf.get(here.line)![here.begins ? 1 : 0]!;
      here = this.#next(node, this.#leaves({ line: here.line, begins: !here.begins }), here);
    } while ((here.line !== start || here.begins !== forwards) && walk.length <= 2 * group.size);
    return walk;
  }

  /** The first end at a node when one turns clockwise on paper from a direction; the line one came by comes last. */
  #next(node: number, from: number, came: End | null): End {
    let [best, least] = [this.#at[node]![0]!, Number.POSITIVE_INFINITY];
    for (const end of this.#at[node]!) {
      const isBack = came?.line === end.line && came.begins !== end.begins;
      const turn = (this.#leaves(end) - from + 4 * Math.PI) % (2 * Math.PI);
      const order = isBack ? 7 : turn;
      if (order < least) [best, least] = [end, order];
    }
    return best;
  }

  /** The angle at which a line leaves its end. */
  #leaves({ line, begins }: End): number {
    const { strokes } = this.#lines[line]!;
    const [x, y] = begins ? direction(strokes[0]!, 0) : direction(strokes.at(-1)!, 1);
    return begins ? Math.atan2(y, x) : Math.atan2(-y, -x);
  }

  /** A walk that comes through one node again, cut into walks that do not. */
  #apart(walk: Walk): Walk[] {
    const found: Walk[] = [];
    const stack: { line: number; forwards: boolean; node: number }[] = [];
    const indexOf = new Map<number, number>();
    for (const { line, forwards } of walk) {
      const [from, to] = this.#nodeOf.get(line)!;
      const [here, next] = forwards ? [from, to] : [to, from];
      indexOf.set(here, stack.length);
      stack.push({ line, forwards, node: here });
      const again = indexOf.get(next);
      if (again === undefined) continue;
      const part = stack.splice(again);
      for (const { node } of part) indexOf.delete(node);
      found.push(part);
    }
    return found;
  }
}

/** Which points lie together: a number for each point, the same for points within `reach` of one another. */
function clusters(points: readonly Point[], reach: number): number[] {
  const order = points.map((_, i) => i).sort((i, j) => points[i]![0] - points[j]![0]);
  const found = new Array<number>(points.length).fill(-1);
  let count = 0;
  for (const [k, i] of order.entries()) {
    if (found[i] === -1) found[i] = count++;
    for (let l = k + 1; l < order.length; l += 1) {
      const j = order[l]!;
      if (points[j]![0] - points[i]![0] > reach) break;
      if (found[j] === -1 && distance(points[i]!, points[j]!) <= reach) found[j] = found[i]!;
    }
  }
  return found;
}

function loopOf(lines: readonly DrawnLine[], walk: Walk): Loop {
  const runs = walk.map(({ line, forwards }) =>
    forwards ? lines[line]!.strokes : reverseEdge(lines[line]!.strokes),
  );
  const gaps = runs.map((run, i) => distance(runs.at(i - 1)!.at(-1)!.to, run[0]!.from));
  const named = walk.map(({ line }) => lines[line]!).find(({ name }) => name !== "");
  const isAid = walk.every(({ line }) => lines[line]!.isAid);
  const strokes = joined(runs);
  return { name: named?.name ?? "", strokes, closed: true, gap: Math.max(...gaps), made: walk.length, isAid };
}

/** Runs that follow one another round, each begun where the one before ends. */
function joined(runs: readonly Edge[]): Edge {
  const meetings = runs.map((run, i) => meeting(runs.at(i - 1)!.at(-1)!, run[0]!));
  return runs.flatMap((run, i) => endedAt(begunAt(run, meetings[i]!), meetings[(i + 1) % runs.length]!));
}

/** Where two strokes are made to meet: where they would if both went straight on, when that is near, else half way. */
function meeting(before: Stroke, after: Stroke): Point {
  const [a, b] = [before.to, after.from];
  const gap = distance(a, b);
  if (gap === 0) return a;
  const [ux, uy] = direction(before, 1);
  const [vx, vy] = direction(after, 0);
  const cross = ux * vy - uy * vx;
  const along = ((b[0] - a[0]) * vy - (b[1] - a[1]) * vx) / cross;
  const point: Point = [a[0] + ux * along, a[1] + uy * along];
  const isNear = distance(point, a) <= 1.5 * gap && distance(point, b) <= 1.5 * gap;
  return isNear ? point : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** Where an arc's end may be moved by without its centre: rounding errors of the arc's own figures. */
const ROUNDING = 1e-9;

/** The same run with its beginning moved to a point nearby. */
function begunAt(run: Edge, at: Point): Edge {
  const [first, ...others] = run as [Stroke, ...Stroke[]];
  const gap = distance(first.from, at);
  if (gap === 0) return run;
  if (first.kind === "line" || (first.kind === "arc" && gap <= ROUNDING * first.radius))
    return [{ ...first, from: at }, ...others];
  const [curve, ...more] = first.kind === "arc" ? arcCurves(first, Math.PI / 12) : [first];
  const [dx, dy] = [at[0] - curve!.from[0], at[1] - curve!.from[1]];
  return [{ ...curve!, from: at, c1: [curve!.c1[0] + dx, curve!.c1[1] + dy] }, ...more, ...others];
}

const endedAt = (run: Edge, at: Point): Edge => reverseEdge(begunAt(reverseEdge(run), at));
