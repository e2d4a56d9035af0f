/** Every document that a book has something for, after a first sheet that lists them. */
import { phrase, plural } from "../../functions/phrase.ts";
import type { Engine } from "../engine/engine.ts";
import type { Asked, Built } from "./documents.ts";
import { bookLine } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { setTable } from "./table.ts";

interface Part {
  readonly title: string;
  readonly built: Built | NotPrinted;
}

export function allDocuments(
  engine: Engine,
  { manner, letters }: Asked,
  parts: readonly Part[],
): Built | NotPrinted {
  const made = parts.flatMap(({ title, built }) => ("reason" in built ? [] : [{ title, ...built }]));
  if (made.length === 0) return { reason: phrase`this book has nothing to print yet` };
  const left = parts.flatMap(({ title, built }) => ("reason" in built ? [`${title}: ${built.reason}`] : []));
  /** The sheets of the list. Its page numbers count these sheets too: `before` is their number. */
  const front = (before: number) => {
    const flow = new Flow(letters, manner, phrase`What is in this print`);
    flow.say(bookLine(engine));
    flow.space(0.3);
    let page = before + 1;
    const rows = made.map(({ title, sheets, says, sentences, notes = [] }) => {
      const [from, to] = [page, page + sheets.length - 1];
      page = to + 1;
      return {
        cells: [title, says, from === to ? `${from}` : `${from}–${to}`].map((text) => ({ text })),
        notes: [...notes, ...sentences.map((sentence) => `▲ ${sentence}`)],
      };
    });
    setTable(flow, { headings: [phrase`Document`, phrase`What is on it`, phrase`Pages`], rows });
    if (left.length > 0) flow.heading(phrase`Not in this print`);
    for (const sentence of left) flow.say(sentence);
    return flow.sheets();
  };
  const first = front(front(1).length);
  return {
    sheets: [...first, ...made.flatMap(({ sheets }) => sheets)],
    says: phrase`${plural(made.length, "# document", "# documents")}`,
    notes: made.flatMap(({ title, notes = [] }) => notes.map((sentence) => `${title}: ${sentence}`)),
    pieces: made.flatMap(({ pieces = [] }) => pieces),
    sentences: made.flatMap(({ title, sentences }) => sentences.map((sentence) => `${title}: ${sentence}`)),
  };
}
