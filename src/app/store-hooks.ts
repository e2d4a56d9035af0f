/** How a component follows the open book: it reads one revision number and asks the store for the rest. */
import { useDeferredValue, useSyncExternalStore } from "react";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { Store } from "../store/store.ts";

export const useRevision = (store: Store): number =>
  useSyncExternalStore(store.subscribe, () => store.revision);

/** The revision for what stands beside the grid: the grid is painted first. */
export const useLateRevision = (store: Store): number => useDeferredValue(useRevision(store));

/** A place that is sure to be on a page of the book: an undone step may have taken the page away. */
export const within = (book: Book, place: Place): Place =>
  place.page < book.pages.length ? place : { page: book.pages.length - 1, row: 0, column: 0 };
