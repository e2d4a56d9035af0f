import { expect, test } from "vitest";
import { NamedAreas } from "../../../src/engine/named-areas.ts";
import { type Area, isIn } from "../../../src/engine/references.ts";
import { Random } from "../../attack/random.ts";

test("the formulas that name an area around a cell are found wherever the area begins and ends, and however tall it is", () => {
  const random = new Random(7);
  const areas = random.many(400, (): Area => {
    const top = random.below(1500);
    const tall = random.pick([0, 1, 5, 63, 64, 65, 200, 255, 256, 900, Number.POSITIVE_INFINITY]);
    const left = random.below(4);
    return { page: random.below(2), top, left, bottom: top + tall, right: left + random.below(3) };
  });
  const named = new NamedAreas();
  for (const [formula, area] of areas.entries()) named.add(area, formula);
  let found = 0;
  for (let i = 0; i < 2000; i += 1) {
    const at = { page: random.below(2), row: random.below(1600), column: random.below(6) };
    const users: number[] = [];
    named.eachUser(at, (formula) => void users.push(formula));
    const expected = [...areas.keys()].filter((formula) => isIn(areas[formula]!, at));
    expect(users.sort((a, b) => a - b)).toEqual(expected);
    found += users.length;
  }
  expect(found).toBeGreaterThan(1000);
});
