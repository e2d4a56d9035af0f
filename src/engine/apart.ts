/**
 * Figures shown beside each other. Where the book's mark would show two of them alike that differ,
 * or a difference that is not the difference of what is shown, all are shown on a finer mark.
 */
import type { Kind } from "../../functions/define.ts";
import { finerMarks, markSize, roundTo, tapeText } from "../../functions/fractions.ts";
import { plainNumber, type Rule, show } from "./show.ts";

/** A way of writing figures: the step it rounds to, and the words. */
interface Writing {
  readonly step: number;
  readonly text: (value: number) => string;
}

/** Differences smaller than this are rounding errors. */
const DUST = 1e-4;

/** From the book's own to the finest. */
function writings(kind: Kind, rule: Rule): Writing[] {
  if (kind !== "length") return [{ step: 0, text: (value) => show(value, kind, rule) }];
  const { unit, mark, decimal } = rule;
  const marks = [mark, ...finerMarks(unit, mark)].map((one) => ({
    step: markSize(one, unit),
    text: (value: number) => tapeText(value, unit, one, decimal),
  }));
  const decimals = [2, 3, 4, 5].map((places) => ({
    step: 10 ** -places,
    text: (value: number) => plainNumber(value, places, decimal),
  }));
  return [...marks, ...decimals.filter(({ step }) => step < markSize(mark, unit))];
}

const differ = (a: number, b: number): boolean => Math.abs(a - b) > DUST;

/** The figures in words, those that differ in different words. */
export function shownApart(values: readonly number[], kind: Kind, rule: Rule): string[] {
  const ways = writings(kind, rule);
  const way =
    ways.find(({ text }) => values.every((a) => values.every((b) => !differ(a, b) || text(a) !== text(b)))) ??
    ways.at(-1)!;
  return values.map(way.text);
}

/** A figure before and after, and what it gained: "31 15/16", "32 1/16", "+1/8"; "none" for no change. */
export function shownChange(
  before: number,
  after: number,
  kind: Kind,
  rule: Rule,
): { readonly before: string; readonly after: string; readonly change: string } {
  const change = after - before;
  const ways = writings(kind, rule);
  const agrees = ({ step }: Writing): boolean => {
    if (step === 0) return true;
    const [a, b, c] = [before, after, change].map((value) => roundTo(value, step)) as [
      number,
      number,
      number,
    ];
    return c !== 0 && Math.abs(b - a - c) < step / 2;
  };
  if (!differ(before, after)) {
    const { text } = ways[0]!;
    return { before: text(before), after: text(before), change: "none" };
  }
  const { text } = ways.find(agrees) ?? ways.at(-1)!;
  const shown = text(Math.abs(change));
  const none = /^[0.,]+$/.test(shown);
  return {
    before: text(before),
    after: text(after),
    change: none ? "none" : `${change < 0 ? "−" : "+"}${shown}`,
  };
}
