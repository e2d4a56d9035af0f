/** Lengths of SVG and the map from a view box to the room it is drawn in (W3C SVG 2, sections 8.2 and 8.9). */
import { phrase } from "../../../functions/phrase.ts";
import { enlarged, type Matrix, moved, times } from "./affine.ts";

/** Pixels in each unit: 96 to the inch (CSS Values 4, section 6.2). */
const PIXELS: Readonly<Record<string, number>> = {
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
};

/** Millimetres in a pixel. */
export const MM_OF_PIXEL = 25.4 / 96;

const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*$/i;

export interface SvgLength {
  /** Pixels, user units, or a share when the unit is "%". */
  readonly value: number;
  /** "" for a bare number. */
  readonly unit: string;
}

/** A length as it is written. Throws an Error with a sentence when the text is not a length in a known unit. */
export function readLength(text: string): SvgLength {
  const found = LENGTH.exec(text);
  const unit = (found?.[2] ?? "").toLowerCase();
  const value = Number(found?.[1]);
  if (!found || !Number.isFinite(value))
    throw new Error(phrase`"${text.trim().slice(0, 24)}" is not a length`);
  if (unit === "%") return { value: value / 100, unit };
  if (unit !== "" && PIXELS[unit] === undefined)
    throw new Error(phrase`"${text.trim().slice(0, 24)}" has a unit whose size the file does not say`);
  return { value: value * (PIXELS[unit] ?? 1), unit };
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A viewBox attribute. Throws an Error with a sentence when it has no four figures or no area. */
export function readViewBox(text: string): ViewBox {
  const figures = text
    .trim()
    .split(/\s*,\s*|\s+/)
    .map(Number);
  const [x, y, width, height] = figures as [number, number, number, number];
  if (figures.length !== 4 || !figures.every(Number.isFinite) || text.trim() === "")
    throw new Error(phrase`the viewBox "${text.trim().slice(0, 40)}" can't be read; it has four figures`);
  if (width <= 0 || height <= 0)
    throw new Error(
      phrase`the viewBox "${text.trim().slice(0, 40)}" has no area, so nothing can be drawn in it`,
    );
  return { x, y, width, height };
}

const ALIGN = /^(?:defer\s+)?(?:none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?$/;
const SHARES: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/**
 * The map from a view box into a room at (0, 0), "equivalent transform" of SVG 2, section 8.2. What is
 * no value of preserveAspectRatio counts as the standard's usual one, xMidYMid meet.
 */
export function intoRoom(box: ViewBox, width: number, height: number, aspect: string): Matrix {
  const found = ALIGN.exec(aspect.trim());
  const [across, down] = [width / box.width, height / box.height];
  if (found && found[1] === undefined) return times(enlarged(across, down), moved(-box.x, -box.y));
  const scale = found?.[3] === "slice" ? Math.max(across, down) : Math.min(across, down);
  const x = (width - box.width * scale) * SHARES[found?.[1] ?? "Mid"]!;
  const y = (height - box.height * scale) * SHARES[found?.[2] ?? "Mid"]!;
  return times(moved(x, y), times(enlarged(scale), moved(-box.x, -box.y)));
}
