/** What a person can do with the trials of a book: keep a setting under a title, type it into the book, delete it. */
import { phrase } from "../../functions/phrase.ts";
import { fullAddress, type Place } from "../book/address.ts";
import type { Typing } from "../book/edit.ts";
import { type Book, type Trial, typedAt } from "../book/shape.ts";
import { AS_IT_STANDS, withTrial } from "../engine/trials.ts";
import type { Command } from "./store.ts";

/** The most trials of a book; more could not be compared side by side. */
const MOST_TRIALS = 50;

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

const find = (book: Book, title: string): Trial | undefined =>
  book.trials.find((trial) => same(trial.title, title));

/** Keeps what is typed in these cells, or what is to be typed in them, as a trial. The book's own cells stay as they are. */
export const keepTrial = (title: string, cells: readonly (Place | Typing)[]): Command => ({
  label: phrase`keep the trial ${title.trim()}`,
  edit: (book) => {
    if (!/\S/.test(title)) return { refusal: phrase`a trial needs a title, such as: an inch deeper` };
    if (title.length > 200)
      return { refusal: phrase`a trial's title has at most 200 letters, not ${title.length}` };
    if (same(title, AS_IT_STANDS))
      return { refusal: phrase`"${AS_IT_STANDS}" means the book itself; choose another title` };
    if (find(book, title)) {
      return {
        refusal: phrase`there is already a trial called "${find(book, title)!.title}"; choose another title or delete it first`,
      };
    }
    if (cells.length === 0)
      return { refusal: phrase`a trial needs at least one typed cell; choose a cell to vary first` };
    if (book.trials.length >= MOST_TRIALS)
      return { refusal: phrase`a book has at most ${MOST_TRIALS} trials; delete one first` };
    const kept = cells.map((cell) => [
      fullAddress(book, cell),
      "typed" in cell ? cell.typed : typedAt(book, cell.page, cell.row, cell.column),
    ]);
    return { ...book, trials: [...book.trials, { title: title.trim(), cells: Object.fromEntries(kept) }] };
  },
});

/** Types a trial's settings into the book: one undo step. */
export const adoptTrial = (title: string): Command => ({
  label: phrase`adopt the trial ${title}`,
  edit: (book) => {
    const trial = find(book, title);
    return trial ? withTrial(book, trial) : { refusal: phrase`there is no trial called "${title}"` };
  },
});

export const deleteTrial = (title: string): Command => ({
  label: phrase`delete the trial ${title}`,
  edit: (book) => {
    const trial = find(book, title);
    if (!trial) return { refusal: phrase`there is no trial called "${title}"` };
    return { ...book, trials: book.trials.filter((one) => one !== trial) };
  },
});
