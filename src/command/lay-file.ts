/**
 * Reads the file of the verb `lay`: {stripWidth, allowedRotations, gap, repeat, pieces: [{id,
 * quantity, outline: [[x, y], ...]}]}. The strip runs along x, its width along y. `gap` is the least
 * distance between cut lines, `repeat` the pattern's repeat along x; both may be left out. A piece
 * may have allowedRotations of its own, and on a repeat a `match`, the point [x, y] that falls on
 * the same place of the repeat in every copy: by default the first point of its outline.
 */

import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayPiece, LayQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { Wrong } from "./verb.ts";

export interface LayFile {
  readonly question: LayQuestion;
  /** The pieces' ids in the order of the question. */
  readonly ids: readonly (string | number)[];
}

/** The question in the text; throws `Wrong` with a sentence that says what is wrong. */
export function readLayFile(text: string): LayFile {
  let data: unknown;
  try {
    // Some programs begin a file with a byte order mark.
    data = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    throw new Wrong(
      phrase`the lay file is not JSON: give ${"{stripWidth, allowedRotations, pieces: [...]}"}`,
    );
  }
  if (!isRecord(data))
    throw new Wrong(phrase`the lay file must hold one object with ${"stripWidth"} and ${"pieces"}`);
  if ("ellwand" in data)
    throw new Wrong(
      phrase`this is a book, and lay takes a file of ${"{stripWidth, allowedRotations, pieces}"}: the lays of a book are in ${"`calculate BOOK`"} and on its page`,
    );
  const width = data.stripWidth;
  if (typeof width !== "number")
    throw new Wrong(
      phrase`${"stripWidth"} must be a number, the usable width of the cloth, not ${shown(width)}`,
    );
  if (!Array.isArray(data.pieces))
    throw new Wrong(phrase`${"pieces"} must be a list, not ${shown(data.pieces)}`);
  const turns = turnsFrom(data.allowedRotations ?? [0, 180], "allowedRotations");
  const gap = lengthFrom(data.gap, "gap");
  const repeat = lengthFrom(data.repeat, "repeat");
  const ids: (string | number)[] = [];
  const names = new Set<string>();
  const pieces = data.pieces.map((piece: unknown, i): LayPiece => {
    if (!isRecord(piece))
      throw new Wrong(phrase`piece ${i + 1} must be an object with ${"id, quantity, outline"}`);
    const { id, quantity, outline, allowedRotations, match } = piece;
    if ((typeof id !== "string" && typeof id !== "number") || id === "")
      throw new Wrong(phrase`piece ${i + 1} needs an id, not ${shown(id)}`);
    if (typeof id === "number" && !isKept(id))
      throw new Wrong(
        phrase`piece ${i + 1} has a number for its id that is too large to be kept: give the id as a text`,
      );
    const name = String(id);
    if (names.has(name)) throw new Wrong(phrase`two pieces have the id ${name}: give each its own`);
    names.add(name);
    ids.push(id);
    if (typeof quantity !== "number")
      throw new Wrong(phrase`the quantity of ${name} must be a whole number from 1, not ${shown(quantity)}`);
    return {
      name,
      quantity,
      outline: outlineFrom(outline, name),
      turns:
        allowedRotations === undefined
          ? turns
          : turnsFrom(allowedRotations, phrase`${"allowedRotations"} of ${name}`),
      ...(repeat > 0 && { match: matchFrom(match ?? (outline as unknown[])[0], name) }),
    };
  });
  const cloth = { name: phrase`the cloth`, width, length: null };
  return { question: { pieces, cloths: [cloth], gap, repeat }, ids };
}

/** A whole number beyond 2^53 is changed when it is read, and one beyond the range of numbers is not read at all. */
const isKept = (id: number): boolean => Number.isFinite(id) && Math.abs(id) <= Number.MAX_SAFE_INTEGER;

function lengthFrom(value: unknown, what: string): number {
  if (value === undefined) return 0;
  if (typeof value !== "number") throw new Wrong(phrase`${what} must be a length or 0, not ${shown(value)}`);
  return value;
}

function matchFrom(value: unknown, name: string): Point {
  if (!isPoint(value))
    throw new Wrong(phrase`${"match"} of ${name} must be a point [x, y], not ${shown(value)}`);
  if (!value.every(Number.isFinite))
    throw new Wrong(phrase`${"match"} of ${name} must be a point within range`);
  return value;
}

const isPoint = (value: unknown): value is [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every((one) => typeof one === "number");

function turnsFrom(value: unknown, what: string): number[] {
  if (!Array.isArray(value) || value.length === 0 || value.some((turn) => typeof turn !== "number"))
    throw new Wrong(phrase`${what} must be a list of degrees such as [0, 180], not ${shown(value)}`);
  return value;
}

function outlineFrom(value: unknown, name: string): Point[] {
  if (!Array.isArray(value))
    throw new Wrong(phrase`the outline of ${name} must be a list of [x, y], not ${shown(value)}`);
  const points = value.map((point: unknown, i): Point => {
    if (!isPoint(point))
      throw new Wrong(phrase`point ${i + 1} of the outline of ${name} must be [x, y], not ${shown(point)}`);
    return [point[0], point[1]];
  });
  const first = points[0];
  const last = points[points.length - 1];
  // A closed ring may repeat its first point at the end.
  if (points.length > 1 && first && last && first[0] === last[0] && first[1] === last[1]) points.pop();
  return points;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function shown(value: unknown): string {
  if (value === undefined) return phrase`nothing`;
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
}
