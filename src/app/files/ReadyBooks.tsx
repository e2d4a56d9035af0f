/** The ready books, each to begin with. */

import { useEffect, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { UNIT_WORDS } from "../../book/unit-words.ts";
import { withLocalDecimal } from "./new-book.ts";
import { readyBooks } from "./ready.ts";

type Ready = Awaited<ReturnType<typeof readyBooks>>;

export function ReadyBooks({ onOpen }: { onOpen: (book: Book) => void }) {
  const [ready, setReady] = useState<Ready>([]);
  useEffect(() => {
    let gone = false;
    readyBooks().then((found) => {
      if (!gone) setReady(found);
    });
    return () => {
      gone = true;
    };
  }, []);
  return (
    <section className="books" aria-labelledby="books-ready">
      <h3 id="books-ready">{phrase`Begin with a ready book`}</h3>
      <ul>
        {ready.map(({ name, reading }) => (
          <li key={name} className="book">
            {"book" in reading ? (
              <button
                type="button"
                className="book-open"
                onClick={() => onOpen(withLocalDecimal(reading.book))}
              >
                <b>{reading.book.title}</b>
                <small>{phrase`${reading.book.about} In ${UNIT_WORDS[reading.book.unit]}.`}</small>
              </button>
            ) : (
              <p className="look">
                {name}: {reading.reason}
              </p>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
