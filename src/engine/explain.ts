/** The working of a cell: how its figure came about, step by step, and what it rests on. */

import { isBlock } from "../../functions/block.ts";
import { withDecimalMark } from "../../functions/decimal.ts";
import type { Cell, Declaration, Kind } from "../../functions/define.ts";
import type { Shape } from "../../functions/drawing/shapes.ts";
import { remember, rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { type Argument, explain as explainCall, isRefused } from "../../functions/run.ts";
import { type Place, placeKey } from "../book/address.ts";
import { type Tree, treeOf } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { besideText } from "./beside-answer.ts";
import type { Engine } from "./engine.ts";
import { kindOfTree } from "./kind-of-tree.ts";
import { labelOf } from "./label.ts";
import { sharedOut } from "./shared-out.ts";
import { plainNumber, type Rule, show } from "./show.ts";
import type { CellProblem } from "./view.ts";

export interface ShownGiven {
  readonly name: string;
  readonly shown: string;
  /** A range is a list of values. */
  readonly value: Argument;
  readonly kind: Kind;
}

export interface ShownStep {
  readonly name: string;
  /** The rule over names, or a sentence. */
  readonly rule: string;
  /** The rule with the figures in it; the sentence again for a figure that was measured. */
  readonly filled: string;
  readonly shown: string;
  readonly value: number | string;
  readonly kind: Kind;
  readonly formula: boolean;
  /** Where equal parts as shown do not add up to the whole as shown, and what does; null else. */
  readonly parts: string | null;
}

/** One call of a sewing function in the cell's formula. */
export interface CallWorking {
  readonly declaration: Declaration;
  readonly given: readonly ShownGiven[];
  readonly steps: readonly ShownStep[];
  /** The answer as a cell shows it, or why it has no answer. */
  readonly answer: string;
  /** Null when it is refused. */
  readonly value: Cell;
  readonly refused: boolean;
  readonly shapes: readonly Shape[];
  /** Why it has no drawing although its function draws, in a sentence; "" else. */
  readonly undrawn: string;
}

export interface Working {
  readonly place: Place;
  readonly address: string;
  readonly name: string | undefined;
  /** The words of its row or column; null for a cell without them. */
  readonly label: string | null;
  readonly typed: string;
  readonly shown: string;
  readonly value: Cell;
  readonly kind: Kind;
  readonly problem: CellProblem | null;
  /** Where equal parts as shown do not add up to the whole as shown, and what does; null else. */
  readonly parts: string | null;
  readonly calls: readonly CallWorking[];
  readonly restsOn: readonly Place[];
}

/** The drawing, the working and their words ask for the same cells of one revision. */
const revisions = rememberWithObject<Engine, { book: Book; readonly cells: Map<string, Working> }>();

/** The working of one cell. */
export function explain(engine: Engine, place: Place): Working {
  const revision = revisions(engine, () => ({ book: engine.book, cells: new Map() }));
  if (revision.book !== engine.book) {
    revision.book = engine.book;
    revision.cells.clear();
  }
  const key = placeKey(place);
  let working = revision.cells.get(key);
  if (!working) {
    working = workingOf(engine, place);
    revision.cells.set(key, working);
  }
  return working;
}

function workingOf(engine: Engine, place: Place): Working {
  const view = engine.view(place);
  const calls = engine.calls(place).map(({ declaration, args }) => callWorking(engine, declaration, args));
  return {
    place,
    address: engine.address(place),
    name: view.name,
    label: labelOf(engine.book, place),
    typed: view.typed,
    shown: view.shown,
    value: view.value,
    kind: view.kind,
    problem: view.problem,
    parts: besideText(engine, place) || null,
    calls,
    restsOn: engine.restsOn(place),
  };
}

/** From cut to tape: a cell, then the cells it rests on, each once, the typed ones last. */
export function chainPlaces(engine: Engine, place: Place, most = 200): Place[] {
  const done = new Map<string, Place>();
  let wave = [place];
  while (wave.length > 0 && done.size < most) {
    const next: Place[] = [];
    for (const one of wave) {
      const key = placeKey(one);
      if (done.has(key) || done.size >= most) continue;
      done.set(key, one);
      for (const under of engine.restsOn(one)) next.push(under);
    }
    wave = next;
  }
  const typed = (one: Place) => (engine.view(one).worked ? 0 : 1);
  return [...done.values()].toSorted((a, b) => typed(a) - typed(b));
}

/** The workings of these cells, in that order. */
export const chain = (engine: Engine, place: Place, most = 200): Working[] =>
  chainPlaces(engine, place, most).map((one) => explain(engine, one));

function callWorking(engine: Engine, declaration: Declaration, args: readonly Argument[]): CallWorking {
  const rule: Rule = engine.book;
  const { answer, given, steps, shapes, undrawn } = explainCall(declaration, args, engine.setting);
  const kinds = new Map<string, Kind>(
    Object.entries({
      ...declaration.block?.takes,
      ...declaration.twoBlocks?.takes,
      ...declaration.takes,
    }).map(([name, take]) => [name, take.kind]),
  );
  const shownOf = new Map<string, string>();
  /** The numbers that are not lengths, such as counts of parts. */
  const figures = new Map<string, unknown>();
  const shownGiven = Object.entries(given).map(([name, value]): ShownGiven => {
    const kind = kinds.get(name) ?? "figure";
    const shown = showArgument(value, kind, rule);
    shownOf.set(name, shown);
    if (kind !== "length") figures.set(name, value);
    return { name, shown, value, kind };
  });
  const shownSteps = steps.map((step, i): ShownStep => {
    const last = i === steps.length - 1 || step.value === answer;
    const kind =
      last && step.value === answer
        ? declaration.returns
        : step.formula
          ? stepKind(step.rule, kinds)
          : measuredKind(step.name, shapes);
    kinds.set(step.name, kind);
    const shown = show(step.value, kind, rule);
    const filled = step.formula ? withDecimalMark(fill(step.rule, shownOf), rule.decimal) : step.rule;
    shownOf.set(step.name, shown);
    if (kind !== "length") figures.set(step.name, step.value);
    return {
      name: step.name,
      rule: step.rule,
      filled,
      shown,
      value: step.value,
      kind,
      formula: step.formula,
      parts: step.formula && kind === "length" ? partsOfStep(step.rule, step.value, figures, rule) : null,
    };
  });
  const refused = isRefused(answer);
  return {
    declaration,
    given: shownGiven,
    steps: shownSteps,
    answer: refused ? answer.refusal : show(answer, declaration.returns, rule),
    value: refused ? null : answer,
    refused,
    shapes,
    undrawn,
  };
}

/** The sentence for a step that divides by a whole number: "spread / gaps". */
function partsOfStep(
  rule: string,
  value: number | string,
  figures: ReadonlyMap<string, unknown>,
  shown: Rule,
): string | null {
  const by = /^[^/]+ \/ ([A-Za-z_]\w*|\d+)$/.exec(rule)?.[1];
  const count = by === undefined ? null : (figures.get(by) ?? Number(by));
  return typeof value === "number" && typeof count === "number" ? sharedOut(value, count, shown) : null;
}

/** What a measured figure is, by the shape that shows it. */
function measuredKind(name: string, shapes: readonly Shape[]): Kind {
  const shape = shapes.find((one) => "shows" in one && one.shows === name);
  return shape ? MEASURED[shape.kind] : "figure";
}

const MEASURED: Record<Shape["kind"], Kind> = {
  outline: "area", edge: "length", dimension: "length", angle: "angle", marks: "count", note: "figure", layer: "figure",
}; // biome-ignore format: a table

const stepKind = (rule: string, kinds: ReadonlyMap<string, Kind>): Kind =>
  kindOfTree(ruleTree(rule), (leaf) => ("text" in leaf && kinds.get(leaf.text)) || "figure");

/** The rules of the declarations are few and are shown with every Working. */
const remembered = remember<string, Tree>(2000);
const ruleTree = (rule: string): Tree => remembered(rule, () => treeOf(rule));

function showArgument(value: Argument, kind: Kind, rule: Rule): string {
  if (isBlock(value)) return phrase`a list of ${value.length / value.wide} rows`;
  if (!Array.isArray(value)) return showOne(value as Cell, kind, rule);
  const list = value.map((one: Cell) => showOne(one, kind, rule)).filter((shown: string) => shown !== "");
  return list.length > 8 ? `${list.slice(0, 8).join(", ")} … (${list.length})` : list.join(", ");
}

function showOne(value: Cell, kind: Kind, rule: Rule): string {
  if (kind === "share" && typeof value === "number") return plainNumber(value, 4, rule.decimal);
  return show(value, kind, rule);
}

/** A rule with what is shown put in for its names. A tape fraction gets brackets where it stands beside a sign. */
function fill(rule: string, shownOf: ReadonlyMap<string, string>): string {
  return rule.replace(/"[^"]*"|[A-Za-z_][A-Za-z0-9_.]*(?!\s*\()\b/g, (word) => {
    const shown = shownOf.get(word);
    if (shown === undefined) return word;
    return shown.includes(" ") || shown.startsWith("-") ? `(${shown})` : shown;
  });
}
