/** What a verb of the command line is. Each lives in a file of its own in this folder. */
export interface Io {
  /** Text of a file, or of standard input for "-". Throws `Wrong` with a sentence when it can't be read. */
  read(path: string): string;
  /** Writes a file, making its folder when there is none. */
  write(path: string, content: string | Uint8Array): void;
  /** Prints to standard output, a line break added. */
  out(text: string): void;
  /** Hands a document to standard output as it is, every sign of it: what another program reads. */
  pass(content: string): void;
  /** Prints to standard error, a line break added. */
  err(text: string): void;
}

export interface Verb {
  readonly name: string;
  /** One line after the verb's name, such as "BOOK CELL". */
  readonly usage: string;
  /** One sentence. */
  readonly about: string;
  /** The exit status: 0 done, 1 the book has things to look at, 2 the request is wrong. */
  run(args: readonly string[], io: Io): Promise<number>;
}

/** The request is wrong: main prints the sentence ({"error": sentence} with --json) and exits 2. */
export class Wrong extends Error {}
