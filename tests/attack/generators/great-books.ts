import { columnLetters } from "../../../src/book/address.ts";
import { define } from "../generator.ts";
import { bookFault, bookWith } from "../probe.ts";
import type { Random } from "../random.ts";

/** A text of many of the same: what takes time that grows with the square of it shows here. */
function longText(random: Random): string {
  const part = random.pick([
    "1", "0", "9.", "1 ", "1/2 ", "1in", "1 in ", "½", ".", "-", "'", '"', "a", "A1", "_", " ", "\t", "(", ")", "{", "+1", "*B1", ";", "A1:",
    "$", "e", "1e", "1e1", "'a'!", "“", "#", "#REF!", "=", "B1+", "SUM(", ",", "1,2", ":", "é", "😀", "%", "<>", "\\", "M 0 0 ", "L1,2",
  ]); // biome-ignore format: a list
  const text = part.repeat(Math.floor(random.between(5000, 60_000) / part.length));
  const [head, tail] = [
    random.pick(["", "", "=", "=1+", '="', "=SUM(", "=B1*", "check: "]),
    random.pick(["", "x", ")", '"', "in", "%", "!", "1"]),
  ];
  return `${head}${text}${tail}`;
}

/** Many cells that rest on one another. */
function manyCells(random: Random): string[] {
  const count = random.between(200, 2000);
  const cell = (row: number) => `D${(row % count) + 1}`;
  const shape = random.pick<(row: number) => string>([
    (row) => `=${cell(row + 1)}`,
    (row) => `=${cell(row + 1)}+${cell(row + 7)}`,
    (row) => (row === count - 1 ? "1" : `=${cell(row + 1)}+1`),
    (row) => `=SUM(D1:D${Math.max(1, row)})`,
    (row) => `=SUM(B:B)+${row}`,
    (row) => (row % 50 === 0 ? `=VLOOKUP(${row};C:D;2)` : String(row)),
    (row) => (row % 50 === 0 ? `=COUNTIF(D:D;"*1*${row}*")` : String(row)),
    (row) => (row % 40 === 0 ? `=MATCH(${row};D1:D${count};0)` : `a${row}`),
    (row) => (row === 0 ? "=SUM(A:Z)" : row === count - 1 ? "1" : ""),
    (row) => (row === 0 ? `=SUMPRODUCT(D2:D${count};D2:D${count})` : `=B1+${row}`),
  ]);
  return Array.from({ length: count }, (_, row) => shape(row));
}

/** Patterns of many wildcards over long texts. */
function wildcards(random: Random): string[] {
  const letter = random.pick(["a", "ab", "1", "é"]);
  const pattern = `${letter}*`.repeat(random.between(2, 40));
  const call = random.pick([
    "COUNTIF(D1:D20;P)",
    "SUMIF(D1:D20;P;B1:B20)",
    "MATCH(P;D1:D20;0)",
    "SEARCH(P;D1)",
    "XLOOKUP(P;D1:D20;B1:B20;0;2)",
    "COUNTIFS(D1:D20;P)",
    "AVERAGEIF(D1:D20;P)",
  ]);
  const texts = random.many(
    20,
    () => `${letter.repeat(random.between(10, 3000))}${random.pick(["b", "", "c"])}`,
  );
  return [
    ...texts,
    ...random.many(5, () => `=${call.replace("P", `"${random.pick(["", "*"])}${pattern}z"`)}`),
  ];
}

/** Functions that compare all with all. */
function ranges(random: Random): string[] {
  const count = random.between(500, 3000);
  const values = random.many(count, (i) => random.pick([String(i), `t${i}`, String(i % 7)]));
  const whole = random.pick([`D1:D${count}`, "D:D", `A1:${columnLetters(25)}${count}`]);
  const call = random.pick([
    "UNIQUE",
    "SORT",
    "COUNTUNIQUE",
    "MEDIAN",
    "MODE",
    "TRANSPOSE",
    "MMULT",
    "CORREL",
    "SUMSQ",
    "MAXPOOL",
    "MEDIANPOOL",
    "FILTER",
    "ARRAYFORMULA",
    "LARGE",
    "RANK",
    "HSTACK",
    "VSTACK",
    "TEXTJOIN",
    "CONCATENATE",
    "STDEV",
  ]);
  const calls = random.many(
    4,
    () =>
      `=COUNT(${call}(${[whole, ...random.many(random.below(3), () => random.pick([whole, "2", "1"]))].join(";")}))`,
  );
  return [...values, ...calls];
}

export const generator = define<string[]>({
  name: "great books",
  about:
    "long texts, long circles and chains, whole columns, many wildcards, all with all: worked or stopped in good time",
  make: (random) =>
    random.pick([(one: Random) => one.many(3, () => longText(one)), manyCells, wildcards, ranges])(random),
  attempt: (texts) => bookFault(bookWith(texts)),
  longest: 12_000,
});
