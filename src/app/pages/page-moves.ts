/** Moving a page among the others: up and down the list, from one stage of the work to the next, or by dragging. */

import type { DragEvent } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { fullAddress } from "../../book/address.ts";
import { usersOfPage } from "../../book/find.ts";
import { type Book, type Page, STAGES, type Stage } from "../../book/shape.ts";
import { movePage } from "../../store/arranging.ts";
import type { Store } from "../../store/store.ts";

/** Where a page comes to: before page `to` of the book as it is, under a stage of the work. */
export interface Target {
  readonly to: number;
  readonly stage: Stage;
}

/** Where a page comes to one step up or down the list; null at its end. */
export function pageStep(pages: readonly Page[], index: number, by: 1 | -1): Target | null {
  const { stage } = pages[index]!;
  const own = [...pages.keys()].filter((i) => pages[i]!.stage === stage);
  const neighbour = own[own.indexOf(index) + by];
  if (neighbour !== undefined) return { to: by < 0 ? neighbour : neighbour + 1, stage };
  const next = STAGES[STAGES.indexOf(stage) + by];
  if (!next) return null;
  const there = [...pages.keys()].filter((i) => pages[i]!.stage === next);
  return { to: by < 0 ? (there.at(-1) ?? index - 1) + 1 : (there[0] ?? index), stage: next };
}

/** Moves a page; gives the place it came to, or why it was refused. */
export function runPageMove(store: Store, index: number, { to, stage }: Target): number | string {
  const page = store.shown.pages[index]!;
  const refusal = store.run(movePage(index, to, stage));
  return refusal ?? store.shown.pages.findIndex(({ title }) => title === page.title);
}

const TYPE = "application/x-ellwand-page";

/** What is done when a page was dropped. */
type Moved = (index: number, target: Target) => void;

/** What makes an entry of the list draggable, and a place to drop another on. */
export function pageDrag(index: number, stage: Stage, moved: Moved) {
  return {
    draggable: true,
    onDragStart: ({ dataTransfer }: DragEvent) => {
      dataTransfer.setData(TYPE, String(index));
      dataTransfer.effectAllowed = "move";
    },
    ...pageDrop(index, stage, moved),
  };
}

/** What makes an element a place to drop a page on: it comes before page `to`, under `stage`. */
export function pageDrop(to: number, stage: Stage, moved: Moved) {
  return {
    onDragOver: (event: DragEvent) => {
      if (event.dataTransfer.types.includes(TYPE)) event.preventDefault();
    },
    onDrop: (event: DragEvent) => {
      const given = event.dataTransfer.getData(TYPE);
      if (given === "") return;
      event.preventDefault();
      event.stopPropagation();
      moved(Number(given), { to, stage });
    },
  };
}

/** That a page is deleted, and what is lost with it. `book` is the one that still has it. */
export function deletedText(book: Book, index: number): string {
  const users = usersOfPage(book, index);
  const { title } = book.pages[index]!;
  const first = users[0];
  if (!first) return phrase`The page ${title} is deleted; Undo brings it back`;
  const others = users.length - 1;
  const cell = fullAddress(book, first);
  return others === 0
    ? phrase`The page ${title} is deleted, and ${cell}, which used it, now shows an error; Undo brings it back`
    : phrase`The page ${title} is deleted, and ${cell} and ${plural(others, "# more cell", "# more cells")}, which used it, now show an error; Undo brings it back`;
}
