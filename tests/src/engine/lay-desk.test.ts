import { expect, test } from "vitest";
import { Engine } from "../../../src/engine/engine.ts";
import { USUAL_LIMITS } from "../../../src/engine/guards.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

test("a search that was asked for may take longer than a formula may, also within another formula; any other desk may not", () => {
  let now = 0;
  const slow = (...asked: Parameters<typeof layDesk>) => {
    now += 6000;
    return layDesk(...asked);
  };
  const limits = { ...USUAL_LIMITS, clock: () => now };
  const book = bookOf({
    panel: "=RECTANGLE(20; 40)",
    yards: '=IF(panel=""; ""; YARDAGE(panel; 2; 54))',
    bought: "=IF(yards>0; YARDAGE(panel; 4; 54))",
    both: "=yards+bought",
  });
  const shown = (engine: Engine) =>
    [1, 2, 3].map((row) => {
      const { value, problem } = engine.view({ page: 0, row, column: 1 });
      return problem?.sentence ?? value;
    });
  expect(shown(new Engine(book, Object.assign(slow, { searches: true as const }), limits))).toEqual([
    40, 80, 120,
  ]);
  const plain = (...asked: Parameters<typeof layDesk>) => slow(...asked);
  expect(shown(new Engine(book, plain, limits))[0]).toMatch(/this formula was stopped after 5 s/);
});
