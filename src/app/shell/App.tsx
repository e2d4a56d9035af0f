/** The whole page, made anew for each book that is opened. */

import { useSyncExternalStore } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { Guard } from "../faults/Guard.tsx";
import type { Start } from "../files/start.ts";
import { OpenBook } from "./OpenBook.tsx";

export function App({ store, keeper }: Start) {
  const keeping = useSyncExternalStore(keeper.subscribe, () => keeper.state);
  return (
    <Guard name={phrase`The page`} of={keeping.opening} ways={<Ways keeper={keeper} />}>
      <OpenBook key={keeping.opening} store={store} keeper={keeper} keeping={keeping} />
    </Guard>
  );
}

/** What can be done without the page. */
function Ways({ keeper }: Pick<Start, "keeper">) {
  return (
    <>
      <button type="button" onClick={() => keeper.saveCopy()}>{phrase`Save the book to a file`}</button>
      <button type="button" onClick={() => location.reload()}>{phrase`Reload the page`}</button>
    </>
  );
}
