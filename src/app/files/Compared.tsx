/** A kept book beside the open one: what differs, where, and which answers came out otherwise. */
import { useEffect, useState } from "react";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import {
  type AnswerDifference,
  type BookDifferences,
  bookDifferences,
} from "../../engine/book-differences.ts";
import { layDesk } from "../../lay/desk.ts";
import { reasonOf } from "../faults/in-time.ts";
import type { Library } from "./library.ts";

interface Props {
  readonly id: string;
  readonly library: Library;
  /** The open book. */
  readonly open: Book;
}

/** So many lines of each list are shown; the rest is counted. */
const LISTED = 200;

export function Compared({ id, library, open }: Props) {
  const [found, setFound] = useState<BookDifferences | string | null>(null);
  useEffect(() => {
    let gone = false;
    const compare = async () => {
      const reading = readBook(await library.text(id));
      const next = "reason" in reading ? reading.reason : bookDifferences(reading.book, open, layDesk);
      if (!gone) setFound(next);
    };
    compare().catch((fault) => setFound(reasonOf(fault)));
    return () => {
      gone = true;
    };
  }, [id, library, open]);

  if (found === null) return <p role="status">Comparing …</p>;
  if (typeof found === "string") return <p className="look">These books can't be compared: {found}</p>;
  const { changes, answers } = found;
  if (changes.length + answers.length === 0)
    return <p role="status">This book and the open one are the same.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and the keyboard has to reach it
    <section className="compared" aria-label="Differences" tabIndex={0}>
      <Differences title="What is otherwise" list={changes} />
      <Differences title="What came of it" list={answers} />
    </section>
  );
}

function Differences({ title, list }: { title: string; list: readonly AnswerDifference[] }) {
  if (list.length === 0) return null;
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">This book</th>
          <th scope="col">The open book</th>
        </tr>
      </thead>
      <tbody>
        {list.slice(0, LISTED).map(({ where, label, before, after }) => (
          <tr key={`${where} ${label} ${before} ${after}`}>
            <th scope="row">{label ? `${label} (${where})` : where}</th>
            <td>{before || "none"}</td>
            <td>{after || "none"}</td>
          </tr>
        ))}
      </tbody>
      {list.length > LISTED && (
        <tfoot>
          <tr>
            <td colSpan={3}>and {list.length - LISTED} more</td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}
