/**
 * What the formulas of one HyperFormula said beside their values when they were last calculated: their
 * lays, what is unusual, which cells of lists they are about or took, what they estimate. A formula that
 * is calculated again says it anew, so a cell's records are forgotten before that.
 */
import type { JoinQuestion } from "../../functions/lay.ts";
import type { Place } from "../book/address.ts";
import { addressKey, type CellAddress } from "./inside.ts";
import { LaidCells, type LaidLay } from "./laid.ts";
import type { CellInList } from "./list-cells.ts";
import { NotedByCell } from "./noted-by-cell.ts";
import { Oddities } from "./oddities.ts";
import type { PointedAt } from "./pointed.ts";
import type { RawValue } from "./raw-value.ts";
import type { Context } from "./register.ts";
import { StandingOut } from "./standing-out.ts";

/** A cell that lays pieces on cloth, with its questions and their answers. */
export interface Laid {
  readonly place: Place;
  readonly lays: readonly LaidLay[];
  /** The joins that the cell waits for. */
  readonly joins?: JoinQuestion;
}

/** Where HyperFormula has a cell of the book, and the other way round; null for a page that is gone. */
export interface Whereabouts {
  address(place: Place): CellAddress;
  placeOf(cell: CellAddress): Place | null;
}

export class Records {
  readonly #where: Whereabouts;
  /** The cells that lay pieces: a better lay changes no cell, so nothing else would calculate them again. */
  readonly #laid = new LaidCells();
  readonly oddities = new Oddities();
  readonly #standingOut = new StandingOut();
  /** The cells of lists that formulas say something about. */
  readonly #pointed = new NotedByCell<PointedAt<CellAddress>>();
  /** The cells of lists that formulas took their answers from. */
  readonly #taken = new NotedByCell<CellInList<CellAddress>>();
  readonly #estimates = new Map<string, { readonly cell: CellAddress; readonly sentence: string }>();
  /** Whether the formula being calculated stands in no cell of the book: HyperFormula then names the first cell. */
  outside = false;

  constructor(where: Whereabouts) {
    this.#where = where;
  }

  /** The parts of a context that a formula speaks to while it is calculated. */
  listeners(): Required<
    Pick<Context, "laid" | "awaitsJoins" | "unusual" | "took" | "estimated" | "pointed">
  > {
    const inBook =
      <T>(note: (cell: CellAddress, what: T) => void) =>
      (cell: CellAddress, what: T): void => {
        if (!this.outside) note(cell, what);
      };
    return {
      laid: inBook((cell, lay) => this.#laid.note(cell, lay)),
      awaitsJoins: inBook((cell, joins) => this.#laid.noteJoins(cell, joins)),
      unusual: (cell) => this.oddities.note(cell),
      took: inBook((cell, from) => this.#taken.note(cell, from)),
      estimated: inBook((cell, sentence) => this.#estimates.set(addressKey(cell), { cell, sentence })),
      pointed: inBook((cell, at) => this.#pointed.note(cell, at)),
    };
  }

  /** Everything is built anew. */
  clear(): void {
    this.#laid.clear();
    this.oddities.clear();
    this.#standingOut.clear();
    this.#pointed.clear();
    this.#taken.clear();
    this.#estimates.clear();
  }

  /** The cell holds something else now, or its formula is about to be calculated again. */
  forget(cell: CellAddress): void {
    this.#standingOut.note(cell);
    this.#laid.forget(cell);
    this.#pointed.forget(cell);
    this.#taken.forget(cell);
    if (this.#estimates.size > 0) this.#estimates.delete(addressKey(cell));
  }

  /** The cell has another value now. */
  calculated(cell: CellAddress): void {
    this.#standingOut.note(cell);
  }

  /** The places of cells, without those of pages that are gone. */
  #places(cells: readonly CellAddress[]): Place[] {
    return cells.flatMap((cell) => this.#where.placeOf(cell) ?? []);
  }

  /** The lays of one cell. */
  laysOf(place: Place): readonly LaidLay[] {
    return this.#laid.lays(this.#where.address(place));
  }

  /** The cells that lay pieces on cloth, in the order in which they were calculated. */
  laid(): Laid[] {
    return this.#laid.all.flatMap(({ address, lays, joins }) => {
      const place = this.#where.placeOf(address);
      return place ? [{ place, lays, ...(joins && { joins }) }] : [];
    });
  }

  /** Whether pieces were laid since `laidSeen` was last called. */
  get newlyLaid(): boolean {
    return this.#laid.hasNew;
  }

  laidSeen(): void {
    this.#laid.hasNew = false;
  }

  /**
   * The cells whose formulas have an error or a verdict that is not ok as their value. `formulas` lists
   * every cell with a formula, `raw` reads a value.
   */
  standingOut(formulas: () => readonly Place[], raw: (cell: CellAddress) => RawValue): Place[] {
    const all = () => formulas().map((place) => this.#where.address(place));
    return this.#places(this.#standingOut.cells(all, raw));
  }

  /** The cells that may hold something unusual, which `oddities.text` decides. */
  odd(): Place[] {
    return this.#places(this.oddities.cells);
  }

  /** The cells of lists that the formula of a cell said something about. */
  pointedAt(place: Place): readonly PointedAt<Place>[] {
    return this.#pointed.of(this.#where.address(place)).flatMap(({ at, sentence }) => {
      const found = this.#where.placeOf(at);
      return found ? [{ at: found, sentence }] : [];
    });
  }

  /** The cells whose formulas said something about a cell of a list. */
  pointing(): Place[] {
    return this.#places(this.#pointed.all);
  }

  /** The cells of lists that the answer of a cell rests on, for the lists of which that is known. */
  takenBy(place: Place): readonly CellInList<Place>[] {
    return this.#taken.of(this.#where.address(place)).flatMap(({ start, end, at }) => {
      const [from, to, cell] = [start, end, at].map((one) => this.#where.placeOf(one));
      return from && to && cell ? [{ start: from, end: to, at: cell }] : [];
    });
  }

  /** The cells whose formulas estimate something, and what each says. */
  estimates(): { readonly place: Place; readonly sentence: string }[] {
    return [...this.#estimates.values()].flatMap(({ cell, sentence }) => {
      const place = this.#where.placeOf(cell);
      return place ? [{ place, sentence }] : [];
    });
  }
}
