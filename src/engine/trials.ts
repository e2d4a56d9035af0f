/** The trials of a book side by side: where their settings differ, and what comes of each. */

import type { Kind } from "../../functions/define.ts";
import type { LayOrigin } from "../../functions/lay.ts";
import { findPlace, fullAddress, type Place } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { isFormula } from "../book/formula.ts";
import { namedCells } from "../book/names.ts";
import { type Book, type Trial, typedAt } from "../book/shape.ts";
import { shownApart } from "./apart.ts";
import { Engine } from "./engine.ts";
import { cellKey } from "./label.ts";
import type { LayDesk } from "./lay-desk.ts";
import { originBelow } from "./lays-below.ts";
import { Upstream } from "./references.ts";
import { answerText, hasAnswer } from "./sentences.ts";
import type { CellView } from "./view.ts";

/** A cell that the trials set, and what each types there. */
export interface TrialInput {
  readonly place: Place;
  readonly label: string;
  readonly typed: readonly string[];
}

/** A worked cell, and how each trial has it. */
export interface TrialOutput {
  readonly place: Place;
  readonly label: string;
  readonly kind: Kind;
  readonly views: readonly CellView[];
  /** What each trial answers in one line, with differing answers in different words. */
  readonly answers: readonly string[];
  /** For each view how the lay was found that its value rests on; null where the value rests on no lay. */
  readonly origins: readonly (LayOrigin | null)[];
}

export interface Comparison {
  /** "as it stands" first, then the trials' titles. */
  readonly titles: readonly string[];
  readonly inputs: readonly TrialInput[];
  readonly outputs: readonly TrialOutput[];
}

/** A title no trial may have: the book with no trial in it. */
export const AS_IT_STANDS = "as it stands";

/** The book with a trial's settings typed in. */
export function withTrial(book: Book, trial: Trial): Book {
  const typings = Object.entries(trial.cells).flatMap(([address, typed]) => {
    const place = findPlace(book, address);
    return place ? [{ ...place, typed }] : [];
  });
  return type(book, typings);
}

/** The cells that any trial sets, in the order of the book. */
export function trialPlaces(book: Book): Place[] {
  const addresses = new Set(book.trials.flatMap(({ cells }) => Object.keys(cells)));
  return [...addresses]
    .flatMap((address) => findPlace(book, address) ?? [])
    .toSorted((a, b) => a.page - b.page || a.row - b.row || a.column - b.column);
}

/**
 * Compares the book as it stands with each of its trials: the named worked cells that follow what
 * the trials set otherwise, and any `also` asked for.
 */
export function* comparing(
  book: Book,
  desk: LayDesk,
  also: readonly Place[] = [],
): Generator<void, Comparison> {
  const settings = [book, ...book.trials.map((trial) => withTrial(book, trial))];
  const places = outputPlaces(book, also);
  const columns: CellView[][] = [];
  const origins: (LayOrigin | null)[][] = [];
  const engine = new Engine(book, desk);
  try {
    for (const setting of settings) {
      engine.become(setting);
      columns.push(places.map((place) => engine.view(place)));
      origins.push(places.map((place) => originBelow(engine, place)));
      yield;
    }
  } finally {
    engine.destroy();
  }
  const all = trialPlaces(book).map((place) => ({
    place,
    label: cellKey(book, place),
    typed: settings.map((setting) => typedAt(setting, place.page, place.row, place.column)),
  }));
  const inputs = all.filter(({ typed }) => differing(typed));
  const asked = new Set(also.map((place) => fullAddress(book, place)));
  const follows = (place: Place) => {
    const upstream = new Upstream(book, [place]);
    return inputs.some((input) => upstream.has(input.place));
  };
  const outputs = places.map((place, i) => ({
    place,
    label: cellKey(book, place),
    kind: columns[0]![i]!.kind,
    views: columns.map((column) => column[i]!),
    answers: answersApart(
      book,
      columns.map((column) => column[i]!),
    ),
    origins: origins.map((column) => column[i]!),
  }));
  return {
    titles: [AS_IT_STANDS, ...book.trials.map(({ title }) => title)],
    inputs,
    outputs: outputs.filter(
      ({ place, views }) =>
        asked.has(fullAddress(book, place)) || differing(views.map(answerOf)) || follows(place),
    ),
  };
}

const differing = (list: readonly unknown[]): boolean => list.some((one) => one !== list[0]);

const answerOf = ({ value, problem }: CellView): unknown =>
  problem && !hasAnswer(problem) ? problem.sentence : value;

function answersApart(book: Book, views: readonly CellView[]): string[] {
  const numbers = views.flatMap(({ value }) => (typeof value === "number" ? [value] : []));
  const shown = shownApart(numbers, views[0]!.kind, book);
  return views.map((view) =>
    typeof view.value === "number" ? shown[numbers.indexOf(view.value)]! : answerText(view),
  );
}

function outputPlaces(book: Book, also: readonly Place[]): Place[] {
  const named = namedCells(book).map(({ place }) => place);
  const worked = named.filter(({ page, row, column }) => isFormula(typedAt(book, page, row, column)));
  const known = new Set(worked.map((place) => fullAddress(book, place)));
  return [...worked, ...also.filter((place) => !known.has(fullAddress(book, place)))];
}
