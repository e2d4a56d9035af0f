/**
 * Finds the kinds of all cells of a book in turns. In one turn the kinds of formulas are found from the
 * typed cells up to the last formula, then what the formulas expect of their cells is handed down. The turns are
 * kept: after an edit, each is gone through again only where it comes out otherwise (kind-changes.ts).
 */

import type { At } from "./cell-numbers.ts";
import type { KindCells } from "./kind-cells.ts";
import { BLOCK, type Code, FIGURE, heavier, LENGTH, NONE, PIECE, TEXT, weightOf } from "./kind-codes.ts";
import { Holds, kindOfFormula, kindOfTyped } from "./kind-content.ts";
import { MOST_CELLS } from "./kind-lists.ts";

/** The most turns of a phase; no sensible book needs more. */
export const MOST_TURNS = 12;

/** What is assumed in a phase. */
export interface Phase {
  /** The kind of a fraction of which nothing more is known. */
  readonly fraction: Code;
  /** Whether more may yet be learnt about the other cells. */
  readonly careful: boolean;
}

/** Where no formula expects a kind, a fraction is a length and any other number a plain number; at last nothing is left open. */
export const PHASES: readonly Phase[] = [
  { fraction: FIGURE, careful: true },
  { fraction: LENGTH, careful: true },
  { fraction: LENGTH, careful: false },
];
export const LAST_PHASE = PHASES.at(-1)!;

/** The kinds after one turn, by the number of the cell. */
export interface Turn {
  readonly phase: number;
  /** Of formulas. */
  readonly kinds: Uint8Array;
  /** What formulas expect of a cell. */
  readonly asked: Uint8Array;
}

/** Room for cells beyond the rows that edits name. */
const SPARE = 1000;

/** Before the first turn. */
export const atFirst = (cells: KindCells): Turn => ({
  phase: 0,
  kinds: new Uint8Array(cells.size + SPARE).fill(FIGURE),
  asked: new Uint8Array(cells.size + SPARE),
});

/** The kinds of the parts of one formula; the next formula writes over them. */
const partKinds: Code[] = [];

/** One turn: `before` is the turn before it, `now` is being found. */
export class Working {
  readonly cells: KindCells;
  readonly phase: Phase;
  readonly before: Turn;
  readonly now: Turn;

  constructor(cells: KindCells, before: Turn, now: Turn) {
    this.cells = cells;
    this.before = before;
    this.now = now;
    this.phase = PHASES[now.phase]!;
  }

  /** The kind of a cell as the formula `by` sees it: within a circle of formulas as it was in the turn before, while `up`. */
  #kindFor(cell: number, by: number, up: boolean): Code {
    const { cells, before, now } = this;
    if (cells.isFormula(cell))
      return up && inOneCircle(cells, cell, by) ? before.kinds[cell]! : now.kinds[cell]!;
    return kindOfTyped(cells.holds(cell), before.asked[cell]!, this.phase.fraction);
  }

  #kindsOfParts(formula: number, up: boolean): readonly Code[] {
    const { cells } = this;
    const { parts } = cells.patterns[formula]!;
    for (let i = 0; i < parts.length; i += 1)
      partKinds[i] = this.#kindOfPart(cells.part(formula, i), parts[i]!.read, formula, up);
    return partKinds;
  }

  /** The kind of a part: that of its first cell that holds something of a kind other than text. */
  #kindOfPart(part: number, read: number, by: number, up: boolean): Code {
    if (part >= 0) return this.#kindFor(part, by, up);
    let kind: Code = FIGURE;
    this.cells.eachOfPart(part, read, (cell) => {
      kind = this.#kindFor(cell, by, up);
      return kind !== TEXT;
    });
    return kind;
  }

  /** The kind of a formula in this turn. */
  kind(formula: number): Code {
    const { cells, phase, before } = this;
    const own = cells.patterns[formula]!.kind(this.#kindsOfParts(formula, true), phase.careful);
    return kindOfFormula(cells.holds(formula), own, before.asked[formula]!);
  }

  /** What a formula expects of each of its parts in this turn. */
  wants(formula: number): Uint8Array {
    const { cells, phase, now } = this;
    const kind = now.kinds[formula]!;
    const asked = now.asked[formula]!;
    const want = kind !== FIGURE ? kind : asked !== NONE ? asked : phase.careful ? NONE : FIGURE;
    return cells.patterns[formula]!.wants(this.#kindsOfParts(formula, false), want, phase.careful);
  }

  /** Calls with each cell of which a formula expects a kind in this turn, and with the kind. */
  eachAsked(formula: number, hear: (cell: number, code: Code) => void): void {
    const { cells } = this;
    const wants = this.wants(formula);
    for (let i = 0; i < wants.length; i += 1) {
      const want = wants[i]!;
      if (want === BLOCK)
        cells.eachOfPart(cells.part(formula, i), MOST_CELLS, (cell) => {
          if (cells.holds(cell) === Holds.outline) hear(cell, PIECE);
        });
      else if (weightOf(want) > 0) {
        const part = cells.part(formula, i);
        if (part >= 0) hear(part, want);
        else cells.eachOfPart(part, MOST_CELLS, (cell) => hear(cell, want));
      }
    }
    for (const { cell, code } of cells.askedOf(formula)) if (weightOf(code) > 0) hear(cell, code);
  }

  /** The kind that a formula expects of one cell in this turn. */
  askedBy(formula: number, cell: number, at: At): Code {
    const { cells } = this;
    const wants = this.wants(formula);
    let asked: Code = NONE;
    for (let i = 0; i < wants.length; i += 1) {
      const want = wants[i]!;
      if (want === NONE || !cells.isInPart(cells.part(formula, i), cell, at)) continue;
      if (want !== BLOCK) asked = heavier(asked, want);
      else if (cells.holds(cell) === Holds.outline) asked = PIECE;
    }
    for (const one of cells.askedOf(formula)) if (one.cell === cell) asked = heavier(asked, one.code);
    return asked;
  }
}

export const inOneCircle = ({ circles }: KindCells, a: number, b: number): boolean =>
  circles.size > 0 && circles.has(a) && circles.get(a) === circles.get(b);

/** How many formulas a slice has. */
const SLICE = 5000;

/** A whole turn after `before`, in slices. */
function* wholeTurn(cells: KindCells, before: Turn, phase: number): Generator<void, Turn> {
  const now: Turn = { phase, kinds: before.kinds.slice(), asked: before.asked.slice() };
  const working = new Working(cells, before, now);
  const { inOrder } = cells;
  for (const [i, formula] of inOrder.entries()) {
    now.kinds[formula] = working.kind(formula);
    if (i % SLICE === 0) yield;
  }
  /** What formulas of a circle expect of one another counts from the next turn on. */
  const later: [cell: number, code: Code][] = [];
  for (let i = inOrder.length - 1; i >= 0; i -= 1) {
    const formula = inOrder[i]!;
    working.eachAsked(formula, (cell, code) => {
      if (inOneCircle(cells, formula, cell)) later.push([cell, code]);
      else now.asked[cell] = heavier(now.asked[cell]!, code);
    });
    if (i % SLICE === 0) yield;
  }
  for (const [cell, code] of later) now.asked[cell] = heavier(now.asked[cell]!, code);
  return now;
}

/** Whether nothing came out otherwise than in the turn before. */
export const isSettled = (before: Turn, now: Turn): boolean =>
  isSame(before.kinds, now.kinds) && isSame(before.asked, now.asked);

const isSame = (a: Uint8Array, b: Uint8Array): boolean => {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
};

/** Every turn, phase after phase, each phase until nothing changes; found in slices. */
export function* findTurns(cells: KindCells): Generator<void, Turn[]> {
  const turns = [atFirst(cells)];
  for (const phase of PHASES.keys())
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      const before = turns.at(-1)!;
      const now = yield* wholeTurn(cells, before, phase);
      turns.push(now);
      if (isSettled(before, now)) break;
    }
  return turns;
}
