/** Help texts, made from a declaration alone. */

import { isBlock } from "./block.ts";
import type { Block, BlockForm, Declaration, Example, Kind, Take } from "./define.ts";
import { tapeText } from "./fractions.ts";
import { limitText } from "./limits.ts";
import { numberText } from "./number-text.ts";
import { phrase, shown } from "./phrase.ts";
import { BOOK_UNITS, fromTape, type Unit } from "./units.ts";

/** `SPREAD_PER_GAP(top; hem; sections; [edge_share = 0.5])` */
export function signature(declaration: Declaration): string {
  const takes = Object.entries(declaration.takes).map(([name, take]) => argumentText(name, take));
  return `${declaration.name}(${takes.join("; ")})`;
}

/** The other way to write the arguments, as one block with headings; null for a function without one. */
export const blockSignature = ({ name, block }: Pick<Declaration, "name" | "block">): string | null =>
  block
    ? `${name}(${Object.entries(block.takes)
        .map(([one, take]) => argumentText(one, take))
        .join("; ")})`
    : null;

/** The signatures of all forms that begin with a block. */
export const blockSignatures = ({ name, block, twoBlocks }: Declaration): string[] =>
  [block, twoBlocks].flatMap((form) => (form ? [blockSignature({ name, block: form })!] : []));

/** `top`, or `[edge_share = 0.5]` for one that may be left out. */
export function argumentText(name: string, take: Take): string {
  if (take.otherwise === undefined) return name;
  return isDecided(take) ? `[${name}]` : `[${name} = ${literal(take.otherwise)}]`;
}

/** Whether the default can't be written as one value: the function decides, or it is a length that differs by unit. */
export const isDecided = ({ otherwise }: Take): boolean =>
  otherwise === null || typeof otherwise === "object";

function literal(value: unknown): string {
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value);
}

/** An example as a formula; a range of cells is written as an array. */
export function exampleFormula(declaration: Declaration, example: Example): string {
  if (example.formula) return example.formula;
  const names = Object.keys(declaration.takes);
  const last = names.findLastIndex((name) => name in example.given);
  const args = names.slice(0, last + 1).map((name) => {
    const value = example.given[name];
    if (value === undefined || value === null) return "";
    if (isBlock(value)) return blockText(value);
    return Array.isArray(value)
      ? `{${value.map((one) => (one === null ? '""' : literal(one))).join("|")}}`
      : literal(value);
  });
  return `=${declaration.name}(${args.join("; ")})`;
}

/** A block as an array: its columns separated by ;, its rows by |. */
function blockText(block: Block): string {
  const rows = Array.from({ length: block.length / block.wide }, (_, i) =>
    block.slice(i * block.wide, (i + 1) * block.wide),
  );
  const texts = rows.map((row) => row.map((one) => (one === null ? '""' : literal(one))).join("; "));
  return `{${texts.join(" | ")}}`;
}

/** The kinds of value in a reader's words, one and a range of cells of it. */
const KINDS: Record<Kind, { readonly one: string; readonly range: string }> = {
  length: { one: phrase`length`, range: phrase`range of lengths` },
  area: { one: phrase`area`, range: phrase`range of areas` },
  count: { one: phrase`whole number`, range: phrase`range of whole numbers` },
  share: { one: phrase`share`, range: phrase`range of shares` },
  angle: { one: phrase`angle`, range: phrase`range of angles` },
  days: { one: phrase`date or days`, range: phrase`range of dates or days` },
  money: { one: phrase`price`, range: phrase`range of prices` },
  figure: { one: phrase`number`, range: phrase`range of numbers` },
  flag: {
    one: phrase`${"TRUE"} or ${"FALSE"}`,
    range: phrase`range of ${"TRUE"} or ${"FALSE"}`,
  },
  text: { one: phrase`text`, range: phrase`range of texts` },
  piece: { one: phrase`piece`, range: phrase`range of pieces` },
  edge: { one: phrase`name or number of an edge`, range: phrase`range of names or numbers of edges` },
  verdict: { one: phrase`verdict`, range: phrase`range of verdicts` },
  block: { one: phrase`block with headings`, range: phrase`range of blocks with headings` },
};

/** A kind of value in a reader's words. */
export const kindText = (kind: Kind): string => KINDS[kind].one;

/** What an argument may be: "length, 3/8 to 400 in". */
export function allowed(take: Take, unit: Unit): string {
  const { kind, from, to, usual, choices, otherwise } = take;
  const words = [take.many ? KINDS[kind].range : KINDS[kind].one];
  if (choices) words.push(shown(choices.join(" / ")));
  const range = rangeText(from, to, kind, unit);
  if (range) words.push(range);
  if (usual) words.push(phrase`usually ${rangeText(...usual, kind, unit)}`);
  if (typeof otherwise === "object" && otherwise !== null)
    words.push(phrase`${withUnit(tapeFigure(fromTape(otherwise, unit), unit), kind, unit)} when left out`);
  return words.join(", ");
}

/** A figure of this kind with its unit: "400 in". */
function withUnit(figure: string, kind: Kind, unit: Unit): string {
  if (kind === "length") return `${figure} ${unit}`;
  if (kind === "area") return phrase`${figure} sq ${unit}`;
  return kind === "angle" ? `${figure}°` : figure;
}

/** A length as its tape shows it: "3/16", "0.5". */
const tapeFigure = (length: number, unit: Unit): string =>
  BOOK_UNITS[unit].tape === "in" ? tapeText(length, unit, "1/32") : String(length);

function rangeText(from: number | undefined, to: number | undefined, kind: Kind, unit: Unit): string {
  const figure = (limit: number) => limitText(limit, kind, unit);
  const last = (limit: number) => withUnit(figure(limit), kind, unit);
  if (from !== undefined && to !== undefined) return phrase`${figure(from)} to ${last(to)}`;
  if (from !== undefined) return phrase`from ${last(from)}`;
  return to === undefined ? "" : phrase`up to ${last(to)}`;
}

/** The whole help of a function as plain text. */
export function helpText(declaration: Declaration, unit: Unit): string {
  const takes = Object.entries(declaration.takes);
  const width = Math.max(...takes.map(([name]) => name.length));
  const lines = [
    ...blockSignatures(declaration),
    signature(declaration),
    declaration.summary,
    "",
    ...takes.map(([name, take]) => {
      const left =
        take.otherwise === undefined
          ? ""
          : isDecided(take)
            ? take.otherwise === null
              ? `; ${phrase`may be left out`}`
              : ""
            : `; ${phrase`${literal(take.otherwise)} when left out`}`;
      return `  ${name.padEnd(width)}  ${take.about} (${allowed(take, unit)}${left})`;
    }),
    ...(declaration.usual ?? []).map(
      (one, i) =>
        `  ${(i === 0 ? phrase`usually` : "").padEnd(width)}  ${typeof one === "string" ? one : one.rule}`,
    ),
    `  ${phrase`gives`.padEnd(width)}  ${kindText(declaration.returns)}`,
    "",
    ...declaration.examples.map(
      (example) => `  ${exampleFormula(declaration, example)}  ${answerText(example)}   ${example.because}`,
    ),
    "",
    ...listsHelp(declaration),
    ...(declaration.block ? [...blockHelp(declaration.block, unit), ""] : []),
    ...(declaration.twoBlocks?.examples.map(({ formula, because }) => `  ${formula}   ${because}`) ?? []),
    phrase`Source: ${declaration.source}`,
  ];
  if (declaration.cautions) lines.push(`${phrase`Take care:`} ${declaration.cautions}`);
  return lines.join("\n");
}

/** The headings of the lists that a function reads by them, a line for each, and a line between the lists. */
export const listsHelp = ({ takes, twoBlocks }: Declaration): string[] =>
  Object.entries({ ...twoBlocks?.takes, ...takes }).flatMap(([name, { list }]) =>
    list
      ? [
          phrase`The headings of ${name}, in any order and case; other columns are passed over:`,
          ...Object.values(list.columns).map(
            ({ headings, about, needed }) =>
              `  ${headings.join(", ")}: ${about}${needed ? "" : `; ${phrase`may be left out`}`}`,
          ),
          "",
        ]
      : [],
  );

/** The arguments and the headings of a list that is read by them. */
export function blockHelp({ takes, columns, examples }: BlockForm, unit: Unit): string[] {
  const heads = Object.values(columns).map(({ headings, about }) => [headings.join(", "), about] as const);
  return [
    phrase`With the list as one block, whose headings say what each column is:`,
    ...Object.entries(takes).map(([name, take]) => `  ${name}: ${take.about} (${allowed(take, unit)})`),
    phrase`Its headings, in any order and case:`,
    ...heads.map(([headings, about]) => `  ${headings}: ${about}`),
    ...examples.map(({ formula, because }) => `  ${formula}   ${because}`),
  ];
}

function answerText({ gives }: Example): string {
  if (typeof gives === "number") return numberText(gives, 9);
  if (typeof gives === "string") return `"${gives}"`;
  return Object.entries(gives)
    .map(
      ([name, value]) =>
        `${name} ${Array.isArray(value) ? value.map((one) => numberText(one)).join(", ") : numberText(value as number, 9)}`,
    )
    .join(", ");
}
