/** Trying figures out: the open book is shown with them until they are kept or dropped. */

import { useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { placeKey } from "../../book/address.ts";
import { type } from "../../book/edit.ts";
import { sameButLays } from "../../book/lays.ts";
import type { Book } from "../../book/shape.ts";
import { typedFor, type VariedCell } from "../../engine/varied-cell.ts";
import { setSliding } from "../../lay/large-questions.ts";
import { typeCells } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";

export interface Trying {
  /** The figure that a varied cell shows: the one tried, else the one kept. */
  readonly figure: (cell: VariedCell) => number;
  readonly set: (cell: VariedCell, figure: number) => void;
  /** Several at once, such as a solution or a trial. */
  readonly tryAll: (changes: readonly (readonly [VariedCell, number])[]) => void;
  readonly keep: () => string | null;
  readonly drop: () => void;
  readonly isTrying: boolean;
  /** What is being tried, as it would be typed. */
  readonly changes: readonly (readonly [VariedCell, number])[];
}

type Changes = ReadonlyMap<string, readonly [VariedCell, number]>;

const keyOf = ({ place }: VariedCell): string => placeKey(place);

const typingsOf = (book: Book, changes: Changes) =>
  [...changes.values()].map(([cell, figure]) => ({ ...cell.place, typed: typedFor(book, cell, figure) }));

/** However fast the hand, the book follows once a frame. */
export function useTrying(store: Store): Trying {
  const [state, setState] = useState<{ book: Book; changes: Changes }>({
    book: store.book,
    changes: new Map(),
  });
  // An edit made meanwhile puts an end to what was tried.
  const changes: Changes = sameButLays(state.book, store.book) ? state.changes : new Map();
  const frame = useRef(0);

  const change = (next: Changes) => {
    const { book } = store;
    setState({ book, changes: next });
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => {
      // A lay that was found meanwhile is no edit.
      const now = store.book;
      if (!sameButLays(now, book)) return;
      setSliding(next.size > 0);
      store.try(next.size === 0 ? null : type(now, typingsOf(now, next)));
    });
  };
  const without = (cell: VariedCell) => new Map([...changes].filter(([key]) => key !== keyOf(cell)));

  useEffect(
    () => () => {
      cancelAnimationFrame(frame.current);
      store.try(null);
    },
    [store],
  );

  return {
    figure: (cell) => changes.get(keyOf(cell))?.[1] ?? cell.now ?? cell.step,
    set: (cell, figure) =>
      change(figure === cell.now ? without(cell) : new Map(changes).set(keyOf(cell), [cell, figure])),
    tryAll: (list) =>
      change(
        new Map(
          list.flatMap(([cell, figure]) => (figure === cell.now ? [] : [[keyOf(cell), [cell, figure]]])),
        ),
      ),
    keep: () => {
      cancelAnimationFrame(frame.current);
      const label = [...changes.values()].map(([cell]) => cell.label).join(phrase` and `);
      return store.run({
        ...typeCells(typingsOf(store.book, changes)),
        label: phrase`keep ${label} as tried`,
      });
    },
    drop: () => change(new Map()),
    isTrying: changes.size > 0,
    changes: [...changes.values()],
  };
}
