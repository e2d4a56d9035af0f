/** Ends that lie at one place, and lines that lie on one another. */
import { distance, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { edgeLength } from "../../../functions/pieces/piece.ts";
import type { DrawnLine } from "./drawn-lines.ts";

/** Which points lie together: a number for each point, the same for points within `reach` of the first of them. */
export function clusters(points: readonly Point[], reach: number): number[] {
  const firsts: Point[] = [];
  const inSquare = new Map<string, number[]>();
  const side = reach || 1;
  return points.map((point) => {
    const [column, row] = [Math.floor(point[0] / side), Math.floor(point[1] / side)];
    for (const x of [column - 1, column, column + 1])
      for (const y of [row - 1, row, row + 1]) {
        const found = inSquare.get(`${x} ${y}`)?.find((one) => distance(firsts[one]!, point) <= reach);
        if (found !== undefined) return found;
      }
    const square = `${column} ${row}`;
    inSquare.set(square, [...(inSquare.get(square) ?? []), firsts.length]);
    return firsts.push(point) - 1;
  });
}

/** Lines that lie on one another count once: a walk would go along one of them and back along the other. */
export function once(lines: readonly DrawnLine[], size: number): DrawnLine[] {
  const seen = new Set<string>();
  const step = 1e-6 * size || 1;
  return lines.filter(({ strokes }) => {
    const places = placesOn(strokes);
    const turned = [...places].reverse();
    // Two roundings, half a step apart: figures that lie close together agree in one of them.
    const keys = [0, 0.5].map((shift) => {
      const text = (points: readonly Point[]) =>
        points.flatMap((point) => point.map((figure) => Math.round(figure / step + shift))).join(" ");
      return [text(places), text(turned)].sort()[0];
    });
    const isNew = !keys.some((key, i) => seen.has(`${i} ${key}`));
    for (const [i, key] of keys.entries()) seen.add(`${i} ${key}`);
    return isNew;
  });
}

/** Places spread evenly along a line, its ends among them: two halves of a piece share their ends, and nothing else. */
function placesOn(strokes: Edge): Point[] {
  const length = edgeLength(strokes);
  const inner = Array.from({ length: PLACES }, (_, i) => (length * (i + 1)) / (PLACES + 1));
  return [strokes[0]!.from, ...inner.map((along) => placeAlong(strokes, along).point), strokes.at(-1)!.to];
}

const PLACES = 5;
