/**
 * Pleats on flat cloth. A knife pleat hides two layers of its depth, a box or an inverted pleat
 * four. Evenly set, pleat i of n has its middle at (i − 1/2) of the finished width over n, half a
 * spacing in from each end.
 */
import type { EdgeStrip, Take, Takes } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

export const PLEAT_STYLE = {
  kind: "text",
  about: "knife: all folds turn one way; box: two folds turned apart; inverted: two folds that meet",
  choices: ["knife", "box", "inverted"],
  otherwise: "knife",
} as const satisfies Take;

/** Which lines of the pleats are listed. */
export const PLEAT_LINES = {
  kind: "text",
  about: "fold lines, placement lines (where a fold is brought to), or all in order",
  choices: ["all", "fold", "placement"],
  otherwise: "all",
} as const satisfies Take;

/** A row of pleats on the flat cloth, without how many there are. */
export const PLEAT_WIDTHS = {
  finished: { kind: "length", about: "width once pleated", from: 1, to: 5000 },
  depth: { kind: "length", about: "from a pleat's outer fold to its inner one", from: 0.1, to: 200 },
} as const satisfies Takes;

export type PleatStyle = "knife" | "box" | "inverted";

/** Hidden layers of one pleat. */
export const hiddenLayers = (style: PleatStyle): 2 | 4 => (style === "knife" ? 2 : 4);

/** The rule that says so. */
export const HIDDEN_LAYERS_RULE = 'IF(style = "knife"; 2; 4)';

/** The arguments that describe pleats of one depth on cloth whose sides are seamed. */
export const EVEN_PLEATS = {
  count: { kind: "count", about: "how many pleats", from: 0, to: 1000 },
  depth: { kind: "length", about: "from a pleat's outer fold to its inner one", from: 0, to: 200 },
  style: PLEAT_STYLE,
  seam: { kind: "length", about: "seam allowance, both sides together", from: 0, to: 50, otherwise: 0 },
} as const satisfies Takes;

/** The argument for the wanted width of a box pleat's upper face. */
export const BOX_WIDTH = {
  kind: "length",
  about: "width of a box pleat's upper face; twice the depth, so that its underfolds meet, when left out",
  from: 0.1,
  to: 400,
  otherwise: null,
} as const satisfies Take;

/** Width of the upper face of a box pleat: the wanted width, or twice the depth, so that its underfolds meet behind it; never more than the spacing, where the boxes touch. */
export const boxPleatFace = (depth: number, spacing: number, boxWidth: number | null = null): number =>
  Math.min(boxWidth ?? 2 * depth, spacing);

/** Refuses a box width for pleats of another style, and a box wider than the spacing. */
export function checkBoxWidth(style: PleatStyle, spacing: number, boxWidth: number | null): void {
  if (boxWidth === null) return;
  if (style !== "box")
    throw new Refusal((say) => phrase`box_width must be left out for ${style} pleats, not ${say(boxWidth)}`);
  if (boxWidth > spacing * (1 + 1e-9))
    throw new Refusal(
      (say) =>
        phrase`box_width must be at most ${say(spacing, boxWidth)}, where the boxes touch, not ${say(boxWidth, spacing)}`,
    );
}

/** A line across the flat strip. `inner` is the fold that lies beneath once the pleat is folded. */
export interface Crease {
  readonly at: number;
  readonly kind: "fold" | "placement" | "inner";
}

/** The lines of one pleat from its middle, in order along the flat cloth; `at` 0 is the middle if nothing were hidden before it. */
export function creasesOfPleat(
  style: PleatStyle,
  depth: number,
  spacing: number,
  box: number | null = null,
): Crease[] {
  const line = (at: number, kind: Crease["kind"]): Crease => ({ at, kind });
  if (style === "knife") return [line(0, "fold"), line(depth, "inner"), line(2 * depth, "placement")];
  if (style === "inverted") {
    return [
      line(0, "fold"),
      line(depth, "inner"),
      line(2 * depth, "placement"),
      line(3 * depth, "inner"),
      line(4 * depth, "fold"),
    ];
  }
  const half = boxPleatFace(depth, spacing, box) / 2;
  return [
    line(-half, "placement"),
    line(depth - half, "inner"),
    line(2 * depth - half, "fold"),
    line(2 * depth + half, "fold"),
    line(3 * depth + half, "inner"),
    line(4 * depth + half, "placement"),
  ];
}

/** One pleat of a row: where its middle lies along the finished width, its depth, and the width available for it. */
export interface Pleat {
  readonly place: number;
  readonly depth: number;
  readonly spacing: number;
}

/** Pleats of one depth, evenly set over the finished width. */
const evenPleats = (finished: number, count: number, depth: number): Pleat[] =>
  Array.from({ length: count }, (_, i) => ({
    place: ((i + 0.5) * finished) / count,
    depth,
    spacing: finished / count,
  }));

/** All lines of `count` pleats on a strip that finishes `finished` long, measured on the flat from its beginning. */
export const evenCreases = (
  style: PleatStyle,
  finished: number,
  count: number,
  depth: number,
  box: number | null = null,
): Crease[] => creasesAt(style, evenPleats(finished, count, depth), box);

/** All lines of these pleats, in their order along the strip, measured on the flat from its beginning. */
export function creasesAt(style: PleatStyle, pleats: readonly Pleat[], box: number | null = null): Crease[] {
  let hidden = 0;
  return pleats.flatMap(({ place, depth, spacing }) => {
    const middle = place + hidden;
    hidden += hiddenLayers(style) * depth;
    return creasesOfPleat(style, depth, spacing, box).map(({ at, kind }) => ({ at: middle + at, kind }));
  });
}

/** The strip of paper to chalk these lines by. */
export function creaseStrip(style: PleatStyle, length: number, lines: readonly Crease[]): EdgeStrip {
  const each = creasesOfPleat(style, 1, 4).length;
  const words = {
    fold: (pleat: number) => phrase`pleat ${pleat} fold`,
    placement: (pleat: number) => phrase`pleat ${pleat} placement`,
    inner: (pleat: number) => phrase`pleat ${pleat} inner fold`,
  };
  return {
    length,
    marks: lines.map(({ at, kind }, i) => ({
      at,
      role: kind,
      says: words[kind](Math.floor(i / each) + 1),
    })),
  };
}

const ROLES = { fold: "fold", placement: "placement", inner: "guide" } as const;

/** The flat strip with its folds, placement lines and inner folds, its whole length dimensioned below. */
export function drawCreases(length: number, lines: readonly Crease[], lengthShows?: string): Shape[] {
  const deep = length / 8;
  const across = (x: number): [Point, Point] => [[x, 0], [x, deep]]; // biome-ignore format: points in pairs
  return [
    stroke([[0, 0], [length, 0], [length, deep], [0, deep], [0, 0]], "cut"),
    ...lines.map(({ at, kind }) => stroke(across(at), ROLES[kind])),
    dimension([0, deep * 1.4], [length, deep * 1.4], { label: phrase`flat`, ...(lengthShows ? { shows: lengthShows } : {}) }),
  ]; // biome-ignore format: points in pairs
}

/** The same strip folded, looked at along its upper edge: layers are drawn a hair apart. */
export const drawFolded = (
  style: PleatStyle,
  finished: number,
  count: number,
  depth: number,
  y: number,
  box: number | null = null,
): Shape[] => drawFoldedAt(style, finished, evenPleats(finished, count, depth), y, box);

/** A strip with these pleats, folded. */
export function drawFoldedAt(
  style: PleatStyle,
  finished: number,
  pleats: readonly Pleat[],
  y: number,
  box: number | null = null,
): Shape[] {
  const gap = finished / 60;
  const path: Point[] = [[0, y]];
  for (const { place, depth, spacing } of pleats) {
    const put = (...points: [number, number][]) => {
      for (const [dx, layer] of points) path.push([place + dx, y + layer * gap]);
    };
    const half = boxPleatFace(depth, spacing, box) / 2;
    if (style === "knife") put([0, 0], [-depth, 1], [0, 2]);
    else if (style === "inverted") put([0, 0], [-depth, 1], [depth, 1], [0, 0]);
    else put([-half, 2], [depth - half, 2], [-half, 0], [half, 0], [half - depth, 2], [half, 2]);
  }
  path.push([finished, y]);
  return [
    stroke(path, "fold", { label: phrase`folded, from above` }),
    dimension([0, y - 2 * gap], [finished, y - 2 * gap], { label: phrase`finished` }),
  ];
}

interface PleatedCloth {
  readonly flat: number;
  readonly finished: number;
  readonly count: number;
  readonly depth: number;
  readonly style: PleatStyle;
  /** Allowance at both sides together. */
  readonly seam: number;
}

/** The cloth flat with its creases, and folded below; nothing for no pleats and for more than can be told apart. */
export function drawEvenPleats(
  { flat, finished, count, depth, style, seam }: PleatedCloth,
  flatShows?: string,
): Shape[] {
  if (count < 1 || count > 60 || depth <= 0) return [];
  const lines = evenCreases(style, finished, count, depth).map(({ at, kind }) => ({
    at: at + seam / 2,
    kind,
  }));
  return [...drawCreases(flat, lines, flatShows), ...drawFolded(style, finished, count, depth, flat / 4)];
}
