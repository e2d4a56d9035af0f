/** A command line without a machine: files in memory, what is printed kept. */

import type { Book } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { main } from "../../../src/command/main.ts";
import { type Io, Wrong } from "../../../src/command/verb.ts";

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  /** What was written, by the file's name. */
  readonly files: Readonly<Record<string, string>>;
}

/** Runs one command on a book called book.json. */
export const run = (book: Book, ...args: readonly string[]): Promise<Ran> => runOn(writeBook(book), ...args);

/** Runs one command where book.json holds this text; standard input is empty. */
export async function runOn(text: string, ...args: readonly string[]): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const files: Record<string, string> = {};
  const io: Io = {
    read(path) {
      if (path === "-") return "";
      if (path === "other.json") return text.replace('"depth","30 in"', '"depth","31 in"');
      if (path !== "book.json") throw new Wrong(`${path}: there is no such file`);
      return text;
    },
    bytes: (path) => new TextEncoder().encode(io.read(path)),
    write(path, content) {
      files[path] = String(content);
    },
    out: (line) => out.push(line),
    pass: (content) => out.push(content),
    err: (line) => err.push(line),
  };
  const status = await main(args, io);
  return { status, out: out.join("\n"), err: err.join("\n"), files };
}
