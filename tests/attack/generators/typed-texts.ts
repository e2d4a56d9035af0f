import { COLUMN_KINDS, type ColumnKind } from "../../../src/book/shape.ts";
import { define } from "../generator.ts";
import { argument } from "../pieces-of-formula.ts";
import { bookFault, bookWith } from "../probe.ts";
import type { Random } from "../random.ts";

const PARTS = [
  "1", "2", "16", "3/8", "1/0", "½", ".", ",", ",5", "1.5", "1e9", "e308", "E", "-", "−", "+", "*", "/", "×", "÷", "^", "%", "=",
  "<", ">", "<>", "(", ")", "{", "}", "|", ";", ":", "!", "'", "''", '"', "“", "”", "#", "#REF!", "$", "~", "\\", "@", "&", " ",
  "  ", "\t", "\n", "\u00a0", "\u0000", "\u200b", "\ufeff", "😀", "é", "in", "cm", "mm", "yd", "ft", "m", "inches", "″", "′", "B1",
  "B0", "$B$2", "A:A", "0:5", "2:3", "hem", "SUM", "IF", "TAPE", "Measure!", "'Over skirt'!", "TRUE", "NaN", "Infinity", "null",
  "__proto__", "constructor", "2026-05-04", "2026-13-45", "M 0 0", "L 1 2 Z", "check: ", "waist", "1 yd 9 in", "5' 3\"",
]; // biome-ignore format: a list

function text(random: Random): string {
  const body = random.many(random.between(0, 9), () => random.pick(PARTS)).join("");
  const what = random.next();
  if (what < 0.45) return `=${body}`;
  if (what < 0.6)
    return `=${argument(random, ["SUM", "IF", "TAPE", "IN", "ROUND"])}${random.pick(PARTS)}${body}`;
  if (what < 0.65) return random.pick(PARTS).repeat(random.between(1, 3000));
  return body;
}

interface Case {
  readonly texts: readonly string[];
  readonly kind: ColumnKind;
  readonly unit: "in" | "cm";
}

export const generator = define<Case>({
  name: "typed texts",
  about:
    "40 random texts in a column of any kind, in either unit: a figure, a text or a sentence, and the rest of the book works",
  make: (random) => ({
    texts: random.many(40, () => text(random)),
    kind: random.pick(COLUMN_KINDS),
    unit: random.pick(["in", "cm"]),
  }),
  attempt: ({ texts, kind, unit }) => bookFault(bookWith(texts, kind, unit)),
  longest: 8000,
});
