/** Shapes made ready to be drawn: paths, arrows and words, still in the book's unit. */

import { type Layer, measureShape, type Shape } from "../../functions/drawing/shapes.ts";
import { writePath } from "../../functions/geometry/path.ts";
import { isInPolygon, pointInside } from "../../functions/geometry/point-in-polygon.ts";
import {
  boundingBox,
  direction,
  type Edge,
  flatten,
  type Point,
  pointBetween,
} from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import { flattenPiece, outlinePath, pieceBounds, type Role } from "../../functions/pieces/piece.ts";
import { plainNumber, type Rule, show } from "./show.ts";

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Words at a point of the drawing. */
export interface Words {
  readonly text: string;
  readonly at: Point;
  /** Other places it may stand at, such as places along its edge or within its outline. */
  readonly also: readonly Point[];
  readonly aside: Point;
  /** The length of what it belongs to: the longer, the sooner it is shown. */
  readonly long: number;
  /** What it belongs to: an outline's name stays within it. */
  readonly room: Box;
  readonly is: Exclude<Shape["kind"], "layer">;
}

interface Arrow {
  readonly at: Point;
  /** The direction it points in, of any length. */
  readonly to: Point;
}

export interface Picture {
  readonly box: Box;
  /** The parts of a view of something solid, in the order in which they are painted. */
  readonly layers: readonly { readonly d: string; readonly of: Layer["of"]; readonly shade: number }[];
  readonly outlines: readonly string[];
  readonly lines: readonly { readonly d: string; readonly role: Role; readonly arrows: readonly Arrow[] }[];
  readonly dimensions: readonly { readonly from: Point; readonly to: Point }[];
  readonly angles: readonly string[];
  readonly marks: readonly { readonly at: readonly Point[]; readonly mark: "notch" | "dot" | "cross" }[];
  readonly words: readonly Words[];
  /** Every line there is as a run of points, for words to keep clear of. */
  readonly strokes: readonly (readonly Point[])[];
  /** The kinds of line there are, for the legend. */
  readonly roles: readonly Role[];
}

const edgePath = (edge: Edge): string => writePath([{ start: edge[0]!.from, edges: [edge], closed: false }]);

const chords = (edge: Edge, fine: number): Point[] => [
  edge[0]!.from,
  ...edge.flatMap((stroke) => flatten(stroke, fine)),
];

/** A label with its figure behind it. */
export const labelled = (label: string, figure: string): string =>
  // For translators: a word of a drawing and its figure, such as "depth 8 1/2".
  label === "" ? figure : phrase`${label} ${figure}`;

/** What is read beside a shape: its label and the figure it shows. */
export function wordsOf(shape: Shape, rule: Rule): string {
  if (shape.kind === "note") return shape.text;
  if (shape.kind === "layer") return "";
  const label = shape.label ?? "";
  const figure = measureShape(shape)!;
  if (shape.kind === "dimension") return labelled(label, show(figure, "length", rule));
  if (shape.kind === "angle") return labelled(label, `${plainNumber(figure, 1, rule.decimal)}°`);
  if (shape.kind === "edge" && label && shape.shows) return labelled(label, show(figure, "length", rule));
  // For translators: what stands in a row in a drawing, and how many, such as "eyelets × 12".
  if (shape.kind === "marks") return label && phrase`${label} × ${figure}`;
  return label;
}

/** An arc round the corner from one arm to the other. */
function anglePath({ at, from, to, reflex }: Extract<Shape, { kind: "angle" }>): {
  d: string;
  middle: Point;
} {
  const arm = (point: Point) => Math.hypot(point[0] - at[0], point[1] - at[1]);
  const radius = 0.6 * Math.min(arm(from), arm(to));
  const start = Math.atan2(from[1] - at[1], from[0] - at[0]);
  const end = Math.atan2(to[1] - at[1], to[0] - at[0]);
  let turn = ((((end - start) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
  if (reflex) turn -= Math.sign(turn) * 2 * Math.PI;
  const point = (angle: number): Point => [
    at[0] + radius * Math.cos(angle),
    at[1] + radius * Math.sin(angle),
  ];
  const [x, y] = point(start);
  const [x2, y2] = point(start + turn);
  const large = Math.abs(turn) > Math.PI ? 1 : 0;
  const d = `M ${x} ${y} A ${radius} ${radius} 0 ${large} ${turn > 0 ? 1 : 0} ${x2} ${y2}`;
  return { d, middle: point(start + turn / 2) };
}

/** Areas are closed, lines are not; a tenth of a millimetre is fine enough for what no one cuts by. */
function layerPath({ points, of }: Layer): string {
  const filled = of === "cloth" || of === "inside" || of === "figure";
  const text = points.map(([x, y]) => `${Number(x.toFixed(3))} ${Number(y.toFixed(3))}`).join(" ");
  return `M ${text}${filled ? " Z" : ""}`;
}

/** Places within an outline where its name may stand, those farthest from its border first. */
export function placesInside(outline: readonly Point[], { left, right, low, high }: Box): Point[] {
  const places: { at: Point; free: number }[] = [];
  const sparse = outline.filter((_, i) => i % Math.ceil(outline.length / 150) === 0);
  for (let i = 1; i < 14; i += 1)
    for (let k = 1; k < 14; k += 1) {
      const at: Point = [left + ((right - left) * i) / 14, low + ((high - low) * k) / 14];
      if (!isInPolygon(at, outline)) continue;
      places.push({ at, free: Math.min(...sparse.map(([x, y]) => Math.hypot(x - at[0], y - at[1]))) });
    }
  return places.toSorted((a, b) => b.free - a.free).map(({ at }) => at);
}

/** Words that may stand free. */
const FREE: Box = { left: -Infinity, right: Infinity, low: -Infinity, high: Infinity };

export function pictureOf(shapes: readonly Shape[], rule: Rule): Picture {
  const layers: { d: string; of: Layer["of"]; shade: number }[] = [];
  const outlines: string[] = [];
  const lines: { d: string; role: Role; arrows: Arrow[] }[] = [];
  const dimensions: { from: Point; to: Point }[] = [];
  const angles: string[] = [];
  const marks: Extract<Shape, { kind: "marks" }>[] = [];
  const words: Words[] = [];
  const points: Point[] = [];
  const strokes: (readonly Point[])[] = [];
  const say = (
    shape: Exclude<Shape, Layer>,
    at: Point,
    long: number,
    more: Partial<Pick<Words, "aside" | "room" | "also">> = {},
  ) => {
    const text = wordsOf(shape, rule);
    if (text) words.push({ text, at, long, also: [], aside: [0, 1], room: FREE, is: shape.kind, ...more });
  };

  for (const shape of shapes) {
    switch (shape.kind) {
      case "outline": {
        const room = pieceBounds(shape.piece);
        const [wide, tall] = [room.right - room.left, room.high - room.low];
        points.push([room.left, room.low], [room.right, room.high]);
        outlines.push(outlinePath(shape.piece));
        const fine = flattenPiece(shape.piece, Math.max(wide, tall) / 1000);
        strokes.push([...fine, fine[0]!]);
        if (shape.label)
          say(shape, pointInside(fine), Math.min(wide, tall), { room, also: placesInside(fine, room) });
        break;
      }
      case "edge": {
        if (shape.edge.length === 0) break;
        const [first, last] = [shape.edge[0]!, shape.edge.at(-1)!];
        const back = direction(first, 0);
        const arrows =
          shape.role === "grain" || shape.arrows
            ? [
                { at: first.from, to: [-back[0], -back[1]] as const },
                { at: last.to, to: direction(last, 1) },
              ]
            : [];
        lines.push({ d: edgePath(shape.edge), role: shape.role, arrows });
        const fine = chords(shape.edge, 0.05);
        points.push(...fine);
        const middle =
          shape.edge.length === 1 && first.kind === "line"
            ? pointBetween(first.from, last.to, 0.5)
            : fine[fine.length >> 1]!;
        strokes.push(fine);
        const places = [0.5, 0.3, 0.7, 0.15, 0.85].map(
          (share) => fine[Math.floor(share * (fine.length - 1))]!,
        );
        say(shape, middle, measureShape(shape)!, {
          also:
            shape.edge.length === 1 && first.kind === "line"
              ? [0.3, 0.7].map((share) => pointBetween(first.from, last.to, share))
              : places,
        });
        break;
      }
      case "dimension": {
        const { from, to } = shape;
        const long = measureShape(shape)!;
        dimensions.push({ from, to });
        points.push(from, to);
        strokes.push([from, to]);
        const aside: Point = long > 0 ? [-(to[1] - from[1]) / long, (to[0] - from[0]) / long] : [0, 1];
        say(shape, pointBetween(from, to, 0.5), long, {
          aside,
          room: boundingBox([from, to]),
          also: [0.3, 0.7].map((share) => pointBetween(from, to, share)),
        });
        break;
      }
      case "angle": {
        const { d, middle } = anglePath(shape);
        angles.push(d);
        strokes.push([shape.from, shape.at, shape.to].map((end) => pointBetween(shape.at, end, 0.6)));
        points.push(shape.at);
        say(shape, middle, Math.hypot(middle[0] - shape.at[0], middle[1] - shape.at[1]));
        break;
      }
      case "marks":
        marks.push(shape);
        points.push(...shape.at);
        if (shape.at.length > 0) say(shape, shape.at[shape.at.length >> 1]!, 0);
        break;
      case "layer":
        points.push(...shape.points);
        if (shape.of === "silhouette" || shape.of === "figure") strokes.push(shape.points);
        layers.push({ d: layerPath(shape), of: shape.of, shade: shape.shade ?? 0 });
        break;
      case "note":
        points.push(shape.at);
        say(shape, shape.at, 0);
    }
  }
  // A piece with allowances has its seam line within it: what is cut along is its outline.
  const cut = shapes.some(
    (shape) => shape.kind === "outline" && shape.piece.marks.some(({ role }) => role === "seam"),
  );
  const roles = [...new Set([...(cut ? (["cut"] as const) : []), ...lines.map(({ role }) => role)])];
  return {
    box: boundingBox(points),
    layers,
    outlines,
    lines,
    dimensions,
    angles,
    marks,
    words,
    strokes,
    roles,
  };
}
