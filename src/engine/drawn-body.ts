/**
 * The wearer's measurements for a garment as worn: cells of the book with the name of a measurement, the
 * garment's own page first, then the rows of its wearer in a chart of several wearers, and failing these, rows
 * of a Measure page with the label of one. Where
 * the book leaves open whose or which figure is meant, none is taken and the reason is said.
 */

import { comparedName } from "../../functions/compared-name.ts";
import { phrase } from "../../functions/phrase.ts";
import { measureNamed } from "../../functions/survey/survey.ts";
import { convert } from "../../functions/units.ts";
import {
  BODY_MEASURES,
  BODY_WORDS,
  type Body,
  type BodyMeasure,
  type Measured,
} from "../../functions/worn/body.ts";
import { type Place, placeKey } from "../book/address.ts";
import { cornerOf, isCell, nameMeant, namesMeant } from "../book/names.ts";
import type { Page } from "../book/shape.ts";
import { type Charted, chartedBehind } from "./charted-body.ts";
import type { Engine } from "./engine.ts";
import { WEARER } from "./wearer-cell.ts";

/** By which a measurement is known: the names of its cell, and the labels of its row beyond the survey's terms. */
const KNOWN_BY: Readonly<Record<BodyMeasure, { names: readonly string[]; labels?: RegExp }>> = {
  waist: { names: ["waist", "waist_girth"] },
  hip: { names: ["hip", "hip_girth"] },
  hip_over_pad: { names: ["hip_over_pad"], labels: /^hip( girth)?,? over the pad$/ },
  hip_drop: {
    names: ["hip_drop", "waist_to_hip"],
    labels: /^(waist to hip(,? along the side)?|hip drop|hip depth)$/,
  },
  stature: { names: ["stature"] },
  waist_height: { names: ["waist_height", "waist_to_floor"] },
  bust: { names: ["bust", "bust_girth"] },
  shoulder: { names: ["shoulder", "shoulder_length"] },
  neck: { names: ["neck", "neck_girth"] },
};

const SURVEYED: Readonly<Record<string, BodyMeasure>> = {
  "waist girth": "waist",
  "hip girth": "hip",
  stature: "stature",
  "waist height": "waist_height",
  "bust girth": "bust",
  "shoulder length": "shoulder",
  "neck girth": "neck",
};

/** What no body measures less or more than, in centimetres: other figures are something else or a slip. */
const BOUNDS: Readonly<Record<BodyMeasure, readonly [least: number, most: number]>> = {
  waist: [35, 250], hip: [40, 300], hip_over_pad: [40, 500], hip_drop: [4, 50], stature: [60, 250],
  waist_height: [30, 170], bust: [40, 250], shoulder: [4, 30], neck: [15, 100],
}; // biome-ignore format: a table

/** The most cells that are followed from a garment to the measurements behind it. */
const MOST_FOLLOWED = 600;

/** The measurements for the garment that a cell makes. */
export function bodyAt(engine: Engine, place: Place): Body {
  const behind = cellsBehind(engine, place).filter(
    ({ page }) => engine.book.pages[page]?.stage === "Measure",
  );
  const known: Partial<Record<BodyMeasure, Measured>> = {};
  const unsure: Partial<Record<BodyMeasure, string>> = {};
  const named = new Map<BodyMeasure, Place>();
  const settle = (measure: BodyMeasure, at: Place): void => {
    const figure = lengthAt(engine, at);
    if (figure === null) return;
    const from = engine.address(at);
    const [least, most] = BOUNDS[measure].map((bound) => convert(bound, "cm", engine.book.unit)) as [
      number,
      number,
    ];
    const other = otherWearer(engine, at, place.page, behind);
    if (figure < least || figure > most)
      unsure[measure] =
        phrase`the ${BODY_WORDS[measure]} in ${from} is not used, as no body measures so much or so little`;
    else if (other !== null)
      unsure[measure] =
        phrase`the ${BODY_WORDS[measure]} in ${from} is not used, as it stands under "${other}", perhaps for another wearer`;
    else known[measure] = { length: figure, from };
  };
  for (const measure of BODY_MEASURES) {
    const at = namedPlace(engine, KNOWN_BY[measure].names, place.page, behind);
    if (typeof at === "string") unsure[measure] = at;
    else if (at) {
      named.set(measure, at);
      settle(measure, at);
    }
  }
  const rows = labelledRows(engine, behind);
  const charted = chartedBehind(engine, behind);
  for (const measure of BODY_MEASURES) {
    if (named.has(measure) || unsure[measure] !== undefined) continue;
    const inChart = charted && figureInChart(engine, charted, measure);
    if (charted && inChart && charted.wearers.length > 1) {
      unsure[measure] =
        phrase`the ${BODY_WORDS[measure]} is not used, as the garment rests on figures of ${charted.wearers.slice(0, 3).join(" and ")}`;
      continue;
    }
    if (inChart) {
      settle(measure, inChart);
      continue;
    }
    const found = rows.get(measure) ?? [];
    const places = found.map((row) => figureOf(engine, row, [...named.values()]));
    const [at] = places;
    if (found.length > 1)
      unsure[measure] =
        phrase`the ${BODY_WORDS[measure]} is not used, as ${found.length} rows have it: ${found.map(({ page, row }) => engine.address({ page, row, column: 0 })).join(", ")}`;
    else if (at === "several")
      unsure[measure] =
        phrase`the ${BODY_WORDS[measure]} is not used, as its row at ${engine.address({ ...found[0]!, column: 0 })} has several figures and no name says whose counts`;
    else if (at) settle(measure, at);
  }
  return { known, unsure };
}

/** The length that a cell holds, or null. A bare figure is one too: in a chart it is a length of the book's unit. */
function lengthAt(engine: Engine, at: Place): number | null {
  const { kind, value, problem } = engine.view(at);
  const isLength = kind === "length" || kind === "figure";
  return isLength && !problem && typeof value === "number" && value > 0 ? value : null;
}

/** The cell of the first of these names that has one; a sentence when it is not clear which page's is meant. */
function namedPlace(
  engine: Engine,
  names: readonly string[],
  page: number,
  behind: readonly Place[],
): Place | string | null {
  const { book } = engine;
  for (const name of names) {
    const meant = namesMeant(book, name, page).filter(({ block }) => isCell(block));
    // A name that several pages have: that of the page on which the garment's own measurements stand.
    const near = meant.length > 1 ? meant.filter(({ of }) => behind.some((one) => one.page === of)) : meant;
    if (near.length === 1) return cornerOf(near[0]!.block);
    if (meant.length > 1)
      return phrase`${name} is not used, as several pages have it: ${meant.map(({ address }) => address).join(", ")}`;
  }
  return null;
}

/** The cells that a cell rests on, itself first, as far as they are followed. */
export function cellsBehind(engine: Engine, place: Place): Place[] {
  const seen = new Map<string, Place>();
  const wave = [place];
  for (let one = wave.shift(); one && seen.size < MOST_FOLLOWED; one = wave.shift()) {
    const key = placeKey(one);
    if (seen.has(key)) continue;
    seen.set(key, one);
    wave.push(...engine.restsOn(one).slice(0, MOST_FOLLOWED));
  }
  return [...seen.values()];
}

/** Words alone in their row: the heading of the rows beneath. */
function headingOver({ rows }: Page, row: number): string | null {
  for (let i = row; i >= 0; i -= 1) {
    const [first = "", ...rest] = rows[i] ?? [];
    if (first.trim() !== "" && rest.every((typed) => typed.trim() === "")) return first.trim();
  }
  return null;
}

/**
 * The heading over a measurement, when it may be another wearer's: the page does not say who is drawn, and
 * what the garment rests on stands under other headings. Null when all is well.
 */
function otherWearer(engine: Engine, at: Place, page: number, behind: readonly Place[]): string | null {
  const { book } = engine;
  const home = book.pages[at.page];
  if (home?.stage !== "Measure" || nameMeant(book, WEARER, page)) return null;
  const near = behind.filter((one) => one.page === at.page);
  const heading = headingOver(home, at.row);
  if (near.length === 0 || heading === null) return null;
  return near.some(({ row }) => headingOver(home, row) === heading) ? null : heading;
}

/** The cell of a chart with a measurement of its wearer: of the row that the garment rests on, else of another of the wearer's rows. */
function figureInChart(engine: Engine, { page, rows }: Charted, measure: BodyMeasure): Place | null {
  const column = engine.book.pages[page]!.columns.findIndex(({ heading }) => measureOf(heading) === measure);
  if (column < 0) return null;
  const places = rows.map((row) => ({ page, row, column }));
  return places.find((at) => lengthAt(engine, at) !== null) ?? null;
}

interface LabelledRow {
  readonly page: number;
  readonly row: number;
}

/** The rows of Measure pages by the measurement that their label names: of the pages that the garment rests on, or of all when it rests on no such page. */
function labelledRows(engine: Engine, behind: readonly Place[]): Map<BodyMeasure, LabelledRow[]> {
  const found = new Map<BodyMeasure, LabelledRow[]>();
  for (const [page, { stage, rows }] of engine.book.pages.entries()) {
    if (stage !== "Measure" || (behind.length > 0 && !behind.some((one) => one.page === page))) continue;
    for (const [row, typed] of rows.entries()) {
      const measure = measureOf(typed.find((text) => text.trim() !== "") ?? "");
      if (measure) found.set(measure, [...(found.get(measure) ?? []), { page, row }]);
    }
  }
  return found;
}

function measureOf(label: string): BodyMeasure | null {
  const surveyed = SURVEYED[measureNamed(label) ?? ""];
  if (surveyed) return surveyed;
  const text = comparedName(label);
  return BODY_MEASURES.find((measure) => KNOWN_BY[measure].labels?.test(text)) ?? null;
}

/** The one length of a row; of several that in the column where the page's named measurements stand, those of the wearer who is drawn. */
function figureOf(
  engine: Engine,
  { page, row }: LabelledRow,
  named: readonly Place[],
): Place | "several" | null {
  const places = (engine.book.pages[page]!.rows[row] ?? [])
    .map((_, column): Place => ({ page, row, column }))
    .filter((at) => lengthAt(engine, at) !== null);
  if (places.length < 2) return places[0] ?? null;
  const columns = new Set(named.filter((at) => at.page === page).map(({ column }) => column));
  const drawn = places.filter(({ column }) => columns.has(column));
  return columns.size === 1 && drawn.length === 1 ? drawn[0]! : "several";
}
