/** The name of the selected cell or block, to be given, changed or taken away. */

import { type KeyboardEvent, useId, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Block, Place } from "../../book/address.ts";
import { blockOf, blockText, everyName, isCell, nameAt } from "../../book/names.ts";
import type { Book } from "../../book/shape.ts";
import { isIn } from "../../engine/references.ts";
import { nameList } from "../../store/names.ts";
import type { Store } from "../../store/store.ts";
import { sessionOf } from "./edit-session.ts";

/** What is to be named: the selected block when the place lies in it, else the place. */
export function blockToName(selected: Block | null, place: Place): Block {
  return selected && isIn(selected, place) ? selected : blockOf(place);
}

/** What there is to say of a block's names: that its own belongs to a page alone, or which lists it lies in. */
function aboutNames(book: Book, block: Block): string {
  const own = nameAt(book, block);
  if (own) return own.of === null ? "" : phrase`on ${book.pages[own.of]!.title} alone`;
  const corner = { page: block.page, row: block.top, column: block.left };
  const far = { page: block.page, row: block.bottom, column: block.right };
  const lists = everyName(book).filter(
    (one) => !isCell(one.block) && isIn(one.block, corner) && isIn(one.block, far),
  );
  return lists.length === 0 ? "" : phrase`in ${lists.map(({ name }) => name).join(", ")}`;
}

export function NameField({ store, place }: { readonly store: Store; readonly place: Place }) {
  const session = sessionOf(store);
  const [block] = useState(() => blockToName(session.selected, place));
  const kept = nameAt(store.shown, block)?.name ?? "";
  const [text, setText] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const about = aboutNames(store.shown, block);
  const cells = isCell(block) ? "" : blockText(block);

  const keep = (): boolean => {
    if (text === null || text.trim() === kept) {
      setText(null);
      setRefusal(null);
      return true;
    }
    const sentence = store.run(nameList(block, text.trim()));
    setRefusal(sentence);
    if (sentence === null) setText(null);
    return sentence === null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === "Enter") {
      event.preventDefault();
      if (keep()) session.grid?.take(place);
    } else if (event.key === "Escape") {
      event.preventDefault();
      setText(null);
      setRefusal(null);
      session.grid?.take(place);
    }
  };
  return (
    <span className="name-field">
      {about && (
        <span className="name-about" id={`${id}-about`}>
          {about}
        </span>
      )}
      <input
        dir="auto"
        aria-label={cells ? phrase`Name of the cells ${cells}` : phrase`Name of the cell`}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? (about ? `${id}-about` : undefined) : id}
        placeholder={cells ? phrase`no name for ${cells}` : phrase`no name`}
        spellCheck={false}
        value={text ?? kept}
        onFocus={() => session.grid?.leave()}
        onChange={(event) => setText(event.target.value)}
        onBlur={keep}
        onKeyDown={onKeyDown}
      />
      {refusal !== null && (
        <span className="name-refusal" id={id} role="alert">
          {refusal}
        </span>
      )}
    </span>
  );
}
