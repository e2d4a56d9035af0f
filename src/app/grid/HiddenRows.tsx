/** Under the grid: which rows of the page are hidden, that they count, and the way to show them. */

import { useSyncExternalStore } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { hiddenRows } from "../../book/hidden-rows.ts";
import { MOST_ROWS } from "../../book/shape.ts";
import { showRows } from "../../store/arranging.ts";
import { handOn } from "../keyboard.ts";
import { hiddenText } from "./arrangement.ts";
import type { EditSession } from "./edit-session.ts";

interface Props {
  readonly session: EditSession;
  readonly page: number;
  /** The row of the chosen cell. */
  readonly row: number;
}

export function HiddenRows({ session, page, row }: Props) {
  const { store } = session;
  useSyncExternalStore(store.subscribe, () => store.revision);
  const shown = store.shown.pages[page];
  const text = shown ? hiddenText(shown) : "";
  if (!shown || text === "") return null;
  return (
    <p className="grid-hidden">
      <span>
        {text}
        {hiddenRows(shown).has(row) && phrase` The selected cell is in row ${row + 1}, which is hidden.`}
      </span>
      <button
        type="button"
        onClick={() => {
          handOn(".grid-hidden", () => session.takeBack());
          session.run(showRows(page, 0, MOST_ROWS), { page, row, column: 0 });
        }}
      >{phrase`Show all rows`}</button>
    </p>
  );
}
