/** The pattern of a book: which pieces are asked for, packed on sheets of paper. */

import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { careText, cautionsAt } from "../engine/cautions.ts";
import type { Engine } from "../engine/engine.ts";
import { type FoundPiece, piecesOf } from "../engine/pieces.ts";
import type { Sheet } from "./document.ts";
import type { Asked, Built } from "./documents.ts";
import { drawnFor } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { SCALES } from "./paper.ts";
import { patternSheet } from "./pattern-sheet.ts";
import { patternSheets } from "./pattern-sheets.ts";

interface Wanted {
  readonly found: readonly FoundPiece[];
  readonly lost: readonly string[];
  /** Pieces that are not asked for by name and that no cut list cuts. */
  readonly leftOut: readonly FoundPiece[];
}

/** Every text that a cell of a page holds. */
function valuesOn(engine: Engine, page: number): ReadonlySet<unknown> {
  const { rows } = engine.book.pages[page]!;
  const texts = rows.flatMap((cells, row) => cells.map((_, column) => engine.value({ page, row, column })));
  return new Set(texts.filter((value) => typeof value === "string"));
}

/** The pieces that are asked for; a name that means no piece is refused with the name that is nearest. */
function wantedPieces(engine: Engine, { request, page }: Asked): Wanted | NotPrinted {
  const names = request.pieces ?? [];
  const all = piecesOf(engine);
  const is = (
    one: { readonly title: string; readonly address: string; readonly called?: string },
    name: string,
  ) => one.title === name || one.address === name || one.called === name;
  for (const name of names) {
    const broken = all.lost.find((one) => is(one, name));
    if (broken) return { reason: phrase`${name} cannot be drawn: ${broken.sentence}` };
    if (all.found.some((one) => is(one, name))) continue;
    const near = nearestWord(
      name,
      all.found.flatMap(({ title, called }) => [title, called]),
    );
    return {
      reason: near
        ? phrase`no pattern piece of this book is called "${name}"; is ${near} meant?`
        : phrase`no pattern piece of this book is called "${name}"`,
    };
  }
  // A cell that only shows a piece of another page brings that piece, too.
  const shown = page === null ? null : valuesOn(engine, page);
  const here = ({ place }: { readonly place: Place }) =>
    place.page === (page ?? place.page) || shown?.has(engine.value(place)) === true;
  const asked = all.found.filter(
    (one) => here(one) && (names.length === 0 || names.some((name) => is(one, name))),
  );
  // A piece from which another is drafted is not cut. Of a book without a cut list every piece is printed.
  const isListed = asked.some(({ isToCut }) => isToCut) || (page === null && all.hasCutList);
  const isChoice = names.length === 0 && request.everyPiece !== true && isListed;
  const found = asked.filter(({ isToCut }) => isToCut || !isChoice);
  const leftOut = asked.filter((one) => !found.includes(one));
  const lost = names.length === 0 ? all.lost.filter(here) : [];
  if (found.length > 0) {
    const sentences = lost.map(({ title, sentence }) => phrase`${title} is not drawn: ${sentence}`);
    return { found, leftOut, lost: sentences };
  }
  const on = page === null ? null : engine.book.pages[page]!.title;
  const why = lost[0] && `${lost[0].title}: ${lost[0].sentence}`;
  if (why)
    return {
      reason:
        on === null
          ? phrase`no piece of the book can be drawn: ${why}`
          : phrase`no piece of the page ${on} can be drawn: ${why}`,
    };
  return {
    reason:
      on === null
        ? phrase`the book has no pattern pieces: a cell with =RECTANGLE(10; 20) or another function that makes a piece is one`
        : phrase`the page ${on} has no pattern pieces: a cell with =RECTANGLE(10; 20) or another function that makes a piece is one`,
  };
}

export function patternDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const { request, manner, letters, page } = asked;
  const name = request.scale ?? "1";
  const scale = Object.hasOwn(SCALES, name) ? SCALES[name] : undefined;
  if (scale === undefined)
    return { reason: phrase`the scale must be one of ${Object.keys(SCALES).join(", ")}, not "${name}"` };
  const wanted = wantedPieces(engine, asked);
  if ("reason" in wanted) return wanted;
  const { found, lost, leftOut } = wanted;
  const remarks = found.flatMap((one) => one.remarks.map((sentence) => `${titleOf(one)}: ${sentence}`));
  const sheet = patternSheet(engine.book, found, manner.paper, scale, { letters, large: manner.large });
  if ("reason" in sheet) return sheet;
  const isCutList = found.every(({ isToCut }) => isToCut);
  const says =
    found.length === 1
      ? found[0]!.called
      : isCutList
        ? phrase`${plural(found.length, "# piece", "# pieces")} of the cut list`
        : phrase`${plural(found.length, "# piece", "# pieces")}`;
  const notes =
    leftOut.length === 0
      ? []
      : [phrase`Not printed, because not on a cut list: ${leftOutNames(leftOut, found)}.`];
  const heading = {
    ...{
      title: manner.title,
      what: says,
      whose: drawnFor(engine, page),
      scale: name,
      day: manner.day,
      notes,
    },
  };
  const sentences = [
    ...lost,
    ...remarks,
    ...sheet.leftOut.map(({ piece, text }) => phrase`${piece}: "${text}" found no room on the sheet`),
  ];
  const cautions = cautionsAt(
    engine,
    found.map(({ place }) => place),
  );
  return {
    sheets: [...toCheck(asked, sentences, cautions), ...patternSheets(sheet, manner.paper, heading)],
    says,
    sentences,
    notes,
    pieces: found.map(titleOf),
  };
}

/** The pieces that are not printed, each with its cell where a printed piece has the same name. */
function leftOutNames(leftOut: readonly FoundPiece[], found: readonly FoundPiece[]): string {
  const printed = new Set(found.flatMap(({ called }) => called.split(", ")));
  return leftOut
    .map(({ title, address }) => (printed.has(title) ? `${title} (${address})` : title))
    .join(", ");
}

/** The cut list's words for a piece, and the name by which the book knows it. */
const titleOf = ({ called, title, name }: FoundPiece): string =>
  name === undefined || called === title ? called : `${called} (${title})`;

/** A sheet before the others that lists what should be checked and the cautions; no sheet when there is neither. */
function toCheck(
  { letters, manner }: Asked,
  sentences: readonly string[],
  cautions: readonly string[],
): Sheet[] {
  const lines = [...sentences.map((sentence) => `▲ ${sentence}`), ...cautions.map(careText)];
  if (lines.length === 0) return [];
  const flow = new Flow(letters, manner, phrase`Pattern: check before you cut`);
  for (const line of lines) {
    flow.say(line);
    flow.space(0.4);
  }
  return flow.sheets();
}
