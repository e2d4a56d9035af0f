/**
 * The shopping list: the lengths of cloth that the Cut pages come to, then the Trimmings pages, which are a
 * book's own list of what is bought, with boxes to tick.
 */
import { phrase } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import type { Stage } from "../book/shape.ts";
import type { Engine } from "../engine/engine.ts";
import { ESTIMATE_SIGN, estimateText } from "../engine/estimates.ts";
import { cellTextWithName } from "../engine/label.ts";
import { laidSign, laidText } from "../engine/laid.ts";
import { Upstream } from "../engine/references.ts";
import { plainNumber } from "../engine/show.ts";
import { pagesOf } from "./chart.ts";
import type { Asked, Built } from "./documents.ts";
import { bookLine } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { pageTable, paperCell, toCheckBeneath } from "./page-table.ts";
import { setTable, type TableRow } from "./table.ts";

const same = (a: Place, b: Place): boolean => placeKey(a) === placeKey(b);

/**
 * The lengths of cloth on a page: lengths that come from a lay, or are calculated from such a length. A length from
 * which another one is calculated is left out, so that no cloth is listed twice. Lengths whose lay is pending, and
 * lengths in error, are listed too, since they may be of cloth.
 */
function clothCells(engine: Engine, page: number): Place[] {
  const laid = engine.laid().map(({ place }) => place);
  const cells = engine.book.pages[page]!.rows.flatMap((row, r) =>
    row.flatMap((typed, column): Place[] => (isFormula(typed) ? [{ page, row: r, column }] : [])),
  );
  const lengths = cells.filter((place) => {
    const { kind, problem } = engine.view(place);
    if (kind !== "length") return false;
    if (problem?.is === "error") return true;
    const below = new Upstream(engine.book, [place]);
    return laid.some((one) => same(one, place) || below.has(one));
  });
  const used = lengths.flatMap((place) => engine.restsOn(place));
  return lengths.filter((place) => !used.some((one) => same(one, place)));
}

/** The width of the cloth that a length was laid on. Returns "" when cloths of several widths were used. */
function widthBehind(engine: Engine, place: Place): string {
  const under = [place, ...engine.restsOn(place)];
  const widths = new Set(
    engine
      .laid()
      .filter((one) => under.some((at) => same(at, one.place)))
      .flatMap(({ lays }) => lays.flatMap(({ question }) => question.cloths.map(({ width }) => width))),
  );
  const [width, other] = [...widths];
  return width === undefined || other !== undefined
    ? ""
    : phrase`${`${plainNumber(width, 3, engine.book.decimal)} ${engine.book.unit}`} wide`;
}

function clothRow(engine: Engine, place: Place): TableRow {
  const { book } = engine;
  const { value } = engine.view(place);
  const estimate = estimateText(engine, place);
  const called = cellTextWithName(book, place);
  const { note, origin, beside, ...cell } = paperCell(engine, place, called);
  const far =
    typeof value !== "number"
      ? ""
      : book.unit === "in"
        ? `${plainNumber(value / 36, 3, book.decimal)} yd`
        : `${plainNumber(value / (book.unit === "cm" ? 100 : 1000), 3, book.decimal)} m`;
  return {
    cells: [{ text: called }, { text: widthBehind(engine, place) }, cell, { text: far }, { text: "□" }],
    notes: [
      ...(note ? [note] : []),
      ...(beside === "" ? [] : [beside]),
      ...(estimate === "" ? [] : [`${ESTIMATE_SIGN} ${estimate}`]),
      ...(origin ? [`${laidSign(origin)} ${phrase`rests on a lay: ${laidText(origin)}`}`] : []),
    ],
  };
}

export function shoppingDocument(engine: Engine, { manner, letters, page }: Asked): Built | NotPrinted {
  const { book } = engine;
  const of = (stage: Stage): number[] => {
    const pages = pagesOf(book, page, stage);
    return "reason" in pages ? [] : pages;
  };
  const [cuts, trims] = [of("Cut"), of("Trimmings")];
  const cloths = cuts.flatMap((one) => clothCells(engine, one));
  const lists = trims
    .map((one) => ({ one, ...pageTable(engine, one, { tick: true }) }))
    .filter(({ table }) => table.rows.length > 0);
  if (cloths.length === 0 && lists.length === 0)
    return {
      reason: phrase`there is nothing to buy: no length of cloth on a Cut page, and nothing on a Trimmings page`,
    };
  const flow = new Flow(letters, manner, phrase`Shopping list`);
  flow.say(bookLine(engine));
  let problems = 0;
  if (cloths.length > 0) {
    flow.heading(phrase`Cloth`);
    setTable(flow, {
      headings: [
        phrase`Cloth`,
        phrase`Width`,
        phrase`Length, ${book.unit}`,
        book.unit === "in" ? phrase`In yards` : phrase`In metres`,
        phrase`Done`,
      ],
      rows: cloths.map((place) => clothRow(engine, place)),
    });
    problems += cloths.filter((place) => engine.view(place).problem).length;
  }
  for (const { one, table, remarks, problems: more } of lists) {
    flow.heading(book.pages[one]!.title);
    setTable(flow, table);
    for (const remark of remarks) flow.say(remark, { size: 0.9 * flow.size });
    problems += more;
  }
  return {
    sheets: flow.sheets(),
    says: phrase`what there is to buy`,
    sentences: toCheckBeneath(problems),
  };
}
