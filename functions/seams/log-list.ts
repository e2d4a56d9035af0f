/** The fitting log as a list: what was let out or taken in at which seam, where along it, and on each side or all round. */

import { comparedName } from "../compared-name.ts";
import type { ListForm, ListRow } from "../define.ts";
import { rememberWithObject } from "../memo.ts";
import { phrase, written } from "../phrase.ts";
import { type CellOfList, Refusal } from "../refusal.ts";

const text = (about: string, choices?: readonly string[]) =>
  choices ? ({ kind: "text", about, choices } as const) : ({ kind: "text", about } as const);

export const LOG_LIST = {
  noun: "the fitting log",
  columns: {
    piece: {
      headings: ["piece", "pieces"],
      about: "the piece that was fitted",
      take: text("the piece"),
      needed: true,
    },
    seam: {
      headings: ["seam", "edge", "seams"],
      about: "the seam or edge of that piece, called as in the list of seams",
      take: text("the seam"),
      needed: true,
    },
    amount: {
      headings: ["amount", "amounts", "how much", "by how much"],
      about:
        "by how much, both edges of the seam together; without a word in or out, let out is + and taken in −",
      take: { kind: "length", about: "the amount", from: -500, to: 500 },
      needed: true,
    },
    way: {
      headings: ["in or out", "taken in or let out", "which way"],
      about: "in or out",
      take: text("in or out", ["in", "out", "taken in", "let out"]),
    },
    end: {
      headings: ["top or bottom", "where along the seam"],
      about: "top or bottom, where the seam was altered at one end; blank where it was altered all along",
      take: text("top or bottom", ["top", "bottom"]),
    },
    each: {
      headings: ["each side or all round", "each side", "sides"],
      about:
        "each side, where the amount was altered on the left and on the right; all round where it is blank",
      take: text("each side or all round", ["each side", "all round"]),
    },
    carried: {
      headings: ["carried into version", "carried into", "carried"],
      about: "the version into which the entry was carried: it counts no longer",
      take: text("the version"),
    },
  },
} as const satisfies ListForm;

export type SeamEnd = "top" | "bottom";

/** An amount of the log that still counts. */
export interface LogEntry {
  /** Row of the log, counted from 1. */
  readonly number: number;
  /** Piece and seam as they are compared: "bodice waist". */
  readonly name: string;
  /** As written, let out positive. */
  readonly amount: number;
  readonly end: SeamEnd | null;
  readonly eachSide: boolean;
  readonly places: ListRow["places"];
}

export interface FittingLog {
  readonly entries: readonly LogEntry[];
  /** Every piece and seam that the log names, entries that were carried into a version among them. */
  readonly names: ReadonlySet<string>;
}

/** A cell of a row of the log, to point at it. */
export const cellOfLog = (places: ListRow["places"], field: keyof typeof LOG_LIST.columns): CellOfList => ({
  argument: "fitting_log",
  cell: places[field] ?? 0,
});

/** Kept because every figure that follows the fittings asks for the log. */
const logs = rememberWithObject<readonly ListRow[], FittingLog>();

/** The entries of a log. Refuses an amount that names no seam, a seam without an amount, and an amount with two signs. */
export const logOf = (rows: readonly ListRow[]): FittingLog => logs(rows, () => readLog(rows));

function readLog(rows: readonly ListRow[]): FittingLog {
  const names = new Set<string>();
  const entries: LogEntry[] = [];
  for (const { number, cells, places } of rows) {
    const { piece, seam, amount, way, end, each, carried } = cells as Readonly<Record<string, unknown>>;
    const where = written`row ${number} of the fitting log`;
    if (piece === null && seam === null && amount === null) continue;
    for (const field of ["piece", "seam", "amount"] as const)
      if (cells[field] === null)
        throw new Refusal(
          field === "amount"
            ? phrase`${where} names the ${String(piece)}'s ${String(seam)} and has no amount: write how much it was let out or taken in, or clear the row`
            : amount === null
              ? phrase`${where} names no ${field}: write what was altered, or clear the row`
              : phrase`${where} names no ${field}, although it has an amount: write what was altered, or clear the row`,
          cellOfLog(places, field),
        );
    const figure = Number(amount);
    if (way !== null && figure < 0)
      throw new Refusal(
        (say) =>
          phrase`${where} has ${say(figure)} and says ${String(way)}: write ${say(-figure)} with in or out, or leave in or out blank`,
        cellOfLog(places, "amount"),
      );
    const name = comparedName(`${piece} ${seam}`);
    names.add(name);
    if (carried !== null) continue;
    entries.push({
      number,
      name,
      amount: way === "in" || way === "taken in" ? -figure : figure,
      end: end as SeamEnd | null,
      eachSide: each === "each side",
      places,
    });
  }
  return { entries, names };
}
