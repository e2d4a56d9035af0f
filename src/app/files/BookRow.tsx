/** One kept book in the list: opened with a press, or, when it does not open, why and what can be done. */

import { Suspense, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { Guard } from "../faults/Guard.tsx";
import { reasonOf } from "../faults/in-time.ts";
import { lazily } from "../faults/lazily.tsx";
import { handOn } from "../keyboard.ts";
import { Compared } from "./Compared.tsx";
import { copyText } from "./copies.ts";
import { fileName, saveText } from "./disk.ts";
import { type Library, type Listed, titled } from "./library.ts";
import type { BookRecord } from "./shelf.ts";
import { latestText } from "./unkept.ts";
import type { Version } from "./versions/rule.ts";

interface Props {
  readonly record: BookRecord;
  readonly library: Library;
  /** The open book, to compare with. */
  readonly open: Book;
  readonly isOpen: boolean;
  /** Leads to a cell of the open book. */
  readonly onPlace: (place: Place) => void;
  readonly onOpen: () => void;
  readonly onEarlier: () => void;
  readonly onCopy: (title: string) => void;
  readonly onNextVersion: () => void;
  readonly onThrowAway: () => void;
  readonly onBringBack: (version: Version) => void;
  readonly onOpenVersion: (version: Version) => void;
}

const Versions = lazily(async () => (await import("./versions/Versions.tsx")).Versions);

export function BookRow(props: Props) {
  const { record, library, open, isOpen, onPlace, onOpen, onEarlier, onCopy, onThrowAway } = props;
  const [listed, setListed] = useState<Listed | null>(null);
  const [compares, setCompares] = useState(false);
  const [lists, setLists] = useState(false);
  const [saved, setSaved] = useState<string | null>(null);
  const [copying, setCopying] = useState(false);
  useEffect(() => {
    let gone = false;
    library.look(record).then((found) => {
      if (!gone) setListed(found);
    });
    return () => {
      gone = true;
    };
  }, [library, record]);

  const { title, changed, copied, revision } = record;
  const when = new Date(changed).toLocaleString();
  const about = (
    <>
      <b dir="auto">{title}</b>
      <small>
        {isOpen ? phrase`open now, changed ${when}` : phrase`changed ${when}`};{" "}
        {copyText({ copied: copied ? { ...copied, changed: copied.revision !== revision } : null })}
      </small>
    </>
  );
  const fault = isOpen ? null : (listed?.fault ?? null);
  const saveAsItIs = async () => {
    try {
      setSaved(phrase`Saved as ${saveText((await library.kept(record.id)).text, fileName(title))}`);
    } catch (failed) {
      setSaved(phrase`Not saved: ${reasonOf(failed)}`);
    }
  };
  return (
    <li className="book">
      {fault === null ? (
        <button type="button" className="book-open" onClick={onOpen}>
          {about}
        </button>
      ) : (
        <div className="book-open book-closed">
          {about}
          <p className="look">{phrase`This book does not open: ${fault}. Its saved text is unchanged.`}</p>
          <p className="book-ways">
            <button type="button" onClick={saveAsItIs}>{phrase`Save its text to a file`}</button>
            {listed?.earlier && (
              <button type="button" onClick={onEarlier}>{phrase`Open its earlier state`}</button>
            )}
            <button type="button" onClick={onOpen}>{phrase`Try to open it`}</button>
            <span role="status">{saved}</span>
          </p>
        </div>
      )}
      {fault === null && (
        <button
          type="button"
          className="quiet"
          aria-expanded={compares}
          onClick={() => setCompares(!compares)}
        >
          {isOpen ? phrase`What has changed` : phrase`Compare`}
          <span className="unseen">
            {isOpen ? phrase` in ${title} since it was opened` : phrase` ${title} with the open book`}
          </span>
        </button>
      )}
      {fault === null && !copying && (
        <button type="button" className="quiet" onClick={() => setCopying(true)}>
          {phrase`Copy …`}
          <span className="unseen"> {title}</span>
        </button>
      )}
      {copying && (
        <CopyForm
          title={titled(title, "copy")}
          onTitle={(own) => {
            handOn("dialog");
            setCopying(false);
            if (own !== null) onCopy(own);
          }}
        />
      )}
      {isOpen && library.shelf && (
        <button type="button" className="quiet" onClick={props.onNextVersion}>
          {phrase`Begin the next version`}
          <span className="unseen">{phrase` of ${title}`}</span>
        </button>
      )}
      {library.shelf && (
        <button type="button" className="quiet" aria-expanded={lists} onClick={() => setLists(!lists)}>
          {phrase`Earlier versions`}
          <span className="unseen">{phrase` of ${title}`}</span>
        </button>
      )}
      <button type="button" className="quiet" onClick={onThrowAway}>
        {phrase`Move to bin`}
        <span className="unseen"> {title}</span>
      </button>
      {lists && (
        <Guard name={phrase`The list of earlier versions`} onDone={() => setLists(false)}>
          <Suspense fallback={<p role="status">{phrase`Earlier versions are being read …`}</p>}>
            <Versions
              book={record.id}
              present={async () => (isOpen ? { book: open } : readBook(await latestText(library, record.id)))}
              canReplace={fault === null}
              onPlace={isOpen ? onPlace : null}
              onBringBack={props.onBringBack}
              onOpen={props.onOpenVersion}
            />
          </Suspense>
        </Guard>
      )}
      {compares && (
        <Compared
          read={async () =>
            readBook((await (isOpen ? library.earlier(record.id) : latestText(library, record.id))) ?? "")
          }
          other={isOpen ? phrase`When it was opened` : `“${title}”`}
          open={open}
          onPlace={onPlace}
        />
      )}
    </li>
  );
}

/** The title of a copy: Enter makes the copy, Escape makes none. */
function CopyForm({ title, onTitle }: { title: string; onTitle: (title: string | null) => void }) {
  const [text, setText] = useState(title);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  return (
    <form
      className="book-copy"
      onSubmit={(event) => {
        event.preventDefault();
        onTitle(text.trim());
      }}
    >
      <input
        ref={field}
        dir="auto"
        aria-label={phrase`Title of the copy`}
        maxLength={200}
        value={text}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => {
          if (event.key !== "Escape") return;
          event.preventDefault();
          onTitle(null);
        }}
      />
      <button type="submit">{phrase`Make the copy`}</button>
      <button type="button" className="quiet" onClick={() => onTitle(null)}>{phrase`Cancel`}</button>
    </form>
  );
}
