import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  barLength,
  fitted,
  inDrawing,
  moved,
  onScreen,
  type View,
  zoomed,
} from "../../../../src/app/drawing/view.ts";

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const views: fc.Arbitrary<View> = fc.record({
  left: figure(-1000, 1000),
  top: figure(-1000, 1000),
  scale: figure(0.01, 1000),
});
const points = fc.tuple(figure(-500, 500), figure(-500, 500));
const close = (a: number, b: number, by: number) => expect(Math.abs(a - b)).toBeLessThan(by);

describe("the window onto a drawing", () => {
  it("the whole drawing is within the window's margins and fills it one way", () => {
    fc.assert(
      fc.property(points, points, figure(200, 2000), figure(200, 2000), ([a, b], [c, d], width, height) => {
        const box = {
          left: Math.min(a, c),
          right: Math.max(a, c) + 1,
          low: Math.min(b, d),
          high: Math.max(b, d) + 1,
        };
        const view = fitted(box, { width, height }, 30);
        const [x1, y1] = onScreen(view, [box.left, box.low]);
        const [x2, y2] = onScreen(view, [box.right, box.high]);
        expect(Math.min(x1, y1)).toBeGreaterThan(30 - 1e-6);
        expect(x2).toBeLessThan(width - 30 + 1e-6);
        expect(y2).toBeLessThan(height - 30 + 1e-6);
        close(Math.min(x1, y1), 30, 1e-6);
      }),
      { seed: 20 },
    );
  });

  it("looking nearer leaves the point under the pointer where it is", () => {
    fc.assert(
      fc.property(views, points, figure(0.1, 10), (view, around, factor) => {
        const before = inDrawing(view, around);
        const [x, y] = onScreen(zoomed(view, factor, around, view.scale), before);
        close(x, around[0], 1e-6);
        close(y, around[1], 1e-6);
      }),
      { seed: 21 },
    );
  });

  it("moving moves every point by as many pixels", () => {
    fc.assert(
      fc.property(views, points, points, (view, point, [dx, dy]) => {
        const [x, y] = onScreen(view, point);
        const [x2, y2] = onScreen(moved(view, dx, dy), point);
        const slack = 1e-9 * view.scale * 2000 + 1e-9;
        close(x2 - x, dx, slack);
        close(y2 - y, dy, slack);
      }),
      { seed: 22 },
    );
  });

  it("the scale's bar is a round length no wider than it may be and at least two fifths of that", () => {
    fc.assert(
      fc.property(figure(1e-4, 1e4), figure(40, 400), (scale, most) => {
        const length = barLength(scale, most);
        expect(length * scale).toBeLessThanOrEqual(most * (1 + 1e-12));
        expect(length * scale).toBeGreaterThanOrEqual(most * 0.4 * (1 - 1e-12));
        const digits = Number(length.toExponential().split("e")[0]);
        expect([1, 2, 5]).toContain(Math.round(digits * 1e9) / 1e9);
      }),
      { seed: 23 },
    );
  });
});
