/** Figures that lie exactly at a limit, which rounding would put on either side of it in one unit and not in the other. */
import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { isAbove, isBelow } from "../../functions/compared-figures.ts";
import { type Argument, isRefused, run } from "../../functions/run.ts";
import { inUnit, setting } from "./laws.ts";

/** Tenths, as they are typed: 4.1 + 3.2 is 7.3 on paper, and not for the machine. */
const tenth = (figure: number): number => Math.round(figure * 10) / 10;

/** Arguments at the limit for two lengths, in inches, and whether a call at the limit is refused. */
const AT_LIMIT: Readonly<Record<string, readonly [(a: number, b: number) => Argument[], "refused" | "answered"]>> = {
  WITH_EASE: [(a, b) => [tenth(a + b), -(0.9 * tenth(a + b)), -0.1], "refused"],
  FITTED: [(a, b) => [tenth(a + b), -a - b, 0], "refused"],
  GRADE: [(a, b) => [tenth(a + b), -tenth(a + b) / 3, 3], "refused"],
  EVEN_GAP: [(a, b) => [tenth(a + b), 3, a, b], "refused"],
  TOP_RADIUS: [(a, b) => [a + b, tenth(a + b), 5], "refused"],
  BUTTON_COUNT: [(a, b) => [tenth(a + b), 1, a, b], "answered"],
  SPREAD_PER_GAP: [(a, b) => [a + b, tenth(a + b), 4], "answered"],
  TAKE_UP: [(a, b) => [tenth(a + b), a + b], "answered"],
  DART_INTAKE: [(a, b) => [tenth(a + b), a, 2, b], "answered"],
  LACING_GAP: [(a) => [tenth(3 * a), tenth(3 * a), a, 2], "answered"],
  CAP_CHECK: [(a, b) => [tenth(a + b), a, b, 2 * b], "answered"],
}; // biome-ignore format: a row for each function

test.each(Object.entries(AT_LIMIT))("%s at its limit is the same in inches as in centimetres", (name, [args, is]) => {
  const declaration = catalogue.get(name)!;
  for (let a = 20; a < 60; a += 1)
    for (let b = 1; b < 5; b += 1) {
      const given = args(a / 10, b / 10);
      for (const unit of ["in", "cm"] as const) {
        const answer = run(declaration, inUnit(declaration, given, "in", unit), setting(unit));
        expect(isRefused(answer), `${JSON.stringify(given)} in ${unit}: ${JSON.stringify(answer)}`).toBe(is === "refused");
        if (declaration.returns === "verdict") expect(answer, `${given} ${unit}`).toBe("ok");
      }
    }
}); // biome-ignore format: long lines

test("a figure counts as equal to a limit within a billionth of the figures that it was worked out from", () => {
  const off = 0.1 + 0.2 - 0.3;
  expect([isAbove(off, 0), isAbove(off, 0, 0.3), isBelow(-off, 0, 0.3)]).toEqual([true, false, false]);
  expect([isAbove(0.3 + 1e-6, 0.3), isBelow(0.3 - 1e-6, 0.3), isAbove(0, 0)]).toEqual([true, true, false]);
});
