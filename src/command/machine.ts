/** The machine's files and standard streams; each refusal of the machine is given in a sentence. */
import { mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { type Io, Wrong } from "./verb.ts";

/** What a file is called in a sentence. */
export const fileName = (path: string): string => (path === "-" ? "standard input" : path);

const UNREAD: Record<string, string> = {
  ENOENT: "there is no such file; check its name and folder",
  EISDIR: "it is a folder; give the file in it",
  ENOTDIR: "a part of it is taken for a folder and is a file",
  EACCES: "you may not read it; change its rights, or copy it to a folder of yours",
  ENAMETOOLONG: "the name is too long for a file",
};

const UNWRITTEN: Record<string, string> = {
  ENOENT: "its folder can't be made; choose another",
  EISDIR: "a folder has that name; choose another name",
  EEXIST: "a file stands where its folder should be; choose another folder",
  ENOTDIR: "a file stands where its folder should be; choose another folder",
  EACCES: "you may not write there; choose another folder",
  EPERM: "you may not write there; choose another folder",
  EROFS: "nothing can be written there; choose another folder",
  ENOSPC: "the disk is full; make room, or choose another disk",
  ENAMETOOLONG: "the name is too long for a file; choose a shorter one",
};

const codeOf = (reason: unknown): string => (reason as NodeJS.ErrnoException).code ?? "for no known reason";

/** What a failing output says: null when the reader went away, as `head` does. */
export const outputFault = (reason: unknown): string | null =>
  codeOf(reason) === "EPIPE"
    ? null
    : `the answer can't be written: ${UNWRITTEN[codeOf(reason)] ?? codeOf(reason)}`;

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
        `${fileName(path)}: ${UNREAD[codeOf(reason)] ?? `it can't be read (${codeOf(reason)})`}`,
      );
    }
  },
  bytes(path, most) {
    const from = path === "-" ? 0 : path;
    try {
      const size = from === 0 ? 0 : statSync(from).size;
      if (size > most)
        throw new Wrong(
          `${fileName(path)}: it has ${Math.round(size / 1e6)} MB, and the most is ${most / 1e6} MB; cut it into parts`,
        );
      return readFileSync(from);
    } catch (reason) {
      if (reason instanceof Wrong) throw reason;
      throw new Wrong(
        `${fileName(path)}: ${UNREAD[codeOf(reason)] ?? `it can't be read (${codeOf(reason)})`}`,
      );
    }
  },
  write(path, content) {
    try {
      makeFolder(dirname(path));
      writeFileSync(path, content);
    } catch (reason) {
      const code = codeOf(reason);
      throw new Wrong(`${path} can't be written: ${UNWRITTEN[code] ?? code}`);
    }
  },
  out: (text) => process.stdout.write(`${harmless(text)}\n`),
  // A file or another program gets every character as it is; a table's lines end with a carriage return.
  pass: (content) => process.stdout.write(process.stdout.isTTY ? harmless(content) : content),
  err: (text) => process.stderr.write(`${harmless(text)}\n`),
};
