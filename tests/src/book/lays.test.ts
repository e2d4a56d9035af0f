import { expect, it } from "vitest";
import { bothLays, MOST_UNASKED, sameState, sameWork, withLay } from "../../../src/book/lays.ts";
import { type Book, blankBook, type FoundLay } from "../../../src/book/shape.ts";

const lay = (length: number): FoundLay => ({ placements: [], length, density: 0.8 });
const hash = (i: number) => i.toString(16).padStart(16, "0");

it("a book keeps every lay its cells ask for, and of the others the newest", () => {
  const asked = new Set([hash(0), hash(3)]);
  let lays: Book["lays"] = {};
  for (let i = 0; i < 2 * MOST_UNASKED; i += 1) lays = withLay(lays, hash(i), lay(i), () => asked);
  const last = 2 * MOST_UNASKED - 1;
  expect(Object.keys(lays)).toHaveLength(MOST_UNASKED + 3);
  expect(lays[hash(0)]).toEqual(lay(0));
  expect(lays[hash(3)]).toEqual(lay(3));
  expect(lays[hash(1)]).toBeUndefined();
  expect(lays[hash(last - MOST_UNASKED)]).toEqual(lay(last - MOST_UNASKED));
  expect(lays[hash(last - MOST_UNASKED - 1)]).toBeUndefined();
});

it("a lay that is found again is the newest again", () => {
  const lays = withLay({ [hash(1)]: lay(1), [hash(2)]: lay(2) }, hash(1), lay(0.5), () => new Set());
  expect(Object.entries(lays)).toEqual([
    [hash(2), lay(2)],
    [hash(1), lay(0.5)],
  ]);
});

it("a lay that a search found is no work, one made by hand is; of both for one question the one by hand stays", () => {
  const base = blankBook("Cloak", "in", "1/8");
  const byHand: FoundLay = { ...lay(2), origin: { by: "hand" } };
  const found = { ...base, lays: { [hash(1)]: lay(1) } };
  const made = { ...base, lays: { [hash(1)]: byHand } };
  expect([sameWork(base, found), sameWork(base, made), sameWork(found, made), sameWork(made, base)]).toEqual([
    true,
    false,
    false,
    false,
  ]);
  expect([sameState(base, { ...base }), sameState(base, found)]).toEqual([true, false]);
  expect(
    bothLays({ [hash(1)]: lay(1), [hash(2)]: lay(2) }, { [hash(1)]: byHand, [hash(2)]: lay(3) }),
  ).toEqual({
    [hash(1)]: byHand,
    [hash(2)]: lay(2),
  });
});
