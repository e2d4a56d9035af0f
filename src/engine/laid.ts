/** The cells that lay pieces on cloth: what each asked when it was worked last, and what it was answered. */
import type { LayOrigin, LayQuestion, Planner } from "../../functions/lay.ts";
import type { CellAddress } from "./guards.ts";

export interface LaidLay {
  readonly question: LayQuestion;
  readonly answer: ReturnType<Planner>;
}

interface LaidCell {
  readonly address: CellAddress;
  /** The recalculation in which it was worked last. */
  turn: number;
  lays: LaidLay[];
}

const keyOf = ({ sheet, row, col }: CellAddress): string => `${sheet}.${row}.${col}`;

export class LaidCells {
  readonly #cells = new Map<string, LaidCell>();
  #turn = 0;

  /** A recalculation begins: what a cell lays from now on takes the place of what it laid before. */
  begin(): void {
    this.#turn += 1;
  }

  note(address: CellAddress, lay: LaidLay): void {
    const key = keyOf(address);
    const cell = this.#cells.get(key);
    if (cell?.turn === this.#turn) cell.lays.push(lay);
    else this.#cells.set(key, { address, turn: this.#turn, lays: [lay] });
  }

  /** The cell holds something else now, or its value has changed although it laid nothing this time. */
  forget(address: CellAddress, unlessLaidNow = false): void {
    const cell = this.#cells.get(keyOf(address));
    if (cell && !(unlessLaidNow && cell.turn === this.#turn)) this.#cells.delete(keyOf(address));
  }

  clear(): void {
    this.#cells.clear();
  }

  /** All of them, in the order in which they were worked. */
  get all(): readonly { readonly address: CellAddress; readonly lays: readonly LaidLay[] }[] {
    return [...this.#cells.values()];
  }

  lays(address: CellAddress): readonly LaidLay[] {
    return this.#cells.get(keyOf(address))?.lays ?? [];
  }
}

const QUICK: LayOrigin = { by: "quick" };

/** How the least searched of these lays was found; null when pieces were laid nowhere. */
export function leastSearched(lays: readonly LaidLay[]): LayOrigin | null {
  const origins = lays.flatMap(({ answer }) => ("refusal" in answer ? [] : [answer.origin ?? QUICK]));
  return origins.toSorted((a, b) => worth(a) - worth(b))[0] ?? null;
}

/** The longer a lay was searched for, the more; a lay by hand and a proved one need no search. */
export function worth(origin: LayOrigin): number {
  if (origin.by === "quick") return -1;
  if (origin.by === "hand") return 1e9;
  return origin.proved ? Number.POSITIVE_INFINITY : origin.seconds;
}
