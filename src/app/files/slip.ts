/**
 * The last changes of a page that is being closed. The shelf is written to in its own time, which
 * a closing page may not have; this is written at once and read at the next opening.
 */
import type { Place } from "../../book/address.ts";

export interface Slip {
  /** The revision on the shelf when it was written. */
  readonly revision: number;
  /** The book's text, when it goes beyond that revision. */
  readonly text: string | null;
  /** The chosen cell. */
  readonly place: Place;
}

const key = (id: string): string => `ellwand.slip.${id}`;

/** False when the browser has no room for it. */
export function writeSlip(id: string, slip: Slip): boolean {
  try {
    localStorage.setItem(key(id), JSON.stringify(slip));
    return true;
  } catch {
    return false;
  }
}

export function readSlip(id: string): Slip | null {
  try {
    const slip: unknown = JSON.parse(localStorage.getItem(key(id)) ?? "null");
    return isSlip(slip) ? slip : null;
  } catch {
    return null;
  }
}

function isSlip(value: unknown): value is Slip {
  if (typeof value !== "object" || value === null) return false;
  const { revision, text, place } = value as Partial<Slip>;
  const counts = [revision, place?.page, place?.row, place?.column];
  return counts.every((one) => Number.isInteger(one)) && (text === null || typeof text === "string");
}

export function dropSlip(id: string): void {
  try {
    localStorage.removeItem(key(id));
  } catch {
    // Where nothing can be kept there is nothing to drop.
  }
}
