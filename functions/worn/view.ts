/**
 * A hung garment seen from one side, as flat parts in the order in which they are painted: what
 * lies nearer comes later and hides what is behind it. The view is parallel and level, so that
 * every width and every drop is to scale.
 */
import type { Layer } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import type { Figure } from "./figure.ts";
import type { Hung, Row } from "./hang.ts";
import { placeOn } from "./section.ts";

export const SIDES = ["front", "side", "back"] as const;
/** The side is the wearer's left, the front of the figure to the left. */
export type Side = (typeof SIDES)[number];

/** Across the picture, and how near to the eye. */
const ACROSS: Record<Side, (x: number, z: number) => number> = {
  front: (x) => x,
  side: (_, z) => -z,
  back: (x) => -x,
};
const NEAR: Record<Side, (x: number, z: number) => number> = {
  front: (_, z) => z,
  side: (x) => x,
  back: (_, z) => -z,
};

export interface Extent {
  readonly left: number;
  readonly right: number;
}

/** How far a level of the cloth reaches across in a view. */
export function extentOf({ x, z }: Row, side: Side): Extent {
  let [left, right] = [Infinity, -Infinity];
  for (let i = 0; i < x.length; i += 1) {
    const across = ACROSS[side](x[i]!, z[i]!);
    left = Math.min(left, across);
    right = Math.max(right, across);
  }
  return { left, right };
}

/** What of the figure is drawn: from `head` to `foot`, and a post from there to the ground, which is null when it is left out. */
export interface FigureEnds {
  readonly head: number;
  readonly foot: number;
  readonly ground: number | null;
}

/** The cloth's outline at the left and at the right, and its hem as the eye sees it. */
export function silhouettesOf({ rows, shares }: Hung, side: Side, move: number): Layer[] {
  const outer = (way: 1 | -1): Point[] =>
    rows.map(({ x, y, z }): Point => {
      let best = 0;
      for (let i = 1; i < x.length; i += 1)
        if (way * (ACROSS[side](x[i]!, z[i]!) - ACROSS[side](x[best]!, z[best]!)) > 0) best = i;
      return [ACROSS[side](x[best]!, z[best]!) + move, y[best]!];
    });
  const { x, y, z } = rows.at(-1)!;
  const hem = [...shares.keys()]
    .filter((i) => NEAR[side](x[i]!, z[i]!) >= 0)
    .map((i): Point => [ACROSS[side](x[i]!, z[i]!) + move, y[i]!])
    .toSorted((a, b) => a[0] - b[0]);
  return [outer(-1), outer(1), hem].map((points) => ({ kind: "layer", points, of: "silhouette" }));
}

/** Places that one painted strip is wide; a number that parts the places of a soft fold evenly. */
const STRIP = 3;

/** How many tones lie between light and shade: few, so that a fold has a light side and a dark one, and no patches. */
const TONES = 3;

const toneOf = (shade: number): number => Math.round(Math.max(0, Math.min(1, shade)) * TONES) / TONES;

interface Strip {
  readonly from: number;
  readonly to: number;
  /** Towards the eye on average, and the share of light on it, 0 to 1. */
  readonly near: number;
  readonly light: number;
  readonly outside: boolean;
}

/** The figure between its ends and the cloth on it, the picture's x moved by `move`. */
export function layersOf(
  { figure, rows }: Hung,
  side: Side,
  move: number,
  { head, foot, ground }: FigureEnds,
): Layer[] {
  const count = rows[0]!.x.length;
  const across = rows.map(({ x, z }) => Float64Array.from(x, (one, i) => ACROSS[side](one, z[i]!) + move));
  const near = rows.map(({ x, z }) => Float64Array.from(x, (one, i) => NEAR[side](one, z[i]!)));
  const point = (row: number, i: number): Point => [across[row]![i % count]!, rows[row]!.y[i % count]!];
  // Turned to the eye is what runs to the left from place to place, as the front does seen from before it.
  const facing = (row: number, i: number) => across[row]![(i + 1) % count]! - across[row]![i % count]! < 0;
  const last = rows.length - 1;

  const strips: Strip[] = [];
  for (let from = 0; from < count; from += STRIP) {
    const to = Math.min(from + STRIP, count);
    let [area, depth, run, rise] = [0, 0, 0, 0];
    for (let row = 1; row <= last; row += 1) {
      for (let i = from; i < to; i += 1) {
        const [a, b] = [i % count, (i + 1) % count];
        const wide = across[row]![b]! - across[row]![a]!;
        area -= wide * (rows[row]!.y[a]! - rows[row - 1]!.y[a]!);
        run -= wide;
        rise += near[row]![b]! - near[row]![a]!;
      }
      depth += near[row]![from]! + near[row]![to % count]!;
    }
    const long = Math.hypot(run, rise) || 1;
    // The light comes from the upper left, over the shoulder.
    const light = (run * 0.8 + rise * 0.6) / long;
    strips.push({ from, to, near: depth / (2 * last), light, outside: area > 0 });
  }
  strips.sort((a, b) => a.near - b.near);

  const painted = (strip: Strip): Layer[] => {
    const { from, to, outside, light } = strip;
    const points: Point[] = [];
    for (let row = 0; row <= last; row += 1) points.push(point(row, from));
    for (let i = from + 1; i <= to; i += 1) points.push(point(last, i));
    for (let row = last - 1; row >= 0; row -= 1) points.push(point(row, to));
    for (let i = to - 1; i > from; i -= 1) points.push(point(0, i));
    const shade = outside ? toneOf((1 - light) / 1.8) : 1;
    return [
      { kind: "layer", points, of: outside ? "cloth" : "inside", shade },
      { kind: "layer", points: range(from, to).map((i) => point(last, i)), of: "hem" },
      ...(outside
        ? [
            { kind: "layer", points: range(from, to).map((i) => point(0, i)), of: "edge" } as const,
            ...contours(strip),
          ]
        : []),
    ];
  };
  /** Where the cloth turns away from the eye: the lines of its folds. */
  const contours = ({ from, to }: Strip): Layer[] => {
    const found: Layer[] = [];
    for (let i = from; i < to; i += 1) {
      let run: Point[] = [];
      for (let row = 1; row <= last; row += 1) {
        const turns =
          facing(row, i) && (!facing(row, (i + count - 1) % count) || !facing(row, (i + 1) % count));
        const at = !facing(row, (i + count - 1) % count) ? i : i + 1;
        if (turns) run.push(...(run.length === 0 ? [point(row - 1, at)] : []), point(row, at));
        if (!turns || row === last) {
          // A turn over two levels alone is a ripple of the drawing, not a fold.
          if (run.length > 3) found.push({ kind: "layer", points: run, of: "fold" });
          run = [];
        }
      }
    }
    return found;
  };

  return [
    ...strips.filter(({ outside }) => !outside).flatMap(painted),
    ...figureLayers(figure, side, move, { head, foot, ground }),
    ...strips.filter(({ outside }) => outside).flatMap(painted),
  ];
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** The plain figure as an outline. */
function figureLayers(figure: Figure, side: Side, move: number, { head, foot, ground }: FigureEnds): Layer[] {
  const steps = 64;
  const [left, right]: [Point[], Point[]] = [[], []];
  for (let i = 0; i <= steps; i += 1) {
    const y = head + ((foot - head) * i) / steps;
    const section = figure.section(y);
    const ends = [0, 1, 2, 3].map((quarter) => {
      const [x, z] = placeOn(section, (quarter * Math.PI) / 2, 0);
      return ACROSS[side](x, z) + move;
    });
    left.push([Math.min(...ends), y]);
    right.push([Math.max(...ends), y]);
  }
  const post = figure.section(0).half * 0.08;
  return [
    ...(ground === null
      ? []
      : ([{ kind: "layer", points: [[move - post, foot], [move + post, foot], [move + post, ground], [move - post, ground]], of: "figure" }] as const)),
    { kind: "layer", points: [...left, ...right.reverse()], of: "figure" },
  ]; // biome-ignore format: points in a row
}
