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
    /^cape is 6 wider than the cloth: it needs 60 across, and the cloth is 54 wide/,
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

test("each sentence about a lay says its lengths as the tape of the question does", () => {
  const cloth = { name: "the cloth", width: 53.98, length: null };
  const crossed: Point[] = [
    [0, 0],
    [9.37, 9.37],
    [9.37, 0],
    [0, 5.31],
  ];
  const faulty: LayQuestion[] = [
    ask([piece("cape", rectangle(40, 60.37))], [cloth]),
    ask([piece("cape", rectangle(40, 60.37))], [cloth, { ...cloth, name: "the scrap", width: 20 }]),
    ask([piece("star", crossed)], [cloth]),
    ask([piece("cuff", rectangle(10, 6))], [{ ...cloth, outline: crossed }]),
    { ...ask([piece("cuff", rectangle(10, 6))], [cloth]), gap: -0.37 },
    { ...ask([piece("cuff", rectangle(10, 6))], [cloth]), repeat: -0.37 },
    { ...ask([piece("cuff", rectangle(10, 6))], [cloth]), repeat: 0.0137 },
    ask([piece("cuff", rectangle(10, 6))], [{ ...cloth, width: -0.37 }]),
    ask([piece("cuff", rectangle(10, 6))], [{ ...cloth, length: -0.37 }]),
  ];
  for (const question of faulty) {
    const inches = refusalOf({ ...question, tape: { unit: "in", mark: "1/8" } });
    expect(inches).toMatch(/\d in\b/);
    if (question.repeat !== 0.0137) expect(inches).not.toMatch(/\d\.\d/);
    expect(refusalOf({ ...question, tape: { unit: "cm", mark: "1 mm" } })).toMatch(/\d cm\b/);
  }
  expect(refusalOf({ ...faulty[0]!, tape: { unit: "in", mark: "1/8" } })).toBe(
    "cape is 6 3/8 in wider than the cloth: it needs 60 3/8 in across, and the cloth is 54 in wide; turn it, cut it in two or take a wider cloth",
  );
  const cuffs = ask([piece("cuff", rectangle(10, 6), 2)], [cloth]);
  const lay: Lay = {
    placements: [0, 1].map((copy) => ({ piece: 0, copy, cloth: 0, turn: 0, x: copy * 9.62, y: 50 })),
    lengths: [19.62],
    density: 120 / (19.62 * 53.98),
    missing: [],
  };
  expect(checkLay({ ...cuffs, tape: { unit: "in", mark: "1/8" } }, lay)).toEqual([
    "cuff 1 lies 2 in outside the cloth at its upper selvedge",
    "cuff 2 lies 2 in outside the cloth at its upper selvedge",
    "cuff 1 overlaps cuff 2 by about 3/8 in",
  ]);
});
