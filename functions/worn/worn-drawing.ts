/** A garment as worn: three views to scale with their dimensions, and what they show in words. */

import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import type { Garment } from "./garment.ts";
import { type Hung, hang, type Row } from "./hang.ts";
import { extentOf, layersOf, SIDES, type Side, silhouettesOf } from "./view.ts";

export interface WornView {
  readonly side: Side;
  readonly shapes: readonly Shape[];
}

/** Where the hem hangs at one place round the body, and how much cloth leads there. */
interface HemPlace {
  /** Plumb, below the waist. */
  readonly level: number;
  /** Plumb, below the upper edge there. */
  readonly drop: number;
  /** Along the cloth, as drafted. */
  readonly depth: number;
}

export interface WornFigures {
  /** The hem all round, as drafted, and as the drawn line measures. */
  readonly hem: number;
  readonly drawn_hem: number;
  /** Straight across the hem, seen from the front and from the side. */
  readonly front_width: number;
  readonly side_width: number;
  readonly front: HemPlace;
  readonly side: HemPlace;
  readonly back: HemPlace;
}

export interface Worn {
  readonly views: readonly WornView[];
  /** The three views in a row at one scale. */
  readonly together: readonly Shape[];
  readonly figures: WornFigures;
  /** What is seen, with the figures. */
  readonly says: string;
  /** What of the figure was taken from the wearer's measurements, and from where. */
  readonly measured: readonly string[];
  /** What neither the arguments nor these tell, in sentences. */
  readonly assumed: readonly string[];
}

const SHARE: Record<Side, number> = { back: 0, side: 0.25, front: 0.5 };
// For translators: the garment seen from the front.
const TITLES: Record<Side, string> = { front: phrase`front`, side: phrase`side`, back: phrase`back` };

/** The drawing of a garment; `say` writes a length in words. */
export function wornDrawing(garment: Garment, say: (length: number) => string): Worn {
  const hung = hang(garment);
  const figures = figuresOf(garment, hung);
  const views = SIDES.map((side) => ({ side, shapes: viewShapes(garment, hung, side, 0) }));
  const widest = Math.max(...SIDES.map((side) => spanOf(hung, side)));
  const apart = widest * 1.5;
  const together = SIDES.flatMap((side, i) => viewShapes(garment, hung, side, (i - 1) * apart));
  const { front, side, back } = figures;
  const isFromNeck = garment.from === "neck";
  const says = [
    phrase`the hem is ${say(figures.hem)} all round as drafted, and hangs ${say(figures.front_width)} across from the front and ${say(figures.side_width)} from the side`,
    phrase`it hangs ${say(front.level)} below the waist in front, ${say(side.level)} at the side and ${say(back.level)} at the back`,
    isFromNeck
      ? phrase`from neck to hem there are ${say(front.depth)} of cloth in front, ${say(side.depth)} at the side and ${say(back.depth)} at the back`
      : phrase`from waist to hem there are ${say(front.depth)} of cloth in front, ${say(side.depth)} at the side and ${say(back.depth)} at the back`,
  ];
  const short = worst(hung.rows);
  if (short)
    says.push(
      isFromNeck
        ? phrase`the cloth is ${say(short.short)} too short to go round the figure ${say(short.below)} below the neck, and is drawn as if it did`
        : phrase`the cloth is ${say(short.short)} too short to go round the figure ${say(short.below)} below the waist, and is drawn as if it did`,
    );
  const { measured, assumed } = garment;
  return { views, together, figures, says: `${says.join("; ")}.`, measured, assumed };
}

/** The level at which most cloth is wanting, when a hundredth or more of the way round is. */
function worst(rows: readonly Row[]): { short: number; below: number } | null {
  const found = rows.toSorted((a, b) => b.short - a.short)[0]!;
  if (found.short < 0.01 * found.wanted) return null;
  return { short: found.short, below: Math.max(0, found.y[0]! - rows[0]!.y[0]!) };
}

/** The place of the hem nearest to a share of the way round. */
function hemIndex(shares: Float64Array, share: number): number {
  let best = 0;
  shares.forEach((one, i) => {
    if (Math.abs(one - share) < Math.abs(shares[best]! - share)) best = i;
  });
  return best;
}

function figuresOf(garment: Garment, { rows, shares }: Hung): WornFigures {
  const [top, hem] = [rows[0]!, rows.at(-1)!];
  const [front, side] = [extentOf(hem, "front"), extentOf(hem, "side")];
  const place = (view: Side): HemPlace => {
    const i = hemIndex(shares, SHARE[view]);
    return { level: hem.y[i]!, drop: hem.y[i]! - top.y[i]!, depth: garment.depth(SHARE[view]) };
  };
  return {
    hem: hem.wanted,
    drawn_hem: hem.length,
    front_width: front.right - front.left,
    side_width: side.right - side.left,
    front: place("front"),
    side: place("side"),
    back: place("back"),
  };
}

/** How wide a view is, the figure with its garment. */
function spanOf({ figure, rows }: Hung, side: Side): number {
  const extents = rows.map((row) => extentOf(row, side));
  const { half } = figure.section(figure.shoulder_level);
  const cloth = Math.max(...extents.map(({ right }) => right)) - Math.min(...extents.map(({ left }) => left));
  return Math.max(cloth, 2 * half);
}

function viewShapes(garment: Garment, hung: Hung, side: Side, move: number): Shape[] {
  const { figure, rows, shares } = hung;
  const [top, hem] = [rows[0]!, rows.at(-1)!];
  const { left, right } = extentOf(hem, side);
  const reach = Math.min(...rows.map((row) => extentOf(row, side).left));
  const off = spanOf(hung, side) / 12;
  const silhouettes = silhouettesOf(hung, side, move);
  const i = hemIndex(shares, SHARE[side]);
  const hemLow = Math.max(...hem.y);
  const beside = move + reach - off;
  const wide = spanOf(hung, side) * 0.62;
  // A short garment ends far from the floor, which is then left out.
  const floor = figure.floor - hemLow < 0.45 * figure.floor;
  const foot = floor ? figure.foot : Math.min(figure.foot, hemLow + 0.8 * off);
  const low = floor ? hemLow + off : Math.max(foot, hemLow) + 0.5 * off;
  // So does it from the neck: the figure is then cut off as far above the waist as the hem is below it.
  const least = 0.4 * figure.top;
  const head = garment.from === "neck" ? figure.top : Math.max(figure.top, Math.min(least, -hemLow));
  return [
    ...layersOf(hung, side, move, { head, foot, ground: floor ? figure.floor : null }),
    ...silhouettes,
    // The outline at the left and at the right, which the strips of cloth end in but do not draw.
    ...silhouettes.slice(0, 2).map(({ points }) => ({ kind: "layer", points, of: "edge" }) as const),
    ...(garment.opening && side === "front" ? [openingOf(garment.opening.overlap, hung, move)] : []),
    ...(floor
      ? [stroke([[move - wide, figure.floor], [move + wide, figure.floor]], "guide", { label: phrase`floor` })]
      : []),
    dimension([left + move, low], [right + move, low], { label: phrase`hem` }),
    // Plumb, from the upper edge to the hem in the middle of this side.
    dimension([beside, top.y[i]!], [beside, hem.y[i]!]),
    { kind: "note", at: [move, head - off], text: TITLES[side] },
  ]; // biome-ignore format: points in pairs
}

/** The front edge of a cape that lies over the other front. */
function openingOf(overlap: number, { rows, shares }: Hung, move: number): Shape {
  const points = rows.map((row): Point => {
    const i = hemIndex(shares, 0.5 + overlap / row.wanted);
    return [row.x[i]! + move, row.y[i]!];
  });
  return { kind: "layer", points, of: "edge" };
}
