/** The cells of one engine that rest on themselves; what only waits for such a cell is not among them. */
import { DetailedCellError, ErrorType } from "hyperformula";
import { findPlace, type Place, placeKey } from "../book/address.ts";
import type { Instance } from "./instance.ts";

export const circularCells = (instance: Instance): Place[] =>
  instance.standingOut().filter((place) => {
    const raw = instance.raw(place);
    if (!(raw instanceof DetailedCellError) || raw.type !== ErrorType.CYCLE) return false;
    const from = raw.address && findPlace(instance.book, raw.address);
    return !from || placeKey(from) === placeKey(place);
  });
