/** What random formulas are put together from. */
import type { Random } from "./random.ts";

const FIGURES = [
  "0", "1", "-1", "2", "0.5", "3", "10", "100", "1e3", "1e5", "1e6", "1e9", "1e15", "1e308", "-1e308", "1e-308",
  "5e-324", "2147483648", "-2147483648", "9007199254740993", "0.1", "-0.5", "170", "1024", "45000", "36 1/2", "1/3",
]; // biome-ignore format: a list
const TEXTS = [
  '""', '"x"', '"1e9"', '"*a*b*c*"', '"????"', '"~"', '"2026-05-04"', '"1+2i"', '"MCMXC"', '"TRUE"', '"B1"', '">0"',
  '"<>"', '"0.000"', '"#,##0"', '"ä\\"', '"a""b"', '"NaN"', '"__proto__"', '"constructor"', '"hem"', '"zz"', '"-"',
]; // biome-ignore format: a list
const CELLS = [
  "B1", "B2", "B3", "B4", "$B$5", "hem", "B1:B3", "B1:C3", "B:B", "A:Z", "1:1", "2:5", "B9:B2", "C3:B1", "Measure!B1",
  "Draft!A1:C9", "Nowhere!B1", "ZZ99", "B20001", "D1", "D:D", "Cut!A:A",
]; // biome-ignore format: a list
const ODD = [
  "", "{1;2|3;4}", "{}", "{1;2}", "NA()", "1/0", "TRUE()", "FALSE()", "SEQUENCE(3)", "SEQUENCE(1000;3)", 'REPT("x";300)',
  'REPT("a*";20)', 'REPT("1";300)', "TODAY()", "PI()", "-B1", "B1%", "(B1)", "#REF!", "__proto__", "0:5", "{B1}",
]; // biome-ignore format: a list

/** An argument: a figure, a text, cells, something odd, or a call. */
export function argument(random: Random, names: readonly string[], depth = 1): string {
  const what = random.next();
  if (what < 0.4) return random.pick(FIGURES);
  if (what < 0.55) return random.pick(TEXTS);
  if (what < 0.8) return random.pick(CELLS);
  if (what < 0.93 || depth === 0) return random.pick(ODD);
  return call(random, names, depth - 1);
}

/** A call of one of these functions with up to six arguments. */
export function call(random: Random, names: readonly string[], depth = 1): string {
  const count = random.pick([0, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 5, 6]);
  return `${random.pick(names)}(${random.many(count, () => argument(random, names, depth)).join(";")})`;
}
