/**
 * Follows an edit through the turns in which kinds were found. Each turn is gone through again only where it
 * comes out otherwise than before, so that every turn is what it would be if it were found from the beginning.
 */

import type { Changed, KindCells } from "./kind-cells.ts";
import { type Code, heavier, NONE, weightOf } from "./kind-codes.ts";
import { MOST_TURNS, type Turn, Working } from "./kind-turns.ts";

/** The most formulas that are looked at; with more, everything is found anew. */
const MOST_LOOKED_AT = 5000;

/** What a turn was at a cell before it was changed. */
type Before = Map<number, Code>;

interface TurnChanges {
  readonly kinds: Before;
  readonly asked: Before;
}

/** Changes the turns; false when too much changed, and the turns are then of no more use. */
export function followTurns(cells: KindCells, turns: Turn[], changed: Changed): boolean {
  if (cells.size > turns[0]!.kinds.length) return false;
  let last: TurnChanges = { kinds: new Map(), asked: new Map() };
  let left = MOST_LOOKED_AT;
  for (let i = 1; i < turns.length; i += 1) {
    const [before, now] = [turns[i - 1]!, turns[i]!];
    const turn = new ChangedTurn(new Working(cells, before, now), changed, last);
    left = turn.find(left);
    if (left < 0) return false;
    const isEnd = turns[i + 1]?.phase !== now.phase;
    const before2 = last;
    last = turn.changes;
    if (!isEnd || turns.filter(({ phase }) => phase === now.phase).length >= MOST_TURNS) continue;
    // The phase ended with a turn that changed nothing. Where that is no longer so, it goes on for one turn more.
    const differ = [before2, last].flatMap(({ kinds, asked }) => [...kinds.keys(), ...asked.keys()]);
    if (
      differ.every((cell) => now.kinds[cell] === before.kinds[cell] && now.asked[cell] === before.asked[cell])
    )
      continue;
    const next: Turn = { phase: now.phase, kinds: now.kinds.slice(), asked: now.asked.slice() };
    for (const [cell, code] of last.kinds) next.kinds[cell] = code;
    for (const [cell, code] of last.asked) next.asked[cell] = code;
    turns.splice(i + 1, 0, next);
  }
  return true;
}

/** One turn that is gone through again. */
class ChangedTurn {
  readonly changes: TurnChanges = { kinds: new Map(), asked: new Map() };
  readonly #working: Working;
  readonly #changed: Changed;
  readonly #last: TurnChanges;
  /** What the formulas that were looked at again expect of cells. */
  readonly #heard = new Map<number, Code>();

  constructor(working: Working, changed: Changed, last: TurnChanges) {
    this.#working = working;
    this.#changed = changed;
    this.#last = last;
  }

  /** Finds the turn; the number of formulas that may still be looked at, less than 0 when there were too many. */
  find(most: number): number {
    const left = this.#up(most);
    return left < 0 ? left : this.#down(left);
  }

  /** Calls with the formulas whose kind, or what they expect, depends on something that changed in the turn before. */
  #eachSince(hear: (formula: number) => void): void {
    const { cells } = this.#working;
    for (const formula of this.#changed.formulas) hear(formula);
    for (const cell of this.#last.asked.keys())
      if (cells.isFormula(cell)) hear(cell);
      else cells.eachUser(cell, (user) => hear(user));
  }

  #up(most: number): number {
    const { cells, now } = this.#working;
    const waiting = new Waiting((formula) => cells.order(formula));
    this.#eachSince((formula) => waiting.add(formula));
    let left = most;
    for (let formula = waiting.take(); formula !== undefined; formula = waiting.take()) {
      left -= 1;
      if (left < 0) return left;
      const kind = this.#working.kind(formula);
      if (kind === now.kinds[formula]) continue;
      this.changes.kinds.set(formula, now.kinds[formula]!);
      now.kinds[formula] = kind;
      cells.eachUser(formula, (user) => waiting.add(user));
    }
    return left;
  }

  #down(most: number): number {
    const { cells } = this.#working;
    /** Formulas that may expect something else. */
    const again = new Set<number>();
    this.#eachSince((formula) => again.add(formula));
    for (const formula of this.changes.kinds.keys()) {
      again.add(formula);
      cells.eachUser(formula, (user) => again.add(user));
    }
    /** Cells of which something else may be expected. */
    const touched = new Set<number>();
    const waiting = new Waiting((formula) => -cells.order(formula));
    const touch = (cell: number) => {
      touched.add(cell);
      if (cells.isFormula(cell)) waiting.add(cell);
    };
    for (const cell of this.#changed.cells) touch(cell);
    for (const cell of this.#last.asked.keys()) touch(cell);
    for (const formula of again) waiting.add(formula);
    let left = most;
    for (let formula = waiting.take(); formula !== undefined; formula = waiting.take()) {
      left -= 1;
      if (left < 0) return left;
      const isAsked = touched.has(formula) && this.#take(formula);
      if (!isAsked && !again.has(formula)) continue;
      cells.eachTarget(formula, touch);
      this.#working.eachAsked(formula, (cell, code) =>
        this.#heard.set(cell, heavier(this.#heard.get(cell) ?? NONE, code)),
      );
    }
    for (const cell of touched) if (!cells.isFormula(cell)) this.#take(cell);
    return left;
  }

  /** Finds what is expected of a cell; whether that is something else than before. */
  #take(cell: number): boolean {
    const { now } = this.#working;
    const old = now.asked[cell]!;
    const asked = this.#asked(cell, old);
    if (asked === old) return false;
    this.changes.asked.set(cell, old);
    now.asked[cell] = asked;
    return true;
  }

  /** Formulas that were not looked at again expect no more of the cell than was expected before. */
  #asked(cell: number, old: Code): Code {
    const { cells, before } = this.#working;
    let asked = heavier(before.asked[cell]!, this.#heard.get(cell) ?? NONE);
    if (weightOf(asked) >= weightOf(old)) return asked;
    const at = cells.at(cell);
    cells.eachUser(cell, (user) => {
      asked = heavier(asked, this.#working.askedBy(user, cell, at));
      return weightOf(asked) >= weightOf(old);
    });
    return asked;
  }
}

/** Formulas that wait to be looked at, the one of least rank first, each once. */
class Waiting {
  readonly #rank: (formula: number) => number;
  readonly #heap: number[] = [];
  readonly #all = new Set<number>();

  constructor(rank: (formula: number) => number) {
    this.#rank = rank;
  }

  add(formula: number): void {
    if (this.#all.has(formula)) return;
    this.#all.add(formula);
    const heap = this.#heap;
    let at = heap.push(formula) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (this.#rank(heap[above]!) <= this.#rank(formula)) break;
      heap[at] = heap[above]!;
      at = above;
    }
    heap[at] = formula;
  }

  take(): number | undefined {
    const heap = this.#heap;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined || heap.length === 0) return first;
    let at = 0;
    for (;;) {
      let below = at * 2 + 1;
      if (below >= heap.length) break;
      if (below + 1 < heap.length && this.#rank(heap[below + 1]!) < this.#rank(heap[below]!)) below += 1;
      if (this.#rank(heap[below]!) >= this.#rank(last)) break;
      heap[at] = heap[below]!;
      at = below;
    }
    heap[at] = last;
    return first;
  }
}
