/** How large an SVG drawing is, and how it lies on its page (W3C SVG 2, sections 8.2 and 8.6). */

import type { Bounds } from "../../../functions/geometry/strokes.ts";
import { phrase } from "../../../functions/phrase.ts";
import { collapses, type Matrix, UNCHANGED } from "./affine.ts";
import type { SvgElement } from "./svg-elements.ts";
import { intoRoom, MM_OF_PIXEL, readLength, readViewBox, type SvgLength } from "./svg-lengths.ts";
import type { Room } from "./svg-shapes.ts";
import { propertyOf } from "./svg-style.ts";

export interface SvgPage {
  /** How the root's content is placed. */
  readonly matrix: Matrix;
  /** What percentages of the root's content are of. */
  readonly room: Room;
  /** Millimetres in a unit of the placed drawing; null when the file does not say. */
  readonly millimetres: number | null;
  /** How the size was understood, in a sentence. */
  readonly size: string;
  /** The view box, or the room without one, as it lies in the drawing. */
  readonly page: Bounds;
  /** Whether the file stretches it in one direction. */
  readonly isStretched: boolean;
}

const UNKNOWN = phrase`The file does not say how large it is.`;

/** What a width or height of the root has for a unit when it has no size on paper. */
const UNSIZED: ReadonlySet<string> = new Set(["", "%"]);

const bare = (length: SvgLength | null): number | null =>
  length && length.unit !== "%" ? length.value : null;

/** The page of a drawing. Throws an Error with a sentence when nothing can be drawn on it. */
export function pageOf(root: SvgElement): SvgPage {
  const property = propertyOf(root);
  const side = (name: string): SvgLength | null => {
    const text = property(name)?.trim();
    return text === undefined || text === "auto" ? null : readLength(text);
  };
  const [wide, tall] = [side("width"), side("height")];
  const boxText = property("viewBox");
  const box = boxText === undefined ? null : readViewBox(boxText);
  const sides = [wide, tall].filter((one) => one !== null);
  if (sides.some(({ value }) => !(value > 0)))
    throw new Error(phrase`its width or height is not above 0, so nothing of it is drawn`);
  const plain = { width: box?.width ?? 100, height: box?.height ?? 100 };
  const placed = (matrix: Matrix, room: Room): Pick<SvgPage, "matrix" | "room" | "page"> => {
    const [a, , , d, e, f] = matrix;
    const [x, y] = [box?.x ?? 0, box?.y ?? 0];
    const page = {
      left: a * x + e,
      right: a * (x + room.width) + e,
      low: d * y + f,
      high: d * (y + room.height) + f,
    };
    return { matrix, room, page };
  };
  if (sides.length === 0 || sides.some(({ unit }) => UNSIZED.has(unit))) {
    const room = box ? plain : { width: bare(wide) ?? 100, height: bare(tall) ?? 100 };
    return { ...placed(UNCHANGED, room), millimetres: null, size: UNKNOWN, isStretched: false };
  }
  // A side that is left out follows from the other by the view box's own shape.
  const width = wide?.value ?? (tall!.value * plain.width) / plain.height;
  const height = tall?.value ?? (wide!.value * plain.height) / plain.width;
  const matrix = box ? intoRoom(box, width, height, property("preserveAspectRatio") ?? "") : UNCHANGED;
  if (collapses(matrix)) throw new Error(phrase`its viewBox and its size press the drawing flat`);
  const written = ["width", "height"]
    .flatMap(
      (name) =>
        property(name)
          ?.trim()
          .replace(/([\d.])\s*([a-z]+)$/i, "$1 $2") ?? [],
    )
    .join(" × ");
  return {
    ...placed(matrix, box ? plain : { width, height }),
    millimetres: MM_OF_PIXEL,
    size: sides.some(({ unit }) => unit === "px")
      ? phrase`The file measures ${written}, and by the standard 96 px are an inch; programs have written other pixels, so check a length that you know.`
      : phrase`The file says how large it is: ${written}.`,
    isStretched: Math.abs(matrix[0] - matrix[3]) > 1e-6 * Math.abs(matrix[0]),
  };
}
