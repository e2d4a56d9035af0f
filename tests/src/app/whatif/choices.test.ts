import fc from "fast-check";
import { expect, test } from "vitest";
import { spoken, usualSpan, variedChoices, watchChoices } from "../../../../src/app/whatif/choices.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { stepsOf } from "../../../../src/engine/sweep.ts";
import type { VariedCell } from "../../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { cell, variedCell } from "../../engine/ask.ts";
import { bookOf, laidPeplum, panelSkirt } from "../../engine/whatif-books.ts";

const NOWHERE = { page: 0, row: 60, column: 0 };

test("only cells with a typed figure can be turned, only worked figures and verdicts watched", () => {
  const book = panelSkirt();
  expect(variedChoices(book, NOWHERE).map(({ label }) => label)).toEqual([
    "hip",
    "fullness",
    "cloth_width",
    "depth",
    "hem",
  ]);
  const engine = new Engine(book, layDesk);
  expect(watchChoices(engine, NOWHERE).map(({ label }) => label)).toEqual([
    "panels",
    "cut",
    "cloth",
    "buy",
    "verdict",
  ]);
  const laid = watchChoices(new Engine(laidPeplum(), layDesk), NOWHERE).map(({ label }) => label);
  expect(laid).not.toContain("panel");
});

test("a cell without a name can be turned when it is chosen, and is spoken of by its label", () => {
  const named = panelSkirt();
  const { depth: _, ...names } = named.names;
  const book = { ...named, names };
  const place = cell(named, "depth");
  expect(variedChoices(book, NOWHERE).some((one) => one.label === "Draft!B4")).toBe(false);
  const chosen = variedChoices(book, place).at(-1)!;
  expect(chosen.label).toBe("Draft!B4");
  expect(spoken(book, chosen)).toBe("depth (Draft!B4)");
  expect(spoken(named, variedCell(named, "depth"))).toBe("depth");
});

test("the range offered holds the figure as it stands on one of its steps, and has no more steps than asked", () => {
  const book = bookOf({
    depth: "9 in",
    pleats: "6",
    shrink: "5%",
    easing: "1.25",
    spread: "=SPREAD_PER_GAP(28;40;pleats)",
  });
  fc.assert(
    fc.property(
      fc.constantFrom("depth", "pleats", "shrink", "easing"),
      fc.integer({ min: 1, max: 5000 }),
      fc.integer({ min: 8, max: 60 }),
      (name, marks, most) => {
        const one: VariedCell = { ...variedCell(book, name), now: marks * variedCell(book, name).step };
        const steps = stepsOf(book, one, usualSpan(one, most)) as number[];
        expect(steps.length).toBeLessThanOrEqual(most + 1);
        expect(steps.some((step) => Math.abs(step - one.now!) < 1e-9)).toBe(true);
        if (one.kind === "length") expect(steps[0]).toBeGreaterThan(0);
      },
    ),
    { seed: 8, numRuns: 300 },
  );
});
