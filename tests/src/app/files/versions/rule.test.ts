import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  aboveLimit,
  firstToGo,
  givenUp,
  isLarge,
  MOST,
  namingFault,
  RULE,
  SPACING,
  type Version,
} from "../../../../../src/app/files/versions/rule.ts";
import { blankBook } from "../../../../../src/book/shape.ts";
import { changeUnit } from "../../../../../src/store/change-unit.ts";
import { pasteBlock, removePage, typeCells } from "../../../../../src/store/commands.ts";
import type { Command } from "../../../../../src/store/store.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const NOW = 1_800_000_000_000;

const version = (age: number, more: Partial<Version> = {}): Version => ({
  key: `k${age}`,
  book: "b",
  at: NOW - age,
  before: "type in A1",
  bytes: 1000,
  ...more,
});

const lists = fc
  .array(
    fc.record({
      age: fc.integer({ min: 0, max: 400 * DAY }),
      bytes: fc.integer({ min: 1, max: 3_000_000 }),
      named: fc.boolean(),
    }),
    { maxLength: 300 },
  )
  .map((all) =>
    all.map(({ age, bytes, named }, i) =>
      version(age, {
        key: `k${i}`,
        bytes,
        ...(named && i < MOST.named && { name: `no. ${i}`, bytes: Math.ceil(bytes / MOST.named) }),
      }),
    ),
  );

const kept = (list: readonly Version[], now = NOW) => {
  const gone = new Set(givenUp(list, now));
  return list.filter((one) => !gone.has(one));
};

describe("which versions stay", () => {
  it("all of the last hour, an hourly one for a day, a daily one for a month, then a weekly one", () => {
    const within = (list: readonly Version[], from: number, to: number) =>
      list.filter(({ at }) => NOW - at >= from && NOW - at < to).length;
    const every = Array.from({ length: 12 * 24 * 60 }, (_, i) => version(i * SPACING));
    // As a maker works: the rule is applied after each version.
    let list: Version[] = [];
    for (const one of every.toReversed()) list = kept([...list, one], one.at);
    expect(within(list, 0, HOUR)).toBe(12);
    expect(within(list, HOUR, DAY)).toBeGreaterThanOrEqual(22);
    expect(within(list, HOUR, DAY)).toBeLessThanOrEqual(24);
    expect(within(list, DAY, 30 * DAY)).toBeGreaterThanOrEqual(28);
    expect(within(list, DAY, 30 * DAY)).toBeLessThanOrEqual(30);
    expect(within(list, 30 * DAY, 60 * DAY)).toBeGreaterThanOrEqual(4);
    expect(within(list, 30 * DAY, 60 * DAY)).toBeLessThanOrEqual(6);
  });

  it("never more, nor larger, than the limits, and the newest always", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const left = kept(list);
        const plain = left.filter(({ name }) => name === undefined);
        expect(plain.length).toBeLessThanOrEqual(MOST.plain);
        expect(left.filter(({ name }) => name !== undefined)).toHaveLength(
          list.length - list.filter(({ name }) => name === undefined).length,
        );
        const bytes = left.reduce((sum, one) => sum + one.bytes, 0);
        if (plain.length > 1) expect(bytes).toBeLessThanOrEqual(MOST.bytes);
        const newest = [...list].sort((a, b) => b.at - a.at)[0];
        if (newest) expect(left.some(({ at }) => at === newest.at)).toBe(true);
        // Applied again at the same time it gives up no more.
        expect(givenUp(left, NOW)).toEqual([]);
      }),
    );
  });

  it("a version with a name stays when others of its day go", () => {
    const list = [1, 2, 3].map((n) =>
      version(40 * DAY + n, { key: `k${n}`, ...(n === 3 && { name: "first mock-up" }) }),
    );
    expect(kept(list).map(({ key }) => key)).toContain("k3");
    expect(kept(list)).toHaveLength(2);
  });

  it("for room the oldest go first and those with a name last", () => {
    const list = [version(1), version(3 * DAY), version(9 * DAY, { name: "as cut" }), version(2 * DAY)];
    expect(firstToGo(list).map(({ at }) => (NOW - at) / DAY)).toEqual([3, 2, 1 / DAY, 9]);
    const heavy = [1, 2, 3].map((n) => version(n * DAY, { bytes: 40_000_000 }));
    expect(aboveLimit(heavy).map(({ at }) => (NOW - at) / DAY)).toEqual([3]);
  });

  it("a version that does not say its size makes no other go", () => {
    const list = [version(1), version(2), version(3, { bytes: undefined as unknown as number })];
    expect(aboveLimit(list)).toEqual([]);
    expect(givenUp(list, NOW)).toEqual([]);
  });

  it("a name is refused in a sentence when a book has too many, or they are too large", () => {
    const many = Array.from({ length: MOST.named }, (_, i) => version(i + 1, { name: `no. ${i}` }));
    expect(namingFault(many, version(0))).toMatch(/at most 20 versions with a name/);
    expect(namingFault(many, many[0]!)).toBeNull();
    expect(
      namingFault([version(1, { name: "a", bytes: 15_000_000 })], version(0, { bytes: 6_000_000 })),
    ).toMatch(/more than 20 MB/);
  });

  it("the page's words state the limits that hold", () => {
    expect(RULE).toContain(
      `At most ${MOST.plain} versions and ${MOST.bytes / 1e6} MB of each book are kept, and ${MOST.inAll / 1e6} MB`,
    );
    expect(SPACING).toBe(5 * 60_000);
  });
});

describe("a large act", () => {
  const blank = blankBook("Withy Green", "in", "1/8");
  const block = (rows: number, columns: number) =>
    Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_unused, c) => `${r}.${c}`));
  const filled = pasteBlock({ page: 0, row: 0, column: 0 }, block(30, 3)).edit(blank) as typeof blank;
  const large = ({ edit }: Command, book = filled) => isLarge(book, edit(book) as typeof blank);

  it("is a paste of many cells, a page that goes, another unit", () => {
    expect(large(pasteBlock({ page: 1, row: 0, column: 0 }, block(5, 4)))).toBe(true);
    expect(large(removePage(3))).toBe(true);
    expect(large(changeUnit("cm"))).toBe(true);
  });

  it("is not a cell that is typed in, nor a paste of a few cells", () => {
    expect(large(typeCells([{ page: 0, row: 2, column: 1, typed: "7" }]))).toBe(false);
    expect(large(pasteBlock({ page: 1, row: 0, column: 0 }, block(4, 4)))).toBe(false);
  });
});
