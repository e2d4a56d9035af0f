/** Which cells can be drawn, and the shapes of one. */

import { worn } from "../../functions/as-worn.ts";
import { catalogue } from "../../functions/catalogue.ts";
import { grainDrawn } from "../../functions/drawing/grain-line.ts";
import { outline, type Shape } from "../../functions/drawing/shapes.ts";
import { pieceBounds, readPiece } from "../../functions/pieces/piece.ts";
import { panelOf, run } from "../../functions/run.ts";
import { convert } from "../../functions/units.ts";
import { goesRound } from "../../functions/worn/skirt.ts";
import type { Worn } from "../../functions/worn/worn-drawing.ts";
import { type Place, placeKey } from "../book/address.ts";
import { isFormula, tokens } from "../book/formula.ts";
import { namedCells } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { bodyAt, cellsBehind } from "./drawn-body.ts";
import type { Engine } from "./engine.ts";
import { explain } from "./explain.ts";
import { cellKey, cellText } from "./label.ts";

export interface Drawn {
  readonly place: Place;
  readonly address: string;
  /** What the cell shows. */
  readonly shown: string;
  readonly shapes: readonly Shape[];
  /** Whether the function that draws gave the cell's value itself, not only a figure that the formula uses. */
  readonly isOfValue: boolean;
}

/** The drawing of a cell: that of the outermost function that draws, or of the piece it holds; null when it has none. */
export function drawnAt(engine: Engine, place: Place): Drawn | null {
  const { address, name, shown, calls, kind } = explain(engine, place);
  const common = { place, address, shown };
  const drawing = calls.findLast(({ shapes }) => shapes.length > 0);
  const value = engine.value(place);
  if (drawing) return { ...common, shapes: drawing.shapes, isOfValue: drawing.value === value };
  if (kind !== "piece" && !(typeof value === "string" && /^\s*M[\s\d.-]/.test(value))) return null;
  try {
    const piece = readPiece(String(value));
    const shapes = [...outline(piece, name ? { label: name } : {}), grainDrawn(piece)];
    return { ...common, shapes, isOfValue: true };
  } catch {
    return null;
  }
}

/** Why a cell has no drawing although its function draws, in a sentence; "" else. */
export const undrawnAt = (engine: Engine, place: Place): string =>
  explain(engine, place).calls.find(({ undrawn }) => undrawn !== "")?.undrawn ?? "";

/** A garment as worn, and the cell whose function makes it. */
export interface WornAt {
  readonly place: Place;
  readonly address: string;
  /** Its name, with its page where several pages have it, else its address. */
  readonly called: string;
  readonly worn: Worn;
  /** The garment may be none: it is drawn as if worn at the waist. */
  readonly asIf: boolean;
}

/** The most cells that are looked through for a garment behind a piece. */
const MAX_PIECES = 40;

/** The garment that a cell's formula makes; for a piece that is made from others (allowances added, joined) the garment nearest behind it. */
export function wornAt(engine: Engine, place: Place): WornAt | null {
  const found = garmentCall(engine, place);
  if (!found) return null;
  const hung = worn(found.declaration, found.args, engine.setting, bodyAt(engine, found.place));
  if (!hung) return null;
  const asIf = canWear(engine, place) === "perhaps";
  const called = cellKey(engine.book, found.place);
  return { place: found.place, address: engine.address(found.place), called, worn: hung, asIf };
}

/**
 * Whether a cell can be drawn as worn, when all is well: "perhaps" when its panel may as well be a cuff,
 * a facing or a guard, as nothing in the book says that it goes round the waist.
 */
export function canWear(engine: Engine, place: Place): "yes" | "perhaps" | "no" {
  const found = garmentCall(engine, place);
  if (!found) return "no";
  const panel = panelOf(found.declaration, found.args, engine.setting);
  if (!panel) return found.declaration.panel ? "perhaps" : "yes";
  const called = [cellText(engine.book, place), cellText(engine.book, found.place)];
  const cm = (figure: number) => convert(figure, "cm", engine.book.unit);
  const isSkirt =
    !called.some((words) => NO_SKIRT.test(words)) && goesRound(panel, seamsAt(engine, found.place), { cm });
  return isSkirt ? "yes" : "perhaps";
}

/** What a panel is called that is no skirt. */
const NO_SKIRT =
  /(^|[^a-z])(cuff|guard|facing|collar|sleeve|band|stay|yoke|frill|ruffle|flounce|binding)s?($|[^a-z])/i;

/** The lengths of what a skirt is sewn to: the wearer's waist, and the book's waist seams that dip. */
function seamsAt(engine: Engine, place: Place): number[] {
  const { book } = engine;
  const seams = [...namedCells(book).map((one) => one.place), ...cellsBehind(engine, place)].filter(
    ({ page, row, column }) => hasCall(typedAt(book, page, row, column), (name) => name === "SEAM_GIRTH"),
  );
  const lengths = seams
    .flatMap((at) => engine.calls(at))
    .filter(({ declaration }) => declaration.name === "SEAM_GIRTH")
    .flatMap(({ declaration, args }) => {
      const seam = run(declaration, args, engine.setting);
      return typeof seam === "number" ? [seam] : [];
    });
  const { waist } = bodyAt(engine, place).known;
  return waist ? [waist.length, ...lengths] : lengths;
}

function garmentCall(engine: Engine, place: Place) {
  const seen = new Set<string>();
  const wave = [place];
  for (let one = wave.shift(); one && seen.size < MAX_PIECES; one = wave.shift()) {
    const key = placeKey(one);
    if (seen.has(key)) continue;
    seen.add(key);
    const call = engine.calls(one).findLast(({ declaration }) => declaration.worn);
    if (call) return { ...call, place: one };
    wave.push(...engine.restsOn(one).filter((under) => engine.view(under).kind === "piece"));
  }
  return null;
}

/** The named cells that have a drawing when all is well, in the order of the book's names. */
export function drawable(book: Book): { name: string; place: Place }[] {
  return namedCells(book).filter(({ place }) => canDraw(book, place));
}

/** Whether a cell has a drawing when all is well: a function in its formula draws. */
export function canDraw(book: Book, { page, row, column }: Place): boolean {
  return hasCall(typedAt(book, page, row, column), (name) => catalogue.get(name)?.draw !== undefined);
}

/** Whether a formula calls a function of which this holds; its name is in capitals. */
const hasCall = (typed: string, holds: (name: string) => boolean): boolean =>
  isFormula(typed) &&
  tokens(typed).some(({ kind, text }) => kind === "function" && holds(text.toUpperCase()));

/** What is drawn before anything is chosen: the named piece that takes the most room, which is no waistband; of equals the last. */
export function finishedPiece(engine: Engine): Place | null {
  let largest: { readonly place: Place; readonly room: number } | null = null;
  for (const { place } of namedCells(engine.book)) {
    const { kind, value } = engine.view(place);
    if (kind !== "piece" || typeof value !== "string") continue;
    const room = roomOf(value);
    if (!largest || room >= largest.room) largest = { place, room };
  }
  return largest?.place ?? null;
}

/**
 * The cell that is drawn: the chosen one when it has a drawing; else the one drawn before stays, unless
 * what stands there now draws nothing, as after rows or pages moved; else the book's own piece.
 */
export function subjectOf(engine: Engine, chosen: Place, last: Place | null): Place | null {
  const hasDrawing = (place: Place) => canDraw(engine.book, place) || drawnAt(engine, place) !== null;
  if (hasDrawing(chosen)) return chosen;
  return last && last.page < engine.book.pages.length && hasDrawing(last) ? last : finishedPiece(engine);
}

/** The area of the box round a piece; 0 for what can't be read as one. */
function roomOf(path: string): number {
  try {
    const { left, right, low, high } = pieceBounds(readPiece(path));
    return (right - left) * (high - low);
  } catch {
    return 0;
  }
}
