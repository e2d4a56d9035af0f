/** Help: the page, the built-in functions and the sewing functions, found by what a maker wants to do. */
import { phrase } from "../../../functions/phrase.ts";
import "./help.css";
import { useDeferredValue, useEffect, useRef, useState } from "react";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { BuiltInHelp } from "./BuiltInHelp.tsx";
import { ENTRIES, type Entry, entryOf } from "./entries.ts";
import { FirstPage } from "./FirstPage.tsx";
import { FunctionHelp } from "./FunctionHelp.tsx";
import { Finder } from "./find.ts";
import { TopicHelp } from "./TopicHelp.tsx";

const finder = new Finder(ENTRIES);
const FUNCTIONS = ENTRIES.filter((entry) => entry.is !== "topic");

interface Props {
  readonly store: Store;
  /** The name of the entry to begin with, such as the function that is being typed. */
  readonly about: string | null;
  readonly onDone: () => void;
}

export function Help({ store, about, onDone }: Props) {
  const [question, setQuestion] = useState("");
  const [chosen, setChosen] = useState<Entry | null>((about !== null && entryOf(about)) || null);
  const field = useRef<HTMLInputElement>(null);
  const text = useRef<HTMLElement>(null);
  useEffect(() => field.current?.focus(), []);
  const asked = useDeferredValue(question);
  // The first page lists the topics, so the list beside it needs only the functions.
  const found = asked.trim() === "" ? FUNCTIONS : finder.find(asked);
  const shown = chosen ?? (asked.trim() === "" ? null : (found[0] ?? null));
  const go = (entry: Entry | null) => {
    setChosen(entry);
    text.current?.scrollTo(0, 0);
  };
  /** Goes to an entry that the text names; its button is gone by then, so the text takes the keyboard. */
  const follow = (name: string) => {
    go(entryOf(name) ?? null);
    text.current?.focus();
  };
  return (
    <Dialog title={phrase`Help`} wide onDone={onDone}>
      <div className="help">
        <div className="help-find">
          <label htmlFor="help-question">{phrase`What do you want to do?`}</label>
          <input
            ref={field}
            id="help-question"
            type="search"
            placeholder={phrase`print, or how much to cut for a ruffle`}
            value={question}
            onChange={(event) => {
              setQuestion(event.target.value);
              go(null);
            }}
          />
          <p role="status" className="aside">
            {asked.trim() === ""
              ? phrase`${FUNCTIONS.length} functions`
              : found.length === 0
                ? phrase`Nothing matches these words; try others.`
                : phrase`${found.length} of ${ENTRIES.length} pages`}
          </p>
          <ul className="help-list">
            {found.map((entry) => (
              <li key={entry.name}>
                <button
                  type="button"
                  className={`help-one help-${entry.is}`}
                  aria-current={entry === shown}
                  onClick={() => go(entry)}
                >
                  <b>{entry.name}</b>
                  <small>{plain(entry.summary)}</small>
                </button>
              </li>
            ))}
          </ul>
        </div>
        <section
          ref={text}
          className="help-text"
          aria-label={shown ? phrase`Help for ${shown.name}` : phrase`First page of the help`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
          tabIndex={0}
        >
          {shown && (
            <button
              type="button"
              className="link help-back"
              onClick={() => {
                setQuestion("");
                go(null);
                field.current?.focus();
              }}
            >{phrase`First page`}</button>
          )}
          {shown === null && <FirstPage onGo={follow} />}
          {shown?.is === "topic" && <TopicHelp topic={shown.topic} onGo={follow} />}
          {shown?.is === "built-in" && <BuiltInHelp builtIn={shown.builtIn} />}
          {shown?.is === "function" && <FunctionHelp declaration={shown.declaration} rule={store.shown} />}
        </section>
      </div>
    </Dialog>
  );
}

/** A summary without the marks of labels and code. */
const plain = (summary: string): string => summary.replace(/\*([^*`]+)\*|`([^`]+)`/g, "$1$2");
