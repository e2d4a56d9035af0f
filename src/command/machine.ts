/** The machine's files and standard streams; each refusal of the machine is given in a sentence. */

import { mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { phrase } from "../../functions/phrase.ts";
import { type Io, Wrong } from "./verb.ts";

/** What a file is called in a sentence. */
export const fileName = (path: string): string => (path === "-" ? phrase`standard input` : path);

const UNREAD: Record<string, string> = {
  ENOENT: phrase`there is no such file; check its name and folder`,
  EISDIR: phrase`it is a folder; give the file in it`,
  ENOTDIR: phrase`a part of it is taken for a folder and is a file`,
  EACCES: phrase`you may not read it; change its rights, or copy it to a folder of yours`,
  ENAMETOOLONG: phrase`the name is too long for a file`,
};

const UNWRITTEN: Record<string, string> = {
  ENOENT: phrase`its folder can't be made; choose another`,
  EISDIR: phrase`a folder has that name; choose another name`,
  EEXIST: phrase`a file stands where its folder should be; choose another folder`,
  ENOTDIR: phrase`a file stands where its folder should be; choose another folder`,
  EACCES: phrase`you may not write there; choose another folder`,
  EPERM: phrase`you may not write there; choose another folder`,
  EROFS: phrase`nothing can be written there; choose another folder`,
  ENOSPC: phrase`the disk is full; make room, or choose another disk`,
  ENAMETOOLONG: phrase`the name is too long for a file; choose a shorter one`,
};

const codeOf = (reason: unknown): string =>
  (reason as NodeJS.ErrnoException).code ?? phrase`for no known reason`;

/** What a failing output says: null when the reader went away, as `head` does. */
export const outputFault = (reason: unknown): string | null =>
  codeOf(reason) === "EPIPE"
    ? null
    : phrase`the answer can't be written: ${UNWRITTEN[codeOf(reason)] ?? codeOf(reason)}`;

/**
 * Makes a folder and those it lies in. They are made one by one, because making them all at once never
 * ends in a place such as /proc, where a folder can't be made and is reported as missing.
 */
function makeFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = dirname(path);
  if (above !== path) makeFolder(above);
  mkdirSync(path);
}

/** What a cell holds may be printed, but a terminal must not act on it: control characters are replaced, line ends kept. */
export const harmless = (text: string): string => text.replace(/(?!\t|\r?\n)\p{Cc}/gu, "\ufffd");

export const machine: Io = {
  read(path) {
    try {
      return readFileSync(path === "-" ? 0 : path, "utf8");
    } catch (reason) {
      throw new Wrong(
        `${fileName(path)}: ${UNREAD[codeOf(reason)] ?? phrase`it can't be read (${codeOf(reason)})`}`,
      );
    }
  },
  bytes(path, most) {
    const from = path === "-" ? 0 : path;
    try {
      const size = from === 0 ? 0 : statSync(from).size;
      if (size > most)
        throw new Wrong(
          phrase`${fileName(path)}: it has ${Math.round(size / 1e6)} MB, and the most is ${most / 1e6} MB; cut it into parts`,
        );
      return readFileSync(from);
    } catch (reason) {
      if (reason instanceof Wrong) throw reason;
      throw new Wrong(
        `${fileName(path)}: ${UNREAD[codeOf(reason)] ?? phrase`it can't be read (${codeOf(reason)})`}`,
      );
    }
  },
  write(path, content) {
    try {
      makeFolder(dirname(path));
      writeFileSync(path, content);
    } catch (reason) {
      const code = codeOf(reason);
      throw new Wrong(phrase`${path} can't be written: ${UNWRITTEN[code] ?? code}`);
    }
  },
  out: (text) => process.stdout.write(`${harmless(text)}\n`),
  // A file or another program gets every character as it is; a table's lines end with a carriage return.
  pass: (content) => process.stdout.write(process.stdout.isTTY ? harmless(content) : content),
  err: (text) => process.stderr.write(`${harmless(text)}\n`),
};
