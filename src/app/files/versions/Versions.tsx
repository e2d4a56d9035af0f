/** The earlier versions of one book, the newest first: each with its time, what was done next and what has changed since. */
import { phrase } from "../../../../functions/phrase.ts";
import "./versions.css";
import { useEffect, useState } from "react";
import type { Place } from "../../../book/address.ts";
import { type Reading, readBook } from "../../../book/read.ts";
import type { Book } from "../../../book/shape.ts";
import { reasonOf } from "../../faults/in-time.ts";
import { Compared } from "../Compared.tsx";
import { whenText } from "../when.ts";
import { changedSince } from "./changed-since.ts";
import { RULE, type Version } from "./rule.ts";
import { VersionActs } from "./VersionActs.tsx";
import { VersionPages } from "./VersionPages.tsx";
import { textOf, versionsOf } from "./version-shelf.ts";

interface Props {
  /** The id of the book. */
  readonly book: string;
  /** The book as it is now. */
  readonly present: () => Promise<Reading>;
  /** Whether the book opens, so that a version can be brought back into it. */
  readonly canReplace: boolean;
  /** Leads to a cell of the open book; null where the versions are of another book. */
  readonly onPlace: ((place: Place) => void) | null;
  readonly onBringBack: (version: Version) => void;
  readonly onOpen: (version: Version) => void;
}

const read = async (version: Version): Promise<Reading> => readBook(await textOf(version));

export function Versions({ book, present, canReplace, onPlace, onBringBack, onOpen }: Props) {
  const [list, setList] = useState<readonly Version[] | null>(null);
  const [now, setNow] = useState<Book | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  /** What is shown of which version. */
  const [shown, setShown] = useState<{ key: string; what: "pages" | "compared" } | null>(null);
  const refresh = () => versionsOf(book).then(setList);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each opening of the list
  useEffect(() => {
    refresh().catch((fault) => setRefusal(phrase`The versions can't be read: ${reasonOf(fault)}.`));
    present()
      .then((one) => setNow("reason" in one ? null : one.book))
      .catch(() => {});
  }, [book]);
  const changes = useChanges(list, now);
  const show = (key: string, what: "pages" | "compared") =>
    setShown(shown?.key === key && shown.what === what ? null : { key, what });

  return (
    <section className="versions" aria-label={phrase`Earlier versions`}>
      <div role="alert">{refusal && <p className="look">{refusal}</p>}</div>
      {list?.length === 0 && (
        <p className="empty">{phrase`No version is kept yet: the first is kept before your next change.`}</p>
      )}
      <ul>
        {list?.map((version) => {
          const { key, name, at } = version;
          const when = whenText(at);
          return (
            <li key={key} className="version">
              <div className="version-about">
                <b dir="auto">{name ?? when}</b>
                <small>{aboutVersion(version, when, changes.get(key))}</small>
              </div>
              <VersionActs
                version={version}
                title={name ?? when}
                shown={shown?.key === key ? shown.what : null}
                onShow={(what) => show(key, what)}
                canReplace={canReplace}
                canCompare={now !== null}
                onBringBack={() => onBringBack(version)}
                onOpen={() => onOpen(version)}
                onChanged={(fault) => {
                  setRefusal(fault);
                  refresh().catch(() => {});
                }}
              />
              {shown?.key === key && shown.what === "pages" && <VersionPages read={() => read(version)} />}
              {shown?.key === key && shown.what === "compared" && now && (
                <Compared
                  read={() => read(version)}
                  other={phrase`The version of ${when}`}
                  open={now}
                  openAs={onPlace ? phrase`The open book` : phrase`This book now`}
                  onPlace={onPlace}
                />
              )}
            </li>
          );
        })}
      </ul>
      <p className="aside">{RULE}</p>
    </section>
  );
}

/** What has changed since each version, in words; they are read one after another, the newest first. */
function useChanges(list: readonly Version[] | null, now: Book | null): ReadonlyMap<string, string> {
  const [changes, setChanges] = useState<ReadonlyMap<string, string>>(new Map());
  useEffect(() => {
    if (!list || !now) return;
    let gone = false;
    const count = async () => {
      for (const version of list) {
        if (gone) return;
        const given = await read(version).catch(reasonOf);
        const words =
          typeof given === "string" || "reason" in given
            ? phrase`unknown, because it can't be read`
            : changedSince(given.book, now);
        if (!gone) setChanges((before) => new Map([...before, [version.key, words]]));
        // The page goes on working between two versions.
        await new Promise((done) => setTimeout(done));
      }
    };
    void count();
    return () => {
      gone = true;
    };
  }, [list, now]);
  return changes;
}

/** When a version was kept, before which change, and what has changed since then. */
function aboutVersion({ name, before }: Version, when: string, changes: string | undefined): string {
  if (name)
    return changes === undefined
      ? phrase`${when}, before: ${before}`
      : phrase`${when}, before: ${before}; changed since then: ${changes}`;
  return changes === undefined
    ? phrase`before: ${before}`
    : phrase`before: ${before}; changed since then: ${changes}`;
}
