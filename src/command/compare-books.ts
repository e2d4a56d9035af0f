/** Two books side by side for `compare A B`: what differs, where, and what came of it. */
import { phrase } from "../../functions/phrase.ts";
import {
  type AnswerDifference,
  type BookDifferences,
  bookDifferences,
  type Difference,
} from "../engine/book-differences.ts";
import { layDesk } from "../lay/desk.ts";
import { deskFor } from "./laid.ts";
import { openBook } from "./open.ts";
import { type Io, Wrong } from "./verb.ts";

interface Options {
  readonly json?: boolean | undefined;
  readonly seconds?: string | undefined;
}

export function compareBooks([first, second]: readonly [string, string], io: Io, options: Options): void {
  if (first === "-" && second === "-")
    throw new Wrong(phrase`only one of the two books can come from standard input`);
  const [a, b] = [openBook(first, io), openBook(second, io)];
  const [before, after] = [a.book, b.book];
  a.destroy();
  b.destroy();
  const differences = bookDifferences(before, after, deskFor(options.seconds, layDesk));
  io.out(options.json ? JSON.stringify(differences, null, 2) : asLines(differences).join("\n"));
}

const NOUNS: Readonly<Record<Difference["is"], string>> = {
  book: phrase`The book:`, page: phrase`Pages:`, column: phrase`Columns:`, cell: phrase`Cells:`, name: phrase`Names:`,
  note: phrase`Notes:`, trial: phrase`Trials:`,
}; // biome-ignore format: a table

function asLines({ changes, answers }: BookDifferences): string[] {
  if (changes.length + answers.length === 0) return [phrase`the two books are the same`];
  const kinds = Object.keys(NOUNS) as Difference["is"][];
  const lines = kinds.flatMap((kind) => {
    const list = changes.filter(({ is }) => is === kind);
    return list.length === 0 ? [] : [NOUNS[kind], ...list.map(asLine), ""];
  });
  const came =
    answers.length === 0
      ? [phrase`no formula that stands in both books has another answer`]
      : [phrase`What came of it:`, ...answers.map(asLine)];
  return [...lines, ...came];
}

const short = (text: string): string => {
  const line = text.replace(/\s+/g, " ");
  return line.length > 80 ? `${line.slice(0, 77)}...` : line;
};

const asLine = ({ where, label, before, after }: AnswerDifference): string =>
  `  ${label ? `${label} (${where})` : where}: ${short(before) || phrase`(none)`} -> ${short(after) || phrase`(none)`}`;
