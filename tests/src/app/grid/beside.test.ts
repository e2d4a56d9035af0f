import fc from "fast-check";
import { expect, it } from "vitest";
import { type Box, beside } from "../../../../src/app/grid/beside.ts";

const area: Box = { left: 50, top: 120, right: 1000, bottom: 800 };
const cell = (left: number, top: number): Box => ({ left, top, right: left + 110, bottom: top + 26 });

it("stands below a cell, or above it where the area ends", () => {
  expect(beside(cell(200, 300), 400, 200, area)).toEqual({ left: 200, top: 330, height: 200 });
  expect(beside(cell(200, 700), 400, 200, area)).toEqual({ left: 200, top: 496, height: 200 });
  expect(beside(cell(900, 300), 400, 200, area)).toEqual({ left: 600, top: 330, height: 200 });
});

it("stands to the side of a cell in an area that is low, and is cut where no side has room", () => {
  expect(beside(cell(200, 160), 400, 200, { ...area, bottom: 330 })).toMatchObject({ left: 314, top: 130 });
  const narrow = { left: 0, top: 120, right: 390, bottom: 330 };
  expect(beside(cell(100, 160), 380, 200, narrow)).toEqual({ left: 10, top: 190, height: 140 });
});

it("without a cell on the screen it stands in the lower right corner", () => {
  expect(beside(null, 400, 200, area)).toEqual({ left: 600, top: 600, height: 200 });
});

it("covers neither the cell nor anything outside the area, wherever the cell is", () => {
  const figure = (from: number, to: number) => fc.integer({ min: from, max: to });
  fc.assert(
    fc.property(
      figure(0, 1000),
      figure(0, 800),
      figure(50, 900),
      figure(20, 600),
      (left, top, wide, tall) => {
        const one = cell(left, top);
        const spot = beside(one, wide, tall, area);
        const [right, bottom] = [spot.left + wide, spot.top + spot.height];
        expect(spot.top).toBeGreaterThanOrEqual(area.top);
        expect(bottom).toBeLessThanOrEqual(area.bottom);
        expect(spot.left).toBeGreaterThanOrEqual(area.left);
        expect(right).toBeLessThanOrEqual(area.right);
        const over =
          spot.left < one.right &&
          right > one.left &&
          spot.top < one.bottom &&
          bottom > Math.max(one.top, area.top);
        expect(over && spot.height > 0).toBe(false);
      },
    ),
    { seed: 20_261_127 },
  );
});
