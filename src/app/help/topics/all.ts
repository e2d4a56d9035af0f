/** All topics of the help, chapter by chapter. */
import { translated } from "../../../../functions/phrase.ts";
import { SHORTCUTS } from "../shortcuts.ts";
import { ANSWERS } from "./answers.ts";
import { BEGINNING } from "./beginning.ts";
import { GRID } from "./grid.ts";
import { NOT_YET } from "./not-yet.ts";
import { SEAMS } from "./seams.ts";
import type { Chapter } from "./topic.ts";
import { TYPING } from "./typing.ts";

const KEYS: Chapter = {
  title: "Keys",
  topics: [
    {
      name: "Keys",
      summary: "Everything on the page can be reached and done with the keyboard.",
      words:
        "keyboard shortcuts, keyboard, hotkeys, key, without a mouse, control, accessibility, screen reader",
      says: [
        "Arrow keys go from cell to cell; typing begins a new text, `Enter` or `F2` goes on with the one that is there. `Tab` goes on to the right, and `Enter` then back to the first column, one row down.",
      ],
      table: SHORTCUTS.map(({ keys, does }) => [keys, does] as const),
    },
  ],
};

/** A chapter in the reader's language. */
const inLanguage = ({ title, topics }: Chapter): Chapter => ({
  title: translated(title),
  topics: topics.map(({ name, summary, words, says, table, see }) => ({
    name: translated(name),
    summary: translated(summary),
    words: translated(words),
    says: says.map(translated),
    ...(table && { table: table.map(([sign, means]) => [translated(sign), translated(means)] as const) }),
    ...(see && { see: see.map(translated) }),
  })),
});

export const CHAPTERS: readonly Chapter[] = [BEGINNING, TYPING, GRID, SEAMS, ANSWERS, KEYS, NOT_YET].map(
  inLanguage,
);
