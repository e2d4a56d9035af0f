/** Another book, or an earlier state, beside the open one: what differs, where, and which answers came out otherwise. */

import { useEffect, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { lookUp } from "../../book/names.ts";
import type { Reading } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import type { AnswerDifference, BookDifferences } from "../../engine/book-differences.ts";
import { reasonOf } from "../faults/in-time.ts";
import { handOn } from "../keyboard.ts";
import { Progress } from "../progress/Progress.tsx";

interface Props {
  /** Reads the other book; called once. */
  readonly read: () => Promise<Reading>;
  /** What the column of the other book is headed with: its title, or its file. */
  readonly other: string;
  /** The open book, or the other one that stands in its column. */
  readonly open: Book;
  /** What the column of `open` is headed with. */
  readonly openAs?: string;
  /** Leads to a cell of the open book; null where it leads nowhere. */
  readonly onPlace: ((place: Place) => void) | null;
}

/** Why there is no comparison, and whether it may come when it is asked for again. */
interface Failed {
  readonly why: string;
  readonly again: boolean;
}

/** Beside a comparison stands the button that moves a book to the bin: when its own button goes, the keyboard goes to Close. */
const toClose = (): void =>
  handOn(".compared", () => document.querySelector<HTMLElement>("dialog[open] .dialog-head button")?.focus());

/** At most this many lines of each list are shown; the rest is counted. */
const LISTED = 200;

export function Compared({ read, other, open, openAs = phrase`The open book`, onPlace }: Props) {
  const [found, setFound] = useState<BookDifferences | Failed | null>(null);
  const [reading] = useState(read);
  const [isStopped, setIsStopped] = useState(false);
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each round compares anew
  useEffect(() => {
    if (isStopped) return;
    const ending = new AbortController();
    const compare = async () => {
      const given = await reading;
      if ("reason" in given) return { why: given.reason, again: false };
      const { doBookWork } = await import("../../worker/book-work-client.ts");
      return doBookWork({ is: "compare", before: given.book, after: open }, ending.signal);
    };
    compare().then(
      (next) => !ending.signal.aborted && setFound(next),
      (fault) => !ending.signal.aborted && setFound({ why: reasonOf(fault), again: true }),
    );
    return () => ending.abort();
  }, [reading, open, isStopped, round]);

  if (isStopped)
    return (
      <p>
        {phrase`The comparison was stopped. `}
        <button
          type="button"
          onClick={() => {
            toClose();
            setFound(null);
            setIsStopped(false);
          }}
        >{phrase`Compare again`}</button>
      </p>
    );
  if (found === null)
    return (
      <p>
        <Progress
          what={phrase`Comparing`}
          onStop={() => setIsStopped(true)}
          onAgain={() => setRound(round + 1)}
        />
      </p>
    );
  if ("why" in found)
    return (
      <p className="look">
        {phrase`These books can't be compared: ${found.why}`}{" "}
        {found.again && (
          <button
            type="button"
            onClick={() => {
              toClose();
              setFound(null);
              setRound(round + 1);
            }}
          >{phrase`Compare again`}</button>
        )}
      </p>
    );
  const { changes, answers } = found;
  if (changes.length + answers.length === 0)
    return (
      <p role="status">
        {phrase`${other} and ${openAs.charAt(0).toLowerCase() + openAs.slice(1)} are the same.`}
      </p>
    );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and the keyboard has to reach it
    <section className="compared" aria-label={phrase`Differences`} tabIndex={0}>
      <Differences title={phrase`What differs`} list={changes} {...{ other, open, openAs, onPlace }} />
      <Differences title={phrase`What came of it`} list={answers} {...{ other, open, openAs, onPlace }} />
    </section>
  );
}

interface ListProps extends Omit<Required<Props>, "read"> {
  readonly title: string;
  readonly list: readonly AnswerDifference[];
}

function Differences({ title, list, other, open, openAs, onPlace }: ListProps) {
  if (list.length === 0) return null;
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">{phrase`Where`}</th>
          <th scope="col">{other}</th>
          <th scope="col">{openAs}</th>
        </tr>
      </thead>
      <tbody>
        {list.slice(0, LISTED).map(({ where, label, before, after }) => (
          <tr key={`${where} ${label} ${before} ${after}`}>
            <th scope="row">
              <Where {...{ label, where, onPlace }} place={after === "" ? null : lookUp(open, where)} />
            </th>
            <td>{before || phrase`none`}</td>
            <td>{after || phrase`none`}</td>
          </tr>
        ))}
      </tbody>
      {list.length > LISTED && (
        <tfoot>
          <tr>
            <td colSpan={3}>{phrase`and ${list.length - LISTED} more`}</td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

interface WhereProps {
  readonly label: string;
  readonly where: string;
  /** The cell in the open book; null when it has none. */
  readonly place: Place | null;
  readonly onPlace: Props["onPlace"];
}

function Where({ label, where, place, onPlace }: WhereProps) {
  const text = label ? `${label} (${where})` : where;
  if (!place || !onPlace) return text;
  return (
    <button type="button" className="link" onClick={() => onPlace(place)}>
      {text}
    </button>
  );
}
