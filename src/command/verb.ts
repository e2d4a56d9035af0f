import { phrase } from "../../functions/phrase.ts";
/** What a verb of the command line is. Each lives in a file of its own in this folder. */
export interface Io {
  /** Text of a file, or of standard input for "-". Throws `Wrong` with a sentence when it can't be read. */
  read(path: string): string;
  /** The bytes of a file of at most `most` bytes, or of standard input for "-". Throws `Wrong` as `read` does. */
  bytes(path: string, most: number): Uint8Array;
  /** Writes a file, making its folder when it does not exist. */
  write(path: string, content: string | Uint8Array): void;
  /** Prints to standard output, a line break added. */
  out(text: string): void;
  /** Hands a document to standard output unchanged, for another program to read. */
  pass(content: string): void;
  /** Prints to standard error, a line break added. */
  err(text: string): void;
}

/** An option: how it is read, the word for its value, and what it does, in a line. */
export interface VerbOption {
  readonly type: "string" | "boolean";
  readonly multiple?: boolean;
  readonly default?: string;
  readonly value?: string;
  readonly about: string;
}

export type VerbOptions = Readonly<Record<string, VerbOption>>;

/** Options that several verbs share. */
export const SET_OPTION = {
  set: {
    type: "string",
    multiple: true,
    value: "NAME=VALUE",
    about: phrase`types VALUE into the cell NAME first; may be repeated; the file stays as it is`,
  },
} as const satisfies VerbOptions;
export const JSON_OPTION = {
  json: { type: "boolean", about: phrase`prints JSON; an error is {"error": "sentence"}` },
} as const satisfies VerbOptions;

export interface Verb {
  readonly name: string;
  /** One line after the verb's name, such as "BOOK CELL". */
  readonly usage: string;
  /** One sentence, or a few. */
  readonly about: string;
  /** Every option of the verb, by its name without the dashes. */
  readonly options: VerbOptions;
  /** Two command lines that run, from the verb's name on. */
  readonly examples: readonly [string, string];
  /** What is written, and where. */
  readonly writes: string;
  /** Whether it goes on until it is interrupted. */
  readonly lasting?: true;
  /** What an exit status of 1 means, for a verb that has one. */
  readonly problems?: string;
  /** The exit status: 0 done, 1 the book has problems, 2 the request is wrong. */
  run(args: readonly string[], io: Io): Promise<number>;
}

/** The request is wrong: main prints the sentence ({"error": sentence} with --json) and exits 2. */
export class Wrong extends Error {}
