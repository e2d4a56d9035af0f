/** The words on the pieces of a pattern: what each piece is, its edges, and what each of its lines is. Millimetres. */

import { type Isometry, movePoint } from "../../functions/geometry/isometry.ts";
import { readPath } from "../../functions/geometry/path.ts";
import { flatten, type Point } from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import { flattenPiece, type Piece, pieceBounds, type Role } from "../../functions/pieces/piece.ts";
import { type Label, type PlacedLabel, placeLabels } from "../engine/label-places.ts";
import { placesInside } from "../engine/picture.ts";
import { ROLE_WORDS } from "../engine/roles.ts";
import type { Letters } from "./document.ts";
import { OVERLAP } from "./paper.ts";
import type { Scaled, Word } from "./pattern-sheet.ts";
import type { Tiling } from "./tiles.ts";

const LONGEST_LINE = 60;

/** A line of words in one line, at most 60 letters of it. */
const plainLine = (text: string): string => {
  const letters = [...text.replace(/[\n\r\u2028\u2029]/g, " ").trim()];
  return letters.length > LONGEST_LINE ? `${letters.slice(0, LONGEST_LINE - 1).join("")}…` : letters.join("");
};

/** Whether the outline has a sewing line within it. */
export const hasAllowances = ({ marks }: Piece): boolean => marks.some(({ role }) => role === "seam");

/** What is written on a piece; what it does not tell is said, because allowances and numbers are easily taken for granted. */
function notesOf({ of: { notes, piece, remarks, saysHowMany } }: Scaled): string {
  return [
    ...notes.map(plainLine),
    ...(saysHowMany ? [] : [phrase`not on a cut list`]),
    ...(remarks.length > 0 ? [phrase`▲ check before cutting`] : []),
    ...(hasAllowances(piece) ? [] : [phrase`no allowances are marked`]),
  ].join("\n");
}

/** Lines of one kind of which one alone is named: they go round the piece. */
const ONCE: ReadonlySet<Role> = new Set(["cut", "seam", "notch", "guide"]);
/** The most lines of a piece that are named one by one. */
const MOST_LINES = 60;

/** What each line is, at places along it. */
function linesNamed({
  piece,
  picture: { lines, outlines },
}: Scaled): { readonly text: string; readonly at: Point[] }[] {
  const named: { text: string; at: Point[] }[] = [];
  const done = new Set<Role>();
  const add = (role: Role, d: string, words = ROLE_WORDS[role]) => {
    if (done.has(role) || named.length >= MOST_LINES) return;
    if (ONCE.has(role)) done.add(role);
    const [run] = readPath(d);
    if (!run) return;
    const points = [run.start, ...run.edges.flat().flatMap((stroke) => flatten(stroke, 0.05))];
    const places = [0.35, 0.65, 0.2, 0.8, 0.5].map((share) => alongChords(points, share));
    named.push({ text: words, at: places });
  };
  for (const { d, role } of lines) add(role, d);
  for (const d of outlines) add("cut", d, hasAllowances(piece) ? ROLE_WORDS.cut : phrase`outline`);
  return named;
}

/** The point at a share of the length of a run of chords. */
function alongChords(points: readonly Point[], share: number): Point {
  const lengths = points.slice(1).map(([x, y], i) => Math.hypot(x - points[i]![0], y - points[i]![1]));
  let left = share * lengths.reduce((a, b) => a + b, 0);
  for (const [i, length] of lengths.entries()) {
    if (left <= length && length > 0) {
      const [[ax, ay], [bx, by]] = [points[i]!, points[i + 1]!];
      return [ax + ((bx - ax) * left) / length, ay + ((by - ay) * left) / length];
    }
    left -= length;
  }
  return points.at(-1)!;
}

export interface WordsAbout {
  readonly letters: Letters;
  readonly strokes: readonly (readonly Point[])[];
  readonly tiling: Tiling;
  /** The height of the head of large paper. */
  readonly head: number;
  /** Millimetres of paper to one unit of the book. */
  readonly factor: number;
}

export interface WordSizes {
  /** The height of the words along lines. */
  readonly small: number;
  /** The greatest height of a piece's notes. */
  readonly notes: number;
}

/** The order of placing: a piece's notes first, then its edges and points, then the names of its lines. */
const WEIGHTS = { notes: 1, words: 0, line: -1 } as const;

export function wordsOn(
  scaled: readonly Scaled[],
  motions: readonly Isometry[],
  { letters, strokes, tiling, head, factor }: WordsAbout,
  { small, notes: most }: WordSizes,
) {
  const { columns, rows, wide, tall } = tiling;
  const [stepX, stepY] = [wide - OVERLAP, tall - OVERLAP];
  const sheet = { left: 0, top: head, right: columns * stepX + OVERLAP, bottom: rows * stepY + OVERLAP };
  /** Whether words at a place would lie across the border of a sheet. */
  const isSplit = ([x, y]: Point, halfX: number, halfY: number): boolean => {
    const crosses = (middle: number, half: number, step: number, last: number) =>
      Math.min(last, Math.floor((middle - half) / step)) !==
      Math.min(last, Math.floor((middle + half) / step));
    return crosses(x, halfX, stepX, columns - 1) || crosses(y, halfY, stepY, rows - 1);
  };
  const label = (
    key: string,
    text: string,
    places: readonly Point[],
    size: number,
    kind: keyof typeof WEIGHTS,
    within: boolean,
  ): Label => {
    const lines = text.split("\n");
    const long = Math.max(...lines.map((line) => letters.measure(line, size))) + 1;
    const high = 1.35 * size * lines.length + 1;
    const whole = places.filter((at) => !isSplit(at, long / 2, high / 2));
    const at = [...whole, ...places.filter((one) => !whole.includes(one))];
    return {
      ...{ key, text, at, within, weight: WEIGHTS[kind], wide: long, tall: high },
      ...{ aside: [0, 1], upright: false },
    };
  };
  const sizes = new Map<string, number>();
  const labels = scaled.flatMap((one, i) => {
    const { piece, picture } = one;
    const motion = motions[i]!;
    const here = ([x, y]: Point): Point => movePoint(motion, [x * factor, y * factor]);
    const inside = placesInside(flattenPiece(piece, 0.5), pieceBounds(piece)).map((at) =>
      movePoint(motion, at),
    );
    const notes = notesOf(one);
    // As large as it fits between the lines; where nothing fits, beside the piece.
    const fitting = [10, 8.5, 7, 6, 5, 4, 3, 2.2, 1.6].find(
      (size) =>
        size <= most &&
        placeLabels([label("", notes, inside, size, "notes", true)], strokes, sheet, small).length > 0,
    );
    const size = fitting ?? 2.2;
    sizes.set(`${i}`, size);
    const words = picture.words.filter(({ is }) => is !== "outline");
    return [
      label(`${i}`, notes, inside, size, "notes", fitting !== undefined),
      ...words.map(({ text, at, also }, k) =>
        label(`${i}.${k}`, plainLine(text), [at, ...also].map(here), small, "words", false),
      ),
      ...linesNamed(one).map(({ text, at }, k) =>
        label(`${i} ${k}`, text, at.map(here), 0.75 * small, "line", false),
      ),
    ];
  });
  const placed = placeLabels(labels, strokes, sheet, small);
  const words = placed.flatMap(({ key, text, place: [x, y], weight }: PlacedLabel) => {
    const size = sizes.get(key) ?? (weight === WEIGHTS.line ? 0.75 * small : small);
    const lines = text.split("\n");
    return lines.map(
      (line, i): Word => ({ text: line, size, at: [x, y + (i - (lines.length - 1) / 2) * 1.35 * size] }),
    );
  });
  const keys = new Set(placed.map(({ key }) => key));
  return {
    labels: placed,
    words,
    // The name of a line that finds no room is still in the legend.
    leftOut: labels
      .filter(({ key, weight }) => weight !== WEIGHTS.line && !keys.has(key))
      .map(({ key, text }) => ({
        piece: scaled[Number.parseInt(key, 10)]!.of.called,
        text: text.replaceAll("\n", ", "),
      })),
  };
}
