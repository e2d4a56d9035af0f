/**
 * The database of earlier versions. It is one of its own: the books are kept without it, and it can
 * be emptied to make room for them.
 */

import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { phrase } from "../../../../functions/phrase.ts";
import { inTime } from "../../faults/in-time.ts";
import { type Packed, pack, unpack } from "./packing.ts";
import { aboveLimit, firstToGo, givenUp, namingFault, type Version } from "./rule.ts";

interface Versions extends DBSchema {
  versions: { key: string; value: Version; indexes: { book: string } };
  texts: { key: string; value: Packed & { readonly key: string } };
}

const ANSWERING = 10_000;

let opening: Promise<IDBPDatabase<Versions>> | null = null;

function database(): Promise<IDBPDatabase<Versions>> {
  opening ??= inTime(
    openDB<Versions>("ellwand-versions", 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("versions", { keyPath: "key" }).createIndex("book", "book");
        fresh.createObjectStore("texts", { keyPath: "key" });
      },
      // A newer Ellwand in another tab goes on with it.
      blocking: (_now, _next, event) => {
        (event.target as IDBDatabase).close();
        opening = null;
      },
      terminated: () => {
        opening = null;
      },
    }),
    ANSWERING,
  ).catch((fault) => {
    opening = null;
    throw fault;
  });
  return opening;
}

/** The versions of a book, the newest first. */
export async function versionsOf(book: string): Promise<Version[]> {
  const list = await inTime((await database()).getAllFromIndex("versions", "book", book), ANSWERING);
  return list.sort((a, b) => b.at - a.at);
}

/** The text of a version, letter for letter. */
export async function textOf({ key }: Version): Promise<string> {
  const found = await inTime((await database()).get("texts", key), ANSWERING);
  if (!found) throw new Error(phrase`this version is no longer in this browser`);
  return unpack(found);
}

async function drop(gone: readonly Version[]): Promise<void> {
  if (gone.length === 0) return;
  const tx = (await database()).transaction(["versions", "texts"], "readwrite");
  for (const { key } of gone) {
    tx.objectStore("versions").delete(key);
    tx.objectStore("texts").delete(key);
  }
  await tx.done;
}

/**
 * Keeps a text as a version of a book, unless the newest version is the same text; deletes the versions
 * that the rule no longer keeps.
 */
export async function keepVersion(
  book: string,
  text: string,
  before: string,
  at = Date.now(),
): Promise<void> {
  const [newest] = await versionsOf(book);
  if (newest && (await textOf(newest).catch(() => null)) === text) return;
  const packed = await pack(text);
  const key = `${book}.${at}.${Math.random().toString(36).slice(2, 8)}`;
  const tx = (await database()).transaction(["versions", "texts"], "readwrite");
  const version: Version = { key, book, at, before, bytes: packed.bytes.byteLength };
  await Promise.all([
    tx.objectStore("versions").put(version),
    tx.objectStore("texts").put({ key, ...packed }),
    tx.done,
  ]);
  await drop(givenUp(await versionsOf(book), at));
  await drop(aboveLimit(await (await database()).getAll("versions")));
}

/** Gives a version a name, or with "" takes its name away. Returns null, or the reason why it can't have that name. */
export async function nameVersion(version: Version, name: string): Promise<string | null> {
  const fault = name === "" ? null : namingFault(await versionsOf(version.book), version);
  if (fault) return fault;
  const { name: _, ...plain } = version;
  await (await database()).put("versions", name === "" ? plain : { ...plain, name });
  return null;
}

export const deleteVersion = (version: Version): Promise<void> => drop([version]);

export async function deleteVersionsOf(book: string): Promise<void> {
  await drop(await versionsOf(book));
}

/** The share of all versions that goes at once when the browser's storage is full. */
const SHARE = 0.25;

/** Deletes the oldest versions of all books, those with a name last; returns how many were deleted, 0 when no version is left. */
export async function makeRoom(): Promise<number> {
  const list = firstToGo(await (await database()).getAll("versions"));
  const gone = list.slice(0, Math.ceil(list.length * SHARE));
  await drop(gone);
  return gone.length;
}
