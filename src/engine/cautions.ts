/** Cautions about a wearer's safety: they stand with the figure that a function gives, and with whatever is worked out from it. */
import { catalogue } from "../../functions/catalogue.ts";
import { BONING, CORDS, FLAME, HOOPS, LACING } from "../../functions/cautions.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase, translated } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { Users } from "./dependents.ts";
import type { Engine } from "./engine.ts";
import { areasOf, cellsIn } from "./references.ts";

/** What may press on the body or catch goes along with every figure; what concerns cloth near a flame is said of the garment's own figures. */
const GOES_ON = [LACING, BONING, CORDS, HOOPS];
const ALL = [...GOES_ON, FLAME];

/** A caution as it is written beside a figure. */
export const careText = (caution: string): string => phrase`Take care: ${translated(caution)}`;

/** How a caution begins that holds for garments smaller than the body. */
const CONDITION = "Where ";

type Found = ReadonlyMap<string, ReadonlySet<string>>;

const revisions = rememberWithObject<Book, { found: Found | null }>();

/** The cautions of a cell, those of its own functions and of the figures that it rests on, each once. */
export function cautionsAt(engine: Engine, places: readonly Place[]): string[] {
  const revision = revisions(engine.worked, () => ({ found: null }));
  revision.found ??= allCautions(engine);
  const { found } = revision;
  const here = places.flatMap((place) => [...(found.get(placeKey(place)) ?? [])]);
  return ALL.filter((caution) => here.includes(caution));
}

/** The same for a formula that stands in no cell. */
export function cautionsIn(engine: Engine, formula: string): string[] {
  const { value } = { value: null, ...engine.evaluate(formula) };
  const isBelow = (typeof value === "number" && value < 0) || /-\s*\d/.test(formula);
  const own = namesIn(formula)
    .map((name) => catalogue.get(name)?.cautions ?? "")
    .filter((text) => isBelow || !text.startsWith(CONDITION));
  const cells = areasOf(engine.worked, formulaTree(formula), 0).flatMap((area) =>
    cellsIn(engine.worked, area),
  );
  const behind = cautionsAt(engine, cells);
  return ALL.filter((caution) => behind.includes(caution) || own.some((text) => text.includes(caution)));
}

function allCautions(engine: Engine): Found {
  const book = engine.worked;
  const found = new Map<string, Set<string>>();
  const note = ({ key, caution }: { key: string; caution: string }): boolean => {
    const here = found.get(key) ?? new Set();
    found.set(key, here);
    const isNew = !here.has(caution);
    here.add(caution);
    return isNew;
  };
  const users = new Users(book);
  for (const { place, cautions } of sources(engine))
    for (const caution of cautions) {
      const waiting = [place];
      for (let next = waiting.pop(); next; next = waiting.pop()) {
        if (!note({ key: placeKey(next), caution }) || !GOES_ON.includes(caution)) continue;
        for (const user of users.of(next)) waiting.push(user.place);
      }
    }
  return found;
}

const CALLED = /[A-Za-z][A-Za-z0-9_.]*(?=\s*\()/g;

const namesIn = (formula: string): string[] => [
  ...new Set((formula.match(CALLED) ?? []).map((name) => name.toUpperCase())),
];

/** The cells whose own functions have such cautions. */
function sources(engine: Engine): { readonly place: Place; readonly cautions: readonly string[] }[] {
  return engine.worked.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((_, column) => {
        const place = { page, row, column };
        const typed = typedAt(engine.worked, page, row, column);
        if (!isFormula(typed)) return [];
        const cautions = namesIn(typed).flatMap((name) => cautionsOf(engine, place, name));
        return cautions.length > 0 ? [{ place, cautions }] : [];
      }),
    ),
  );
}

/** The cautions of one function in a cell. What is said of garments smaller than the body counts where a figure of the call is below zero. */
function cautionsOf(engine: Engine, place: Place, name: string): readonly string[] {
  const text = catalogue.get(name)?.cautions ?? "";
  if (text === "") return [];
  if (text.startsWith(CONDITION)) {
    const isBelow = (value: unknown) => typeof value === "number" && value < 0;
    const calls = engine.calls(place).filter((call) => call.declaration.name === name);
    if (!isBelow(engine.value(place)) && !calls.some(({ args }) => args.some(isBelow))) return [];
  }
  return ALL.filter((caution) => text.includes(caution));
}
