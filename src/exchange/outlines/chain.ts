/**
 * Outlines from loose lines: lines whose ends meet are joined, and each joined group gives the line round its
 * outside. What stands off or runs across within stays a line of its own.
 */
import {
  boundingBox,
  direction,
  distance,
  flatten,
  type Point,
  strokeLength,
} from "../../../functions/geometry/strokes.ts";
import { reverseEdge } from "../../../functions/pieces/edges.ts";
import type { DrawnLine } from "./drawn-lines.ts";
import { joined } from "./joints.ts";
import { clusters, once } from "./together.ts";

/** A closed line, how wide the widest gap was that was closed in it, and of how many lines it is made. */
export interface Loop extends DrawnLine {
  readonly gap: number;
  readonly made: number;
}

export interface Chained {
  readonly loops: readonly Loop[];
  readonly open: readonly DrawnLine[];
  /** How many lines lay on another one, and were left out. */
  readonly repeated: number;
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

const keyOf = ({ line, begins }: End): number => 2 * line + (begins ? 0 : 1);

/** Closes what closes: single lines whose ends nearly meet, and lines that together go round. */
export function chained(drawn: readonly DrawnLine[]): Chained {
  const box = boundingBox(drawn.flatMap(({ strokes }) => strokes.flatMap(({ from, to }) => [from, to])));
  const size = Math.max(box.right - box.left, box.high - box.low, 0);
  const joint = JOINT * size;
  const lines = once(drawn, size);
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
  const open = rest.filter((i) => !graph.taken.has(i)).map((i) => lines[i]!);
  return { loops, open, repeated: drawn.length - lines.length };
}

/** Lines in the order and the direction in which a walk goes along them. */
type Walk = readonly { readonly line: number; readonly forwards: boolean }[];

class Graph {
  readonly taken = new Set<number>();
  readonly #lines: readonly DrawnLine[];
  readonly #points = new Map<number, readonly Point[]>();
  /** The node at each end of each line. */
  readonly #nodeOf = new Map<number, readonly [from: number, to: number]>();
  /** The ends at each node, by `keyOf`. */
  readonly #at: Map<number, End>[] = [];
  readonly #angles = new Map<number, number>();

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
        const end = { line, begins: j === 0 };
        this.#at[node] ??= new Map();
        this.#at[node].set(keyOf(end), end);
      }
    });
    this.#prune(this.#at.map((_, node) => node));
  }

  /** Takes lines away whose end meets nothing, and then those that stand off alone because of it. */
  #prune(nodes: readonly number[]): void {
    const left = [...nodes];
    for (let node = left.pop(); node !== undefined; node = left.pop()) {
      const ends = this.#at[node]!;
      if (ends.size === 1) left.push(...this.#remove(ends.values().next().value!.line));
    }
  }

  #remove(line: number): readonly number[] {
    const nodes = this.#nodeOf.get(line)!;
    for (const [j, node] of nodes.entries()) this.#at[node]!.delete(keyOf({ line, begins: j === 0 }));
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
      const again = new Set(
        walk.filter(({ line }) => once.size === once.add(line).size).map(({ line }) => line),
      );
      if (again.size > 0) {
        // Lines between two groups: the walk goes along them there and back, and where angles are too fine to tell, more often.
        this.#prune([...again].flatMap((line) => this.#remove(line)));
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
        for (const other of this.#at[node]!.values())
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
    let [best, least] = [this.#at[node]!.values().next().value!, Number.POSITIVE_INFINITY];
    for (const end of this.#at[node]!.values()) {
      const isBack = came?.line === end.line && came.begins !== end.begins;
      const turn = (this.#leaves(end) - from + 4 * Math.PI) % (2 * Math.PI);
      const order = isBack ? 7 : turn;
      if (order < least) [best, least] = [end, order];
    }
    return best;
  }

  /** The angle at which a line leaves its end. */
  #leaves(end: End): number {
    const known = this.#angles.get(keyOf(end));
    if (known !== undefined) return known;
    const { strokes } = this.#lines[end.line]!;
    const [x, y] = end.begins ? direction(strokes[0]!, 0) : direction(strokes.at(-1)!, 1);
    const angle = end.begins ? Math.atan2(y, x) : Math.atan2(-y, -x);
    this.#angles.set(keyOf(end), angle);
    return angle;
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
