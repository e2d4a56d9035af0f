/**
 * The pattern pieces of a drawing. A closed line is a piece; a line inside a piece, closed or open, is a mark
 * on it. Lines that nearly close are closed, and lines that go round together are joined. What was done is
 * said in sentences.
 */

import { selfCrossing } from "../../../functions/geometry/self-crossing.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { numberText } from "../../../functions/number-text.ts";
import { phrase } from "../../../functions/phrase.ts";
import {
  flattenPiece,
  type Mark,
  mark,
  type Piece,
  pieceArea,
  pieceBounds,
  pieceOf,
} from "../../../functions/pieces/piece.ts";
import { chained, type Loop } from "./chain.ts";
import { edgesOf } from "./corners.ts";
import { type Drawing, type DrawnLine, placedStrokes } from "./drawn-lines.ts";
import { differentNames } from "./names.ts";
import { ownPiece } from "./own-piece.ts";
import { contains, fills, type Measured, measured, sameLine, shareInside } from "./within.ts";

export interface FoundPiece {
  readonly name: string;
  /** In the drawing's units, the upper left corner of its box at (0, 0). */
  readonly piece: Piece;
  /** Where that corner lies in the drawing. */
  readonly at: Point;
  /** What was done to make it a piece, a sentence each. */
  readonly said: readonly string[];
}

export interface Found {
  readonly pieces: readonly FoundPiece[];
  /** Millimetres in a unit of the drawing; null when the file does not say. */
  readonly millimetres: number | null;
  /** How the size was understood, in a sentence. */
  readonly size: string;
  /** What was left out, ignored or is uncertain, a sentence each. */
  readonly said: readonly string[];
}

/** Whether closed lines inside a piece are marks on it, or pieces too. */
export type Inner = "marks" | "pieces";

/** The most closed lines, and the most loose ones, that are looked at. */
const MOST_LOOPS = 2000;
const MOST_LOOSE = 20_000;

/** The most strokes an outline in a cell may have; the reader of pieces holds to it too. */
const MOST_STROKES = 5000;

/** The pieces of a drawing, or a sentence that says why it has none. */
export function findPieces(drawing: Drawing, inner: Inner = "marks"): Found | { readonly refusal: string } {
  const { lines, millimetres, size } = drawing;
  const loose = lines.filter(({ closed }) => !closed);
  const count = lines.length - loose.length;
  if (loose.length > MOST_LOOSE || count > MOST_LOOPS)
    return {
      refusal:
        count > MOST_LOOPS
          ? phrase`it has ${Math.max(count, loose.length).toLocaleString("en")} closed lines, more than ${MOST_LOOPS}; leave out what belongs to no pattern piece, or cut it into parts`
          : phrase`it has ${Math.max(count, loose.length).toLocaleString("en")} open lines, more than ${MOST_LOOSE.toLocaleString("en")}; leave out what belongs to no pattern piece, or cut it into parts`,
    };
  const finder = new Finder(drawing, inner);
  const pieces = finder.pieces();
  const said = [...drawing.said, ...finder.said];
  if (pieces.length > 0) return { pieces, millimetres, size, said };
  const why = said.slice(0, 3).join(" ");
  return {
    refusal:
      (lines.length === 0
        ? phrase`no closed outline was found in it; it draws no line`
        : phrase`no closed outline was found in it`) + (why && `. ${why}`),
  };
}

class Finder {
  readonly said: string[] = [];
  readonly #drawing: Drawing;
  readonly #inner: Inner;
  #paper: Measured | undefined;

  constructor(drawing: Drawing, inner: Inner) {
    this.#drawing = drawing;
    this.#inner = inner;
  }

  pieces(): FoundPiece[] {
    const { lines } = this.#drawing;
    const whole = lines.filter(({ closed }) => closed).map((line): Loop => ({ ...line, gap: 0, made: 1 }));
    const { loops, open, repeated } = chained(lines.filter(({ closed }) => !closed));
    const all = this.#once([...whole, ...loops].map(measured), repeated).sort((a, b) => b.area - a.area);
    const own = this.#withoutPage(all.filter(({ line }) => !line.isAid));
    const outer =
      this.#inner === "pieces" ? own : own.filter((one) => !own.some((other) => contains(other, one)));
    const marksOf = new Map(outer.map((one) => [one, [] as DrawnLine[]]));
    const smallest = [...outer].reverse();
    const isOuter = new Set(outer);
    for (const one of all) {
      if (isOuter.has(one) || one === this.#paper) continue;
      const around = smallest.find((other) => contains(other, one));
      if (around) marksOf.get(around)!.push(one.line);
    }
    this.#takeOpen(open, smallest, marksOf);
    const readable = outer.flatMap((one) => this.#piece(one, marksOf.get(one)!));
    // In the order of the drawing, not of their sizes.
    const order = new Map([...whole, ...loops].map((line, i) => [line, i]));
    readable.sort((a, b) => order.get(a.line)! - order.get(b.line)!);
    const names = differentNames(readable.map(({ found }, i) => found.name || `piece ${i + 1}`));
    return readable.map(({ found }, i) => ({ ...found, name: names[i]! }));
  }

  /** Lines that are drawn twice, such as a filled shape and its contour, count once. */
  #once(loops: readonly Measured[], repeated: number): Measured[] {
    const kept: Measured[] = [];
    for (const one of loops) if (!kept.some((other) => sameLine(one, other))) kept.push(one);
    const twice = loops.length - kept.length + repeated;
    if (twice > 0)
      this.said.push(
        twice === 1
          ? phrase`A line is drawn twice and counts once.`
          : phrase`${twice} lines are drawn twice and count once.`,
      );
    return kept;
  }

  /** A closed line as large as the page, with others in it, is the paper and no piece. */
  #withoutPage(loops: readonly Measured[]): readonly Measured[] {
    const { page } = this.#drawing;
    if (!page || loops.length < 2) return loops;
    this.#paper = loops.find((one) => fills(one, page));
    if (!this.#paper) return loops;
    this.said.push(phrase`A rectangle as large as the page is taken for the paper and left out.`);
    return loops.filter((one) => one !== this.#paper);
  }

  #takeOpen(
    open: readonly DrawnLine[],
    outer: readonly Measured[],
    marksOf: ReadonlyMap<Measured, DrawnLine[]>,
  ): void {
    const left: Measured[] = [];
    for (const line of open) {
      const one = measured({ ...line, gap: 0, made: 1 });
      const inside = outer.find((other) => shareInside(other, one) >= 0.5);
      if (inside) marksOf.get(inside)!.push(line);
      else if (!line.isAid) left.push(one);
    }
    if (left.length === 0) return;
    const longest = left.reduce((a, b) => (b.length > a.length ? b : a));
    const [first, last] = [longest.line.strokes[0]!.from, longest.line.strokes.at(-1)!.to];
    const gap = this.#say(Math.hypot(last[0] - first[0], last[1] - first[1]));
    const called = longest.line.name ? ` “${longest.line.name}”` : "";
    this.said.push(
      left.length === 1
        ? phrase`An open line${called} outside the pieces is left out: its ends are ${gap} apart.`
        : phrase`${left.length} open lines outside the pieces are left out; the ends of the longest${called} are ${gap} apart.`,
    );
  }

  /** The piece of a closed line, or nothing and a sentence that says why not. */
  #piece({ line, length }: Measured, marks: readonly DrawnLine[]): { line: Loop; found: FoundPiece }[] {
    const own = line.piece === undefined ? null : ownPiece(line.piece, line.strokes);
    const edges = own ? own.edges : edgesOf(line.strokes);
    const bare = { edges };
    const { left, low, right, high } = pieceBounds(bare);
    const name = line.name;
    const called = name ? `“${name}”` : phrase`An outline`;
    const size = Math.max(right - left, high - low);
    const strokes = line.strokes.length;
    if (strokes > MOST_STROKES) {
      this.said.push(
        phrase`${called} is left out: it has ${strokes.toLocaleString("en")} points, more than ${MOST_STROKES.toLocaleString("en")}; simplify its line in the program it was made with.`,
      );
      return [];
    }
    if (!(pieceArea(bare) > 1e-9 * size * size)) {
      this.said.push(phrase`${called} is left out: it has no area.`);
      return [];
    }
    const place = selfCrossing(flattenPiece(bare, size / 2000));
    if (place) {
      this.said.push(
        phrase`${called} is left out: it crosses itself, ${this.#say(place[0] - left)} from its left and ${this.#say(place[1] - low)} from its top; draw it without the crossing.`,
      );
      return [];
    }
    const lines: readonly Mark[] = own
      ? own.marks
      : marks.map(({ strokes, role }) => mark(strokes, role ?? "placement"));
    const piece = pieceOf(
      edges.map((edge) => placedStrokes(edge, -left, -low, 1)),
      own?.names ?? [],
      lines.map(({ line: one, role }) => mark(placedStrokes(one, -left, -low, 1), role)),
    );
    const said = own
      ? [phrase`Ellwand wrote it: the names of its edges and its marks are kept.`]
      : this.#done(line, length, marks);
    return [{ line, found: { name, piece, at: [left, low], said } }];
  }

  #done(line: Loop, length: number, marks: readonly DrawnLine[]): string[] {
    const said: string[] = [];
    if (line.piece !== undefined)
      said.push(phrase`It was changed since Ellwand wrote it: its edges have no names.`);
    if (line.made > 1) said.push(phrase`It is joined from ${line.made} lines.`);
    if (line.gap > 1e-6 * length)
      said.push(
        line.made > 1
          ? phrase`The widest gap between them, ${this.#say(line.gap)}, is closed.`
          : phrase`The gap between its ends, ${this.#say(line.gap)}, is closed.`,
      );
    const closed = marks.filter(({ strokes }) => {
      const [first, last] = [strokes[0]!.from, strokes.at(-1)!.to];
      return Math.hypot(last[0] - first[0], last[1] - first[1]) <= 1e-9 * length;
    }).length;
    const open = marks.length - closed;
    if (closed > 0)
      said.push(
        closed === 1
          ? phrase`A closed line inside it is a mark, not a hole.`
          : phrase`${closed} closed lines inside it are marks, not holes.`,
      );
    if (open > 0)
      said.push(
        open === 1
          ? phrase`An open line inside it is a mark.`
          : phrase`${open} open lines inside it are marks.`,
      );
    return said;
  }

  /** A length of the drawing in words. */
  #say(length: number): string {
    const { millimetres } = this.#drawing;
    return millimetres === null
      ? phrase`${numberText(length, 3)} units of the drawing`
      : `${numberText(length * millimetres, 3)} mm`;
  }
}
