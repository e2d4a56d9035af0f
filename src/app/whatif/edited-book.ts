/** The book that what-if questions are asked of. */
import { useRef } from "react";
import { sameButLays } from "../../book/lays.ts";
import type { Book } from "../../book/shape.ts";
import type { Store } from "../../store/store.ts";

/** The book as it was last changed: a lay that is found meanwhile is no reason to ask again. */
export function useEditedBook({ book }: Store): Book {
  const work = useRef(book);
  if (!sameButLays(work.current, book)) work.current = book;
  return work.current;
}
