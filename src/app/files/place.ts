/** The cell that was chosen when a book was left. */
import type { Place } from "../../book/address.ts";
import { forget, recall, remember } from "./storage.ts";

/** The cell that is chosen in a book that no one has been in. */
export const FIRST_CELL: Place = { page: 0, row: 0, column: 0 };

const keyOf = (id: string): string => `ellwand.place.${id}`;

export const rememberPlace = (id: string, { page, row, column }: Place): boolean =>
  remember("localStorage", keyOf(id), JSON.stringify({ page, row, column }));

export function recallPlace(id: string): Place | null {
  try {
    const place = JSON.parse(recall("localStorage", keyOf(id)) ?? "null") as Place | null;
    return place && [place.page, place.row, place.column].every(Number.isInteger) ? place : null;
  } catch {
    return null;
  }
}

export const forgetPlace = (id: string): void => forget("localStorage", keyOf(id));
