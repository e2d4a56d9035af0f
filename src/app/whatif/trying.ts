/** Trying figures out: the open book is shown with them until they are kept or dropped. */

import { useEffect, useRef, useState } from "react";
import { placeKey } from "../../book/address.ts";
import { type } from "../../book/edit.ts";
import { sameWork } from "../../book/lays.ts";
import type { Book } from "../../book/shape.ts";
import { type Dial, typedFor } from "../../engine/dial.ts";
import { typeCells } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";

export interface Trying {
  /** The figure that a dial shows: the one tried, else the one kept. */
  readonly figure: (dial: Dial) => number;
  readonly turn: (dial: Dial, figure: number) => void;
  /** Several at once, such as a solution or a trial. */
  readonly tryAll: (turned: readonly (readonly [Dial, number])[]) => void;
  readonly keep: () => string | null;
  readonly drop: () => void;
  readonly isTrying: boolean;
  /** What is being tried, as it would be typed. */
  readonly turned: readonly (readonly [Dial, number])[];
}

type Turned = ReadonlyMap<string, readonly [Dial, number]>;

const keyOf = ({ place }: Dial): string => placeKey(place);

const typingsOf = (book: Book, turned: Turned) =>
  [...turned.values()].map(([dial, figure]) => ({ ...dial.place, typed: typedFor(book, dial, figure) }));

/** However fast the hand, the book follows once a frame. */
export function useTrying(store: Store): Trying {
  const [state, setState] = useState<{ book: Book; turned: Turned }>({ book: store.book, turned: new Map() });
  // An edit made meanwhile puts an end to what was tried.
  const turned: Turned = sameWork(state.book, store.book) ? state.turned : new Map();
  const frame = useRef(0);

  const set = (next: Turned) => {
    const { book } = store;
    setState({ book, turned: next });
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => {
      // A lay that was found meanwhile is no edit.
      const now = store.book;
      if (sameWork(now, book)) store.try(next.size === 0 ? null : type(now, typingsOf(now, next)));
    });
  };
  const without = (dial: Dial) => new Map([...turned].filter(([key]) => key !== keyOf(dial)));

  useEffect(
    () => () => {
      cancelAnimationFrame(frame.current);
      store.try(null);
    },
    [store],
  );

  return {
    figure: (dial) => turned.get(keyOf(dial))?.[1] ?? dial.now ?? dial.step,
    turn: (dial, figure) =>
      set(figure === dial.now ? without(dial) : new Map(turned).set(keyOf(dial), [dial, figure])),
    tryAll: (list) =>
      set(
        new Map(
          list.flatMap(([dial, figure]) => (figure === dial.now ? [] : [[keyOf(dial), [dial, figure]]])),
        ),
      ),
    keep: () => {
      cancelAnimationFrame(frame.current);
      const label = [...turned.values()].map(([dial]) => dial.label).join(" and ");
      return store.run({ ...typeCells(typingsOf(store.book, turned)), label: `keep ${label} as tried` });
    },
    drop: () => set(new Map()),
    isTrying: turned.size > 0,
    turned: [...turned.values()],
  };
}
