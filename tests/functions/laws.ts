/** What every declared function must keep, as functions that the law tests call. */
import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { defaultValue } from "../../functions/arguments.ts";
import { asBlock, isBlock, listOf } from "../../functions/block.ts";
import type { Block, Cell, Declaration, Example, PieceMeasures, Take } from "../../functions/define.ts";
import { edgeLength, pieceArea, pieceBounds, readPiece } from "../../functions/pieces/piece.ts";
import type { Argument, Explanation, Setting } from "../../functions/run.ts";
import { convert, type Unit } from "../../functions/units.ts";
import { engineConfig } from "../../src/engine/config.ts";
import { quickLay } from "../../src/lay/quick.ts";

export const setting = (unit: Unit): Setting => ({ unit, plan: quickLay });

const engines = new Map<Unit, HyperFormula>();

/** The engine's answer to a formula without cell references. */
export function evaluate(formula: string, unit: Unit): unknown {
  let engine = engines.get(unit);
  if (!engine) {
    engine = HyperFormula.buildFromArray([[]], engineConfig(setting(unit)));
    engines.set(unit, engine);
  }
  return engine.calculateFormula(formula, 0);
}

/** The arguments of an example in the order the function takes them. */
export function argumentsOf(declaration: Declaration, example: Example): Argument[] {
  return Object.keys(declaration.takes).map((name) => example.given[name] ?? null);
}

function literal(value: Argument | number | string): string {
  if (value === null) return '""';
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE()" : "FALSE()";
  if (typeof value === "number") return value < 0 ? `(${value})` : String(value);
  return `{${value.map((one) => literal(one)).join("|")}}`;
}

/** A step's rule with the figures put in for the names. */
export function withFigures(rule: string, { given, steps }: Explanation): string {
  const known = new Map<string, Argument | number | string>(Object.entries(given));
  for (const step of steps) known.set(step.name, step.value);
  const filled = rule.replace(/"[^"]*"|[A-Za-z_][A-Za-z0-9_.]*(?!\s*\()\b/g, (word) =>
    known.has(word) ? literal(known.get(word)!) : word,
  );
  return `=${filled}`;
}

/** The measures of a piece given as path data. */
export function measuresOf(path: string): Required<PieceMeasures> {
  const piece = readPiece(path);
  const box = pieceBounds(piece);
  return {
    area: pieceArea(piece),
    width: box.right - box.left,
    length: box.high - box.low,
    edges: piece.edges.map(edgeLength),
  };
}

/** A value of an argument with each of its cells changed; the cells of a list by what their column holds. */
export function changed(
  value: Argument,
  take: Take,
  change: (cell: Cell, kind: Take["kind"]) => Cell,
): Argument {
  if (take.list && isBlock(value)) {
    const { columns, headings } = listOf(value, take.list);
    const kinds = new Map([...columns].map(([field, at]) => [at, take.list!.columns[field]!.take.kind]));
    const cells = value.map((cell, i) => change(cell, kinds.get(i % value.wide) ?? "text"));
    return asBlock(cells, value.wide, value.headings.length > 0 ? value.headings : headings);
  }
  if (isBlock(value)) return value;
  return Array.isArray(value)
    ? value.map((cell) => change(cell, take.kind))
    : change(value as Cell, take.kind);
}

const LENGTHS = { least: 0.1, most: 300 };

/** Any value a declared argument may have, lengths in centimetres. Pieces and texts come from the examples. */
function arbitrary(name: string, take: Take, declaration: Declaration): fc.Arbitrary<Argument> {
  const seen = declaration.examples
    .map((example) => example.given[name])
    .filter((value) => value !== undefined);
  const one = (): fc.Arbitrary<Cell> => {
    if (take.choices) return fc.constantFrom(...take.choices);
    if (take.kind === "flag") return fc.boolean();
    if (take.kind === "piece" || take.kind === "text" || take.kind === "verdict") {
      const values = seen.flatMap((value) => (Array.isArray(value) ? value : [value])) as Cell[];
      return values.length > 0 ? fc.constantFrom(...values) : fc.constant("skirt");
    }
    if (take.kind === "edge") return fc.integer({ min: 1, max: 8 });
    // Dates are days up to fourteen years from those of the examples.
    const dates = seen.filter((value): value is number => take.kind === "days" && Number(value) > 10_000);
    if (dates.length > 0)
      return fc.double({ min: Math.min(...dates) - 5000, max: Math.max(...dates) + 5000, noNaN: true });
    const from = take.from ?? (take.kind === "count" ? 0 : -1000);
    const to = take.to ?? 1000;
    if (take.kind === "count") return fc.integer({ min: from, max: Math.min(to, from + 60) });
    // Lengths of a garment's size, of either sign where both are allowed.
    const most = take.kind === "length" ? LENGTHS.most : 1000;
    const least = take.kind === "length" ? Math.max(from, -most) : from;
    return fc.double({ min: least, max: Math.min(to, Math.max(least + most, most)), noNaN: true });
  };
  if (take.kind === "block") {
    const blocks = fc.constantFrom(...(seen as Argument[]));
    return take.otherwise === undefined ? blocks : fc.option(blocks, { nil: null, freq: 3 });
  }
  if (take.many) return fc.array(one(), { minLength: 1, maxLength: 8 });
  return take.otherwise === undefined ? one() : fc.option(one(), { nil: null, freq: 3 });
}

/** Random arguments inside the declared ranges, lengths in centimetres. */
export function anyArguments(declaration: Declaration): fc.Arbitrary<Argument[]> {
  return fc.tuple(
    ...Object.entries(declaration.takes).map(([name, take]) => arbitrary(name, take, declaration)),
  );
}

/** Arguments like those of an example, in centimetres: as they are, or every length a little longer or shorter, all of them alike. */
export function argumentsNearExamples(declaration: Declaration): fc.Arbitrary<Argument[]> {
  const examples = declaration.examples.map((example) =>
    inUnit(declaration, argumentsOf(declaration, example), example.unit ?? "in", "cm"),
  );
  const size = fc.oneof(fc.constant(1), fc.double({ min: 0.9, max: 1.15, noNaN: true }));
  const shake = fc.array(fc.double({ min: 0.999, max: 1.001, noNaN: true }), { minLength: 8, maxLength: 8 });
  return fc.tuple(fc.constantFrom(...examples), size, shake).map(([args, k, shakes]) =>
    Object.values(declaration.takes).map((take, i) => {
      const change = (value: Cell, kind: Take["kind"]): Cell => {
        const power = { length: 1, area: 2 }[kind as string] ?? 0;
        if (typeof value === "number")
          return power === 0 || k === 1 ? value : value * k ** power * shakes[i % 8]!;
        return typeof value === "string" && kind === "piece" ? scalePath(value, k) : value;
      };
      return changed(args[i] ?? null, take, change);
    }),
  );
}

/** The same arguments told in another unit: lengths and areas scaled, everything else kept. */
export function inUnit(
  declaration: Declaration,
  args: readonly Argument[],
  from: Unit,
  to: Unit,
): Argument[] {
  const scale = convert(1, from, to);
  return Object.values(declaration.takes).map((take, i) => {
    const change = (value: Cell, kind: Take["kind"]): Cell => {
      if (typeof value === "number" && kind === "length") return value * scale;
      if (typeof value === "number" && kind === "area") return value * scale * scale;
      if (typeof value === "string" && kind === "piece") return scalePath(value, scale);
      return value;
    };
    // A usual length that is left out is another on the other tape.
    if (!take.list && isBlock(args[i]))
      return take.holds === "length" ? scaledBlock(args[i], scale) : args[i];
    const value = args[i] ?? (typeof take.otherwise === "object" ? defaultValue(take, from) : null);
    return changed(value, take, change);
  });
}

/** A block of lengths in another unit; its dates are kept. */
const scaledBlock = (block: Block, scale: number): Block =>
  asBlock(
    block.map((one) => (typeof one === "number" && one < FIRST_DATE ? one * scale : one)),
    block.wide,
    block.headings,
  );

/** Numbers from here on are days of this century, not lengths. */
const FIRST_DATE = 36_500;

/** Path data with every coordinate scaled; flags, the axis turn of arcs, roles of marks and names of edges are kept. */
function scalePath(text: string, scale: number): string {
  const [path = "", ...parts] = text.split("|");
  return [scaleNumbers(path, scale), ...parts].join("|");
}

function scaleNumbers(path: string, scale: number): string {
  return path.replace(/([MLHVCSQTAZ])([^MLHVCSQTAZ]*)/gi, (_, letter: string, numbers: string) => {
    const list =
      numbers.trim() === ""
        ? []
        : numbers
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const scaled = list.map((number, i) =>
      letter.toUpperCase() === "A" && [2, 3, 4].includes(i % 7) ? number : number * scale,
    );
    return `${letter} ${scaled.join(" ")} `;
  });
}

export { scalePath };
