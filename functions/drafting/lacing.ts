/**
 * How a lace runs through eyelets at x = 0 and x = gap, `spacing` apart down the edges:
 *
 * cross: from a bar across the last pair, both ends cross over each other up to the first.
 * loops: crossed, from a bar at the top and a bar at the bottom, to two loops at the waist.
 * spiral: one end round and round, the right edge's eyelets half a spacing lower.
 * zigzag: one end, straight across each pair, slanting behind to the next.
 * ladder: one end, straight across each pair, down along the edge behind.
 */
import type { Takes } from "../define.ts";
import type { Point } from "../geometry/strokes.ts";

/** A row of eyelets along one edge. */
export const EYELET_ROW = {
  edge: { kind: "length", about: "length of the edge to be laced, from top to bottom", from: 1, to: 500 },
  count: { kind: "count", about: "how many eyelets this edge has", from: 2, to: 200 },
  inset: {
    kind: "length",
    about: "distance from each end of the edge to the middle of the nearest eyelet",
    from: 0,
    to: 50,
    otherwise: { cm: 1.2, in: 1 / 2 },
  },
  stagger: {
    kind: "text",
    about:
      "whether eyelets are level with the other edge's, or half a spacing above or below them for spiral lacing",
    choices: ["level", "upper", "lower"],
    otherwise: "level",
  },
} as const satisfies Takes;

export const LACINGS = ["cross", "loops", "spiral", "zigzag", "ladder"] as const;
export type Lacing = (typeof LACINGS)[number];

/** The path of the lace as runs of points, y downwards, without the hanging ends and the loops. */
export function laceRuns(style: Lacing, gap: number, pairs: number, spacing: number): Point[][] {
  const side = (i: number) => (i % 2 === 0 ? 0 : gap);
  if (style === "spiral")
    return [Array.from({ length: 2 * pairs }, (_, i): Point => [side(i), (i * spacing) / 2])];
  if (style === "zigzag")
    return [Array.from({ length: 2 * pairs }, (_, i): Point => [side(i), Math.floor(i / 2) * spacing])];
  if (style === "ladder") {
    // Across, down the edge, back across: sides change every second point.
    const x = (i: number) => side(Math.floor((i + 1) / 2));
    return [Array.from({ length: 2 * pairs }, (_, i): Point => [x(i), Math.floor(i / 2) * spacing])];
  }
  const crossed = (from: number, to: number, bar: "first" | "last"): Point[] => {
    const levels = Array.from({ length: to - from + 1 }, (_, i) => (bar === "last" ? from + i : to - i));
    const down = levels.map((level, i): Point => [side(i), level * spacing]);
    const up = [...levels]
      .reverse()
      .map((level, i): Point => [gap - side(levels.length - 1 - i), level * spacing]);
    return [...down, ...up];
  };
  if (style === "cross") return [crossed(0, pairs - 1, "last")];
  const waist = Math.ceil(pairs / 2);
  return [crossed(0, waist - 1, "first"), crossed(waist, pairs - 1, "last")];
}
