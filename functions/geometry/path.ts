/**
 * SVG path data ↔ strokes (W3C SVG 2, section 9.3). One command letter is one edge: `L 1 2 3 4`
 * is a single edge of two lines, `L 1 2 L 3 4` two edges. The standard's arc of radius 0 is a
 * straight line, which lets one `A` edge hold arcs and lines together.
 */

import { phrase } from "../phrase.ts";
import { readCommands } from "./path-commands.ts";
import {
  arc,
  type Curve,
  distance,
  line,
  type Point,
  pointAt,
  pointBetween,
  type Stroke,
} from "./strokes.ts";

/** One subpath: its edges in order and whether `Z` closed it. */
export interface Subpath {
  readonly start: Point;
  readonly edges: readonly (readonly Stroke[])[];
  readonly closed: boolean;
}

/** Reads path data. Throws an Error whose message says where the text stops making sense. */
export function readPath(text: string): Subpath[] {
  const subpaths: Subpath[] = [];
  let here: Point = [0, 0];
  let open: { start: Point; edges: Stroke[][] } | null = null;
  let control: { kind: "C" | "Q"; at: Point } | null = null;

  const finish = (closed: boolean) => {
    if (open) subpaths.push({ ...open, closed });
    open = null;
  };
  for (const { letter: command, groups } of readCommands(text)) {
    const letter = command.toUpperCase();
    const relative = command !== letter;
    const place = (x: number, y: number): Point => (relative ? [here[0] + x, here[1] + y] : [x, y]);
    if (letter === "Z") {
      if (!open) throw new Error(phrase`path data closes an outline twice`);
      here = (open as { start: Point }).start;
      finish(true);
      control = null;
      continue;
    }
    if (letter === "M") {
      finish(false);
      here = place(groups[0]![0]!, groups[0]![1]!);
      open = { start: here, edges: [] };
      control = null;
    } else if (!open) {
      open = { start: here, edges: [] };
    }
    const strokes: Stroke[] = [];
    const kind = letter === "M" ? "L" : letter;
    // The groups behind the first of an "M" are lines.
    for (const n of letter === "M" ? groups.slice(1) : groups) {
      const end: Point =
        kind === "H" ? [n[0]! + (relative ? here[0] : 0), here[1]]
        : kind === "V" ? [here[0], n[0]! + (relative ? here[1] : 0)]
        : place(n.at(-2)!, n.at(-1)!); // biome-ignore format: a table
      const reflected = (wanted: "C" | "Q"): Point =>
        control?.kind === wanted ? [2 * here[0] - control.at[0], 2 * here[1] - control.at[1]] : here;
      if (kind === "C" || kind === "S") {
        const c1 = kind === "C" ? place(n[0]!, n[1]!) : reflected("C");
        const c2 = kind === "C" ? place(n[2]!, n[3]!) : place(n[0]!, n[1]!);
        strokes.push(curveOrLine(here, c1, c2, end));
        control = { kind: "C", at: c2 };
      } else if (kind === "Q" || kind === "T") {
        const q = kind === "Q" ? place(n[0]!, n[1]!) : reflected("Q");
        const third = (from: Point): Point => [
          from[0] + (2 / 3) * (q[0] - from[0]),
          from[1] + (2 / 3) * (q[1] - from[1]),
        ];
        strokes.push({ kind: "curve", from: here, c1: third(here), c2: third(end), to: end });
        control = { kind: "Q", at: q };
      } else {
        if (kind === "A") strokes.push(...arcStrokes(here, n, end));
        else strokes.push(line(here, end));
        control = null;
      }
      here = end;
    }
    const drawn = strokes.filter((stroke) => stroke.kind !== "line" || distance(stroke.from, stroke.to) > 0);
    if (drawn.length > 0) (open as { edges: Stroke[][] }).edges.push(drawn);
  }
  finish(false);
  return subpaths;
}

/** A cubic with its handles at the thirds of its chord is a straight line: so lines stand in an edge of curves. */
function curveOrLine(from: Point, c1: Point, c2: Point, to: Point): Stroke {
  const slack = 1e-13 * (Math.abs(from[0]) + Math.abs(from[1]) + Math.abs(to[0]) + Math.abs(to[1]));
  const third = (handle: Point, share: number) => distance(handle, pointBetween(from, to, share)) <= slack;
  return third(c1, 1 / 3) && third(c2, 2 / 3) ? line(from, to) : { kind: "curve", from, c1, c2, to };
}

/** An SVG arc from its end points (SVG 2, appendix B.2). Ellipses become cubic curves of at most 15°. */
function arcStrokes(from: Point, numbers: readonly number[], to: Point): Stroke[] {
  let [rx, ry] = [Math.abs(numbers[0]!), Math.abs(numbers[1]!)];
  if (distance(from, to) === 0) return [];
  if (rx === 0 || ry === 0) return [line(from, to)];
  const turn = rx === ry ? 0 : (numbers[2]! * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const dx = (from[0] - to[0]) / 2;
  const dy = (from[1] - to[1]) / 2;
  const x = (cos * dx + sin * dy) / rx;
  const y = (-sin * dx + cos * dy) / ry;
  const reach = Math.hypot(x, y);
  if (reach > 1) {
    rx *= reach;
    ry *= reach;
  }
  // On the unit circle the half chord is `half` long; the centre lies square to its middle.
  const half = Math.min(reach, 1);
  const away = Math.sqrt(Math.max(0, 1 - half * half)) * (numbers[3] === numbers[4] ? -1 : 1);
  const [ux, uy] = [x / reach, y / reach];
  const cx = -uy * away * -1;
  const cy = ux * away * -1;
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const centre: Point = [
    middle[0] + cos * cx * rx - sin * cy * ry,
    middle[1] + sin * cx * rx + cos * cy * ry,
  ];
  const start = Math.atan2(uy * half - cy, ux * half - cx);
  let sweep = Math.atan2(-uy * half - cy, -ux * half - cx) - start;
  if (numbers[4] === 1 && sweep <= 0) sweep += 2 * Math.PI;
  if (numbers[4] === 0 && sweep >= 0) sweep -= 2 * Math.PI;
  if (rx === ry) return [{ kind: "arc", from, to, centre, radius: rx, sweep }];
  const at = ([px, py]: Point): Point => [
    centre[0] + cos * px * rx - sin * py * ry,
    centre[1] + sin * px * rx + cos * py * ry,
  ];
  return arcCurves(arc([0, 0], 1, start, start + sweep), Math.PI / 12).map((curve) => ({
    kind: "curve", from: at(curve.from), c1: at(curve.c1), c2: at(curve.c2), to: at(curve.to),
  })); // biome-ignore format: one record
}

/** Cubic curves that follow an arc, each over at most `most` radians. */
export function arcCurves(stroke: Stroke, most: number): Curve[] {
  if (stroke.kind !== "arc") return [];
  const count = Math.max(1, Math.ceil(Math.abs(stroke.sweep) / most));
  const part = stroke.sweep / count;
  const reach = ((4 / 3) * Math.tan(part / 4)) as number;
  return Array.from({ length: count }, (_, i) => {
    const from = pointAt(stroke, i / count);
    const to = pointAt(stroke, (i + 1) / count);
    const [cx, cy] = stroke.centre;
    return {
      kind: "curve",
      from,
      c1: [from[0] - reach * (from[1] - cy), from[1] + reach * (from[0] - cx)],
      c2: [to[0] + reach * (to[1] - cy), to[1] - reach * (to[0] - cx)],
      to,
    };
  });
}

/** A number with fifteen significant digits and without zeros at the end, as String writes it. */
function figure(value: number): string {
  const text = value.toPrecision(15);
  if (text.includes("e") || !text.includes(".")) return String(Number(text) + 0);
  let end = text.length;
  while (text.charCodeAt(end - 1) === 48) end -= 1;
  if (text.charCodeAt(end - 1) === 46) end -= 1;
  const short = text.slice(0, end);
  return short === "-0" ? "0" : short;
}

const pair = ([x, y]: Point): string => `${figure(x)} ${figure(y)}`;

/** Path data of one edge, without the `M` before it. */
function writeEdge(strokes: readonly Stroke[]): string {
  if (strokes.some((stroke) => stroke.kind === "curve")) {
    let text = "C";
    const write = (c1: Point, c2: Point, to: Point) => {
      text += ` ${pair(c1)} ${pair(c2)} ${pair(to)}`;
    };
    for (const stroke of strokes) {
      const { from, to } = stroke;
      if (stroke.kind === "curve") write(stroke.c1, stroke.c2, to);
      else if (stroke.kind === "line")
        write(pointBetween(from, to, 1 / 3), pointBetween(from, to, 2 / 3), to);
      else for (const curve of arcCurves(stroke, Math.PI / 20)) write(curve.c1, curve.c2, curve.to);
    }
    return text;
  }
  if (strokes.every((stroke) => stroke.kind === "line"))
    return `L ${strokes.map(({ to }) => pair(to)).join(" ")}`;
  const arcs = strokes.flatMap((stroke) => {
    if (stroke.kind !== "arc") return [`0 0 0 0 0 ${pair(stroke.to)}`];
    // Quarter turns at most: the end points of a longer arc pin its centre down badly.
    const count = Math.max(1, Math.ceil(Math.abs(stroke.sweep) / (Math.PI / 2) - 1e-9));
    return Array.from({ length: count }, (_, i) => {
      const r = figure(stroke.radius);
      return `${r} ${r} 0 0 ${stroke.sweep > 0 ? 1 : 0} ${pair(pointAt(stroke, (i + 1) / count))}`;
    });
  });
  return `A ${arcs.join(" ")}`;
}

/** Path data of subpaths, one command letter an edge. */
export function writePath(subpaths: readonly Subpath[]): string {
  return subpaths
    .map(({ start, edges, closed }) =>
      [`M ${pair(start)}`, ...edges.map(writeEdge), ...(closed ? ["Z"] : [])].join(" "),
    )
    .join(" ");
}
