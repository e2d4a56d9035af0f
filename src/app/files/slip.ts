/**
 * The last changes of a page that is being closed. The shelf is written to in its own time, which
 * a closing page may not have; this is written at once and put on the shelf at the next opening.
 */

export interface Slip {
  /** The revision on the shelf that the text goes beyond. */
  readonly revision: number;
  readonly text: string;
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
    if (typeof slip !== "object" || slip === null || !("revision" in slip) || !("text" in slip)) return null;
    const { revision, text } = slip;
    return typeof revision === "number" && typeof text === "string" ? { revision, text } : null;
  } catch {
    return null;
  }
}

export function dropSlip(id: string): void {
  try {
    localStorage.removeItem(key(id));
  } catch {
    // Where nothing can be kept there is nothing to drop.
  }
}
