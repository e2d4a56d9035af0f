/** Affine maps of a drawing, and the transforms of SVG that are written as text (CSS Transforms 1, section 8). */
import { phrase } from "../../../functions/phrase.ts";

/** The point (x, y) goes to (a·x + c·y + e, b·x + d·y + f): the order of SVG's matrix(). */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const UNCHANGED: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export const times = (outer: Matrix, inner: Matrix): Matrix => {
  const [a, b, c, d, e, f] = outer;
  const [k, l, m, n, o, p] = inner;
  return [a * k + c * l, b * k + d * l, a * m + c * n, b * m + d * n, a * o + c * p + e, b * o + d * p + f];
};

export const moved = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y];
export const enlarged = (x: number, y = x): Matrix => [x, 0, 0, y, 0, 0];

/** Whether a map presses the plane flat on a line or a point, or has no figures. */
export function collapses([a, b, c, d, e, f]: Matrix): boolean {
  const size = Math.hypot(a, b) * Math.hypot(c, d);
  return ![a, b, c, d, e, f].every(Number.isFinite) || !(Math.abs(a * d - b * c) > 1e-9 * size);
}

const turned = (angle: number): Matrix => [
  Math.cos(angle),
  Math.sin(angle),
  -Math.sin(angle),
  Math.cos(angle),
  0,
  0,
];

const DEGREE = Math.PI / 180;

/** What a number of an angle is multiplied with, by its unit; a bare number is in degrees. */
const ANGLES: Readonly<Record<string, number>> = {
  "": DEGREE,
  deg: DEGREE,
  rad: 1,
  grad: Math.PI / 200,
  turn: 2 * Math.PI,
};

interface Part {
  readonly value: number;
  readonly unit: string;
}

const FUNCTION = /[\s,]*([a-z]+)\s*\(([^()]*)\)/iy;
const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)([a-z]*)$/i;

/** The map that a transform attribute or the CSS property of that name writes. Throws an Error with a sentence when it can't be read. */
export function readTransform(text: string): Matrix {
  if (/^\s*(?:none)?\s*$/.test(text)) return UNCHANGED;
  const fault = () => new Error(phrase`the transform "${text.trim().slice(0, 40)}" can't be read`);
  let matrix = UNCHANGED;
  let at = 0;
  while (text.slice(at).trim() !== "") {
    FUNCTION.lastIndex = at;
    const found = FUNCTION.exec(text);
    if (!found) throw fault();
    at = FUNCTION.lastIndex;
    const one = step(found[1]!.toLowerCase(), partsOf(found[2]!, fault));
    if (!one) throw fault();
    matrix = times(matrix, one);
  }
  return matrix;
}

function partsOf(text: string, fault: () => Error): Part[] {
  // A sign may begin a number without a space before it: "1-2".
  const words = text
    .replace(/([\d.])([+-])/g, "$1 $2")
    .trim()
    .split(/\s*,\s*|\s+/);
  return words.map((word) => {
    const found = NUMBER.exec(word);
    if (!found) throw fault();
    return { value: Number(found[1]), unit: found[2]!.toLowerCase() };
  });
}

/** One function of a transform; null when its name or its numbers are not those of the standard. */
function step(name: string, parts: readonly Part[]): Matrix | null {
  const plain = (units: string): number[] | null =>
    parts.every(({ unit }) => unit === "" || unit === units) ? parts.map(({ value }) => value) : null;
  const count = parts.length;
  if (name === "matrix") {
    const figures = plain("");
    return figures && count === 6 ? (figures as unknown as Matrix) : null;
  }
  if (/^translate[xy]?$/.test(name)) {
    const figures = plain("px");
    if (!figures || count > (name === "translate" ? 2 : 1)) return null;
    return name === "translatey" ? moved(0, figures[0]!) : moved(figures[0]!, figures[1] ?? 0);
  }
  if (/^scale[xy]?$/.test(name)) {
    const figures = plain("");
    if (!figures || count > (name === "scale" ? 2 : 1)) return null;
    const [x, y] = [figures[0]!, figures[1] ?? figures[0]!];
    return name === "scalex" ? enlarged(x, 1) : name === "scaley" ? enlarged(1, x) : enlarged(x, y);
  }
  const angles = parts.map(({ value, unit }) => value * (ANGLES[unit] ?? Number.NaN));
  if (Number.isNaN(angles[0])) return null;
  if (name === "rotate" && count === 1) return turned(angles[0]!);
  if (name === "rotate" && count === 3 && parts.slice(1).every(({ unit }) => unit === "")) {
    const [x, y] = [parts[1]!.value, parts[2]!.value];
    return times(moved(x, y), times(turned(angles[0]!), moved(-x, -y)));
  }
  if (name === "skewx" && count === 1) return [1, 0, Math.tan(angles[0]!), 1, 0, 0];
  if (name === "skewy" && count === 1) return [1, Math.tan(angles[0]!), 0, 1, 0, 0];
  return null;
}
