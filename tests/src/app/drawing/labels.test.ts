import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Label, LINE, placeLabels } from "../../../../src/app/drawing/labels.ts";

const widthOf = (text: string) => 6 * text.length;
const label = (key: string, more: Partial<Label> = {}): Label => ({
  key,
  text: "waist 27 1/2",
  at: [100, 100],
  weight: 1,
  aside: [0, 1],
  upright: false,
  ...more,
});

describe("the words of a drawing", () => {
  it("a word with room stands where it would best be", () => {
    expect(placeLabels([label("a")], widthOf)[0]?.place).toEqual([100, 100]);
  });

  it("of two in one place the weightier stays and the other moves a line aside", () => {
    const placed = placeLabels([label("light"), label("heavy", { weight: 2 })], widthOf);
    expect(placed.map(({ key, place }) => [key, ...place])).toEqual([
      ["heavy", 100, 100],
      ["light", 100, 100 + LINE],
    ]);
  });

  it("no word ever lies over another", () => {
    const labels = fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 300 }),
        y: fc.integer({ min: 0, max: 200 }),
        text: fc.string({ maxLength: 20 }),
        upright: fc.boolean(),
        weight: fc.nat(9),
      }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(labels, (list) => {
        const wanted = list.map(({ x, y, ...more }, i) => label(`${i}`, { at: [x, y], ...more }));
        const placed = placeLabels(wanted, widthOf).map(({ text, upright, place: [x, y] }) => {
          const [halfX, halfY] = upright ? [LINE / 2, widthOf(text) / 2] : [widthOf(text) / 2, LINE / 2];
          return { left: x - halfX, right: x + halfX, low: y - halfY, high: y + halfY };
        });
        placed.forEach((a, i) => {
          for (const b of placed.slice(i + 1)) {
            const apart = a.right <= b.left || b.right <= a.left || a.high <= b.low || b.high <= a.low;
            expect(apart).toBe(true);
          }
        });
      }),
      { seed: 24 },
    );
  });
});
