/** Under the grid after a doubtful paste: how the clipboard was understood, and the other way to take it. */

import { useSyncExternalStore } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";
import type { EditSession } from "./edit-session.ts";

export function PasteNotice({ session }: { session: EditSession }) {
  useSyncExternalStore(session.subscribe, session.version);
  useSyncExternalStore(session.store.subscribe, () => session.store.revision);
  const { pasted } = session;
  // Anything else done to the book since then, and the other reading can't be put in its place.
  if (!pasted || pasted.book !== session.store.book) return null;
  return (
    <p className="grid-hidden" role="status">
      <span>{phrase`Pasted: ${pasted.doubt}.`}</span>
      {pasted.other && (
        <button
          type="button"
          onClick={() => {
            handOn(".grid-hidden", () => session.takeBack());
            session.store.undo();
            pasted.other?.paste();
          }}
        >
          {pasted.other.label}
        </button>
      )}
      <button
        type="button"
        onClick={() => {
          handOn(".grid-hidden", () => session.takeBack());
          session.pasted = null;
        }}
      >{phrase`Close`}</button>
    </p>
  );
}
