/**
 * How far the lays of random garment lists are from what a long search finds: at once, and after 1,
 * 2, 5, 10 and 20 s of two searches with seeds of their own. Seconds are seconds of work of one core,
 * so that a busy machine gives the same table. LAY_LISTS=40 and LAY_REFERENCE=60 choose more.
 */
import { it } from "vitest";
import type { Lay } from "../../functions/lay.ts";
import { checkLay } from "../../src/lay/check.ts";
import { quickLay } from "../../src/lay/plan.ts";
import { Search } from "../../src/lay/search.ts";
import { garmentList } from "../src/lay/garments.ts";

const lists = Number(process.env.LAY_LISTS ?? 10);
const reference = Number(process.env.LAY_REFERENCE ?? 30);
const MARKS = [0, 1, 2, 5, 10, 20].filter((mark) => mark < reference);

/** Milliseconds of work that this process has done. */
const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** The length after each mark's seconds of one search, and at its end. */
function lengthsOf(seed: number, list: number, least: number, most: number): number[] {
  const question = garmentList(list, least, most);
  const start = quickLay(question) as Lay;
  const search = new Search(question, { seed, milliseconds: reference * 1000, start });
  const lengths = [start.lengths[0]!];
  const began = worked();
  for (let done = false; !done && worked() - began < reference * 1000; ) {
    done = search.run({ rounds: 5 });
    while (lengths.length < MARKS.length && worked() - began >= MARKS[lengths.length]! * 1000)
      lengths.push(search.best!.lengths[0]!);
  }
  const best = search.best!;
  const faults = checkLay(question, best, 1e-5);
  if (faults.length > 0) throw new Error(faults.join("; "));
  while (lengths.length <= MARKS.length) lengths.push(best.lengths[0]!);
  return lengths;
}

it.each([
  ["20 to 40 pieces", 20, 40, 1],
  ["3 to 12 pieces", 3, 12, 101],
])("tells how much longer than the best known the lays of lists of %s are", (title, least, most, first) => {
  const gaps = Array.from({ length: lists }, (_, i) => {
    const runs = [1, 2].map((seed) => lengthsOf(seed, first + i, least, most));
    const best = Math.min(...runs.map((lengths) => lengths.at(-1)!));
    return MARKS.map((_, k) => 100 * (Math.min(...runs.map((lengths) => lengths[k]!)) / best - 1));
  });
  const rows = MARKS.map((mark, k) => {
    const sorted = gaps.map((one) => one[k]!).sort((a, b) => a - b);
    const median = sorted[Math.floor(sorted.length / 2)]!.toFixed(2);
    return `${String(mark).padStart(4)} s${median.padStart(10)}${sorted.at(-1)!.toFixed(2).padStart(10)}`;
  });
  console.log(
    [`${title}: % longer than after ${reference} s`, "          median     worst", ...rows].join("\n"),
  );
});
