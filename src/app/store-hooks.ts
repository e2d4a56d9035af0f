/** How a component follows the open book: it reads one revision number and asks the store for the rest. */
import { useCallback, useLayoutEffect, useRef, useSyncExternalStore } from "react";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { Store } from "../store/store.ts";

export const useRevision = (store: Store): number =>
  useSyncExternalStore(store.subscribe, () => store.revision);

/** The book as kept: for a part that is the same while figures are tried out in What if. */
export const useKept = (store: Store): Book => useSyncExternalStore(store.subscribe, () => store.book);

/** A place that is sure to be on a page of the book: an undone step may have taken the page away. */
export const within = (book: Book, place: Place): Place =>
  place.page < book.pages.length ? place : { page: book.pages.length - 1, row: 0, column: 0 };

/** The same function at every render, which calls the newest: what is given to a part that is rarely rendered. */
export function useStable<Args extends unknown[], Result>(
  act: (...args: Args) => Result,
): (...args: Args) => Result {
  const newest = useRef(act);
  useLayoutEffect(() => {
    newest.current = act;
  });
  return useCallback((...args: Args) => newest.current(...args), []);
}
