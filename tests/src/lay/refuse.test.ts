import { expect, test } from "vitest";
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Lay, LayCloth, LayPiece, LayQuestion } from "../../../functions/lay.ts";
import { checkLay, quickLay } from "../../../src/lay/plan.ts";
import { refusalOf } from "../../../src/lay/refuse.ts";
import { Search } from "../../../src/lay/search.ts";

const rectangle = (wide: number, high: number): Point[] => [
  [0, 0],
  [wide, 0],
  [wide, high],
  [0, high],
];
const piece = (name: string, outline: readonly Point[], quantity = 1): LayPiece => ({
  name,
  outline,
  quantity,
  turns: [0, 180],
});
const ask = (pieces: LayPiece[], cloths: LayCloth[]): LayQuestion => ({ pieces, cloths, gap: 0, repeat: 0 });
const pieces = [piece("cape", rectangle(40, 60)), piece("cuff", rectangle(10, 6), 4)];

test("a piece too wide for cloth still to be bought refuses the lay, for no length would do", () => {
  expect(refusalOf(ask(pieces, [{ name: "the cloth", width: 54, length: null }]))).toMatch(
    /^cape is 6 wider than the cloth: it needs 60 across and has 54/,
  );
});

test("a piece too wide for the cloth in hand is missing from the lay, and the others are laid, by a search too", () => {
  for (const cloths of [
    [{ name: "chest", width: 54, length: 90 }],
    [
      { name: "chest", width: 54, length: 20 },
      { name: "attic", width: 45, length: 70 },
    ],
  ]) {
    const question = ask(pieces, cloths);
    const quick = quickLay(question) as Lay;
    expect(quick.missing).toEqual([[0, 1]]);
    expect(quick.placements).toHaveLength(4);
    expect(checkLay(question, quick)).toEqual([]);
    const search = new Search(question, { seed: 1, rounds: 50, start: quick });
    search.run({ rounds: 50 });
    expect(search.best!.missing).toEqual([[0, 1]]);
  }
});

test("an outline that lies on one line has no area; one that goes out a billion is not in inches", () => {
  const cloth = [{ name: "the cloth", width: 54, length: null }];
  const flat: Point[] = [
    [0, 0],
    [3, 3],
    [9, 9],
    [6, 6],
  ];
  expect(refusalOf(ask([piece("tape", flat)], cloth))).toBe("the outline of tape has no area");
  expect(refusalOf(ask([piece("train", rectangle(2e9, 3))], cloth))).toBe(
    "the outline of train has a point farther out than 1000000000: give it in inches or centimetres",
  );
});
