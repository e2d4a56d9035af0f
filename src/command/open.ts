/** Opening a book for a verb, finding its cells and typing into them. */

import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { lookUp, namedCells, namesMeant, nameText } from "../book/names.ts";
import { readBook } from "../book/read.ts";
import { Engine } from "../engine/engine.ts";
import { cellKey } from "../engine/label.ts";
import type { LayDesk } from "../engine/lay-desk.ts";
import { layDesk } from "../lay/desk.ts";
import { fileName } from "./machine.ts";
import { type Io, Wrong } from "./verb.ts";

/** The book in a file, calculated. */
export function openBook(path: string, io: Io): Engine {
  const reading = readBook(io.read(path));
  if ("reason" in reading) throw new Wrong(`${fileName(path)}: ${reading.reason}`);
  return new Engine(reading.book, layDesk);
}

/** The cell that a text means: a name, "Draft!B4", or "B4" on the first page. */
export function placeOf(engine: Engine, text: string): Place {
  const place = lookUp(engine.book, text);
  if (place) return place;
  const meant = namesMeant(engine.book, text, null);
  if (meant.length > 1) {
    const ways = meant.map((one) => nameText(engine.book, one, null));
    throw new Wrong(phrase`${meant.length} pages have a name ${text}: write one of ${ways.join(", ")}`);
  }
  if (meant[0])
    throw new Wrong(
      phrase`${text} is a list, ${meant[0].address}, and one cell is needed here: give its address`,
    );
  const near = nearestWord(
    text,
    namedCells(engine.book).map(({ name }) => name),
  );
  throw new Wrong(
    near
      ? phrase`no cell of this book is named "${text}"; is ${near} meant?`
      : phrase`no cell of this book is named "${text}"; "${"calculate"}" with the book alone lists its named cells`,
  );
}

/** Names with commas between, of an option that may be given more than once. */
export function namesIn(lists: readonly string[], option: string): string[] {
  const names = lists
    .flatMap((list) => list.split(","))
    .map((name) => name.trim())
    .filter((name) => name !== "");
  if (lists.length > 0 && names.length === 0)
    throw new Wrong(
      phrase`${option} needs the names of cells with commas between, such as ${`${option} hem,depth`}`,
    );
  return names;
}

/** The same book calculated anew, with another desk that answers its lays. */
export function answeredBy(engine: Engine, desk: LayDesk): Engine {
  if (engine.laid().length === 0) return engine;
  const { book } = engine;
  engine.destroy();
  return new Engine(book, desk);
}

/** Types into cells, each given as NAME=VALUE. */
export function setCells(engine: Engine, settings: readonly string[]): void {
  const typings = settings.map((setting) => {
    const cut = setting.indexOf("=");
    if (cut < 1) throw new Wrong(phrase`${"--set"} needs NAME=VALUE, not "${setting}"`);
    return { ...placeOf(engine, setting.slice(0, cut)), typed: setting.slice(cut + 1) };
  });
  engine.become(type(engine.book, typings));
}

/** A cell by its name, or by its address when it has no name. */
export const label = (engine: Engine, place: Place): string => cellKey(engine.book, place);
