/** The ready books: every file in templates/, in the format that a person saves. */
import { phrase } from "../../../functions/phrase.ts";
import { type Reading, readBook } from "../../book/read.ts";
import { reasonOf } from "../faults/in-time.ts";

const files = import.meta.glob("../../../templates/*.json", { query: "?raw", import: "default" });

/** The one a first start opens. */
const FIRST = "peplum-bodice";

/** The books that stand first where all are listed: one garment, then a whole cast; the others follow by name. */
const LEADING = [FIRST, "whole-cast"];

const nameOf = (path: string): string =>
  path
    .split("/")
    .at(-1)!
    .replace(/\.json$/, "");

/** A ready book by the name of its file. */
export async function readyBook(name: string): Promise<Reading> {
  const found = Object.entries(files).find(([path]) => nameOf(path) === name);
  if (!found) return { reason: phrase`there is no ready book called ${name}` };
  try {
    return readBook(await found[1]());
  } catch (fault) {
    return { reason: phrase`this ready book could not be loaded (${reasonOf(fault)}); reload the page` };
  }
}

export const firstBook = (): Promise<Reading> => readyBook(FIRST);

/** All ready books, in the order in which they are listed, with the names of their files. */
export async function readyBooks(): Promise<{ name: string; reading: Reading }[]> {
  const others = Object.keys(files)
    .map(nameOf)
    .filter((name) => !LEADING.includes(name));
  const names = [...LEADING, ...others.sort()];
  return Promise.all(names.map(async (name) => ({ name, reading: await readyBook(name) })));
}
