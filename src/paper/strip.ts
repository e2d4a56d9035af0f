/**
 * Marking strips at full size: a strip of paper as long as an edge, with every place that a function gives along
 * it. There is a strip for each edge that a function marks (its declaration has a `strip`); cells that ask for
 * different places of one edge share one strip. Millimetres.
 */

import { catalogue } from "../../functions/catalogue.ts";
import type { Declaration, EdgeStrip } from "../../functions/define.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { type Argument, stripOf } from "../../functions/run.ts";
import { convert } from "../../functions/units.ts";
import { type Place, placeKey } from "../book/address.ts";
import { isFormula, tokens } from "../book/formula.ts";
import { typedAt } from "../book/shape.ts";
import { careText, cautionsAt } from "../engine/cautions.ts";
import type { Engine } from "../engine/engine.ts";
import { cellTextWithName } from "../engine/label.ts";
import { remarksOf } from "../engine/remarks.ts";
import { ROLE_WORDS } from "../engine/roles.ts";
import { lengthText, show, shownWithDecimals } from "../engine/show.ts";
import { cellsAsked } from "./cells-asked.ts";
import type { Asked, Built } from "./documents.ts";
import { bookLine } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { square } from "./pattern-sheets.ts";
import { drawnStrips } from "./strip-drawing.ts";
import { setTable } from "./table.ts";
import { tiledSheets } from "./tiled.ts";

export interface FoundStrip {
  readonly declaration: Declaration;
  readonly strip: EdgeStrip;
  /** The cells whose functions mark this edge. */
  readonly places: readonly Place[];
}

/** Arguments that choose which place of an edge a call gives, not where the places are. */
const CHOOSING = new Set(["number", "which"]);

const hasStrip = (formula: string): boolean =>
  isFormula(formula) &&
  tokens(formula).some(({ kind, text }) => kind === "function" && catalogue.get(text.toUpperCase())?.strip);

/** Every strip of these cells, or of the whole book. */
export function stripsOf(engine: Engine, places: readonly Place[]): FoundStrip[] {
  const found = new Map<string, { declaration: Declaration; strip: EdgeStrip; places: Place[] }>();
  for (const place of places) {
    if (!hasStrip(typedAt(engine.book, place.page, place.row, place.column))) continue;
    for (const { declaration, args } of engine.calls(place)) {
      const strip = stripOf(declaration, args, engine.setting);
      if (!strip || strip.marks.length === 0 || !(strip.length > 0)) continue;
      const key = edgeKey(declaration, args);
      const known = found.get(key);
      if (!known) found.set(key, { declaration, strip, places: [place] });
      else {
        known.places.push(place);
        // A function that does not know the last place gives as many places as its largest call asks for.
        if (strip.marks.length > known.strip.marks.length) known.strip = strip;
      }
    }
  }
  const strips = [...found.values()];
  // A list of places gets no strip of its own when a function puts the same places on an edge, or an earlier list has the same.
  const isOn = (place: number, { strip }: FoundStrip) =>
    strip.marks.some(({ at }) => Math.abs(at - place) <= 1e-9 * strip.length);
  const holds = (other: FoundStrip, { strip: { marks } }: FoundStrip) =>
    (!other.strip.goesOn || other.strip.marks.length === marks.length) &&
    marks.every(({ at }) => isOn(at, other));
  return strips.filter(
    (one, i) =>
      !one.strip.goesOn ||
      !strips.some((other, j) => other !== one && (!other.strip.goesOn || j < i) && holds(other, one)),
  );
}

const edgeKey = (declaration: Declaration, args: readonly Argument[]): string =>
  JSON.stringify([
    declaration.name,
    Object.keys(declaration.takes).map((name, i) => (CHOOSING.has(name) ? null : (args[i] ?? null))),
  ]);

const allCells = (engine: Engine, page: number | null): Place[] =>
  engine.book.pages.flatMap(({ rows }, number) =>
    page !== null && page !== number
      ? []
      : rows.flatMap((cells, row) => cells.map((_, column) => ({ page: number, row, column }))),
  );

export function stripDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const { request, manner, letters, page } = asked;
  const chosen = cellsAsked(engine, request.cells);
  if (chosen && "reason" in chosen) return chosen;
  const strips = stripsOf(engine, chosen ?? allCells(engine, page));
  const { book } = engine;
  if (strips.length === 0)
    return {
      reason: chosen
        ? phrase`no chosen cell gives places along an edge: ${stripFunctions().join(", ")} do`
        : phrase`no cell gives places along an edge: ${stripFunctions().join(", ")} do`,
    };
  const idle = (chosen ?? []).filter(
    (place) => !strips.some((one) => one.places.some((at) => placeKey(at) === placeKey(place))),
  );
  const factor = convert(1, book.unit, "mm");
  const flow = new Flow(letters, manner, phrase`Marking strips`);
  flow.say(bookLine(engine));
  flow.say(
    phrase`Full size, 1:1. Print at 100 %; the square must measure 10 cm each way. Cut out each strip and lay it along its edge, its 0 at the beginning.`,
  );
  flow.need(108);
  const [left, top] = [flow.left, flow.y + 2];
  flow.on((doc) => square(doc, 0, left, top));
  flow.y += 106;
  const sentences = idle.map(
    (place) => phrase`${cellTextWithName(book, place)} gives no places along an edge`,
  );
  const titles = strips.map((one, i) => titleOf(engine, one, i));
  for (const [i, one] of strips.entries()) {
    flow.heading(titles[i]!);
    flow.say(
      phrase`From ${plural(one.places.length, "the cell", "the cells")} ${listed(one.places.map((place) => cellTextWithName(book, place)))}: ${one.declaration.name}.`,
    );
    const remarks = new Set(one.places.flatMap((place) => remarksOf(engine, place)));
    for (const remark of remarks) flow.say(`▲ ${remark}`);
    for (const caution of cautionsAt(engine, one.places)) flow.say(careText(caution));
    for (const remark of remarks) sentences.push(phrase`strip ${i + 1}: ${remark}`);
    if (one.strip.goesOn)
      flow.say(phrase`The function does not know where the edge ends: it may go on beyond the strip.`);
    setTable(flow, placesTable(engine, one.strip));
  }
  // Along the long side of the paper.
  const { paper: upright } = manner;
  const paper =
    upright.height === null ? upright : { ...upright, width: upright.height, height: upright.width };
  const drawing = drawnStrips(
    book,
    letters,
    strips.map(({ strip }, i) => ({ strip, title: titles[i]! })),
    paper,
    manner.large ? 4.4 : 3,
    factor,
  );
  return {
    sheets: [
      ...flow.sheets(),
      ...tiledSheets(drawing, paper, { ...manner, says: phrase`marking strips, scale 1` }),
    ],
    says: phrase`${plural(strips.length, "# marking strip", "# marking strips")}`,
    sentences,
  };
}

const stripFunctions = () => [...catalogue.values()].flatMap(({ name, strip }) => (strip ? [name] : []));

/** The first few, and how many more. */
const listed = (texts: readonly string[]): string =>
  texts.length <= 6 ? texts.join(", ") : phrase`${texts.slice(0, 5).join(", ")} and ${texts.length - 5} more`;

function titleOf(engine: Engine, { places, strip }: FoundStrip, i: number): string {
  return phrase`Strip ${i + 1}: ${cellTextWithName(engine.book, places[0]!)}, ${lengthText(strip.length, engine.book)} long`;
}

function placesTable(engine: Engine, { marks, length, goesOn }: EdgeStrip) {
  const rule = engine.book;
  const at = (figure: number) => shownWithDecimals(show(figure, "length", rule), figure, "length", rule);
  const rows = [
    ...marks.map((mark) => ({ ...mark, kind: mark.role === "notch" ? phrase`mark` : ROLE_WORDS[mark.role] })),
    ...(goesOn ? [] : [{ at: length, says: phrase`end`, kind: "" }]),
  ];
  return {
    headings: [
      // For translators: a place along an edge, and the kind of line or mark that it gets.
      ...[phrase`Place`, phrase`Line`],
      phrase`From the start, ${rule.unit}`,
      phrase`From the one before, ${rule.unit}`,
    ],
    rows: rows.map((mark, i) => ({
      cells: [mark.says, mark.kind, at(mark.at), at(mark.at - (rows[i - 1]?.at ?? 0))].map((text) => ({
        text,
      })),
      notes: [],
    })),
  };
}
