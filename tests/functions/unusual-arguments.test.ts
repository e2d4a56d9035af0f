import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { CLOTH_COST } from "../../functions/cloth/CLOTH_COST.ts";
import { CUFF } from "../../functions/curves/CUFF.ts";
import { define } from "../../functions/define.ts";
import { PLACKET_LENGTH } from "../../functions/fitting/PLACKET_LENGTH.ts";
import { TAKE_IN_EACH } from "../../functions/fitting/TAKE_IN_EACH.ts";
import { GORE } from "../../functions/flare/GORE.ts";
import { readTape } from "../../functions/fractions.ts";
import { HOOK_COUNT } from "../../functions/notions/HOOK_COUNT.ts";
import { ruleOf } from "../../functions/plain-rule.ts";
import { explain } from "../../functions/run.ts";
import { unusualIn } from "../../functions/to-look-at.ts";
import { unusualArguments } from "../../functions/unusual-arguments.ts";

test("figures in each other's place are answered and pointed out, with the arguments' names", () => {
  const inches = { unit: "in" } as const;
  expect(unusualIn(CUFF, [2.5, 6.5], inches)).toEqual([
    "CUFF: the depth 6 1/2 in is above the wrist 2 1/2 in; are they swapped?",
  ]);
  expect(unusualIn(CLOTH_COST, [108, 18.5, 1], inches)).toEqual([
    "CLOTH_COST: the per 1 in is below 25 in, the usual minimum; is that right?",
  ]);
  expect(unusualIn(PLACKET_LENGTH, [41, 27.25], inches)).toEqual([
    "PLACKET_LENGTH: the opening 41 in is above 1.2 * passes, which is 32 3/4 in; are they swapped?",
  ]);
  expect(unusualIn(HOOK_COUNT, [1, 7], inches)).toEqual([
    "HOOK_COUNT: the spacing 7 in is above the edge 1 in; are they swapped?",
  ]);
  expect(unusualIn(GORE, [22, 4, 40], inches)[0]).toMatch(/^GORE: the top 22 in is above the hem 4 in/);
  for (const [declaration, args] of [[CUFF, [6.5, 2.5]], [CLOTH_COST, [108, 18.5, 36]], [HOOK_COUNT, [7, 1]]] as const) {
    expect(unusualIn(declaration, args, inches)).toEqual([]);
  } // biome-ignore format: calls in a row
});

test("the working of an unusual call says so and still has its answer", () => {
  const { answer, unusual } = explain(HOOK_COUNT, [1, 7], { unit: "in" });
  expect(answer).toBe(2);
  expect(unusual).toEqual([expect.stringContaining("the spacing 7 in is above the edge 1 in")]);
});

test("no warning contradicts itself: what it calls above or below a round limit is so on the tape that shows it", () => {
  // 60 cm are 23 5/8 in, and a tape of inches says 25 in.
  expect([24.5, 25.5].map((total) => unusualIn(TAKE_IN_EACH, [total, 2], { unit: "in" }))).toEqual([
    ["TAKE_IN_EACH: the total 24 1/2 in is above 23 5/8 in, the usual maximum; is that right?"],
    ["TAKE_IN_EACH: the total 25 1/2 in is above 25 in, the usual maximum; is that right?"],
  ]);
  let warned = 0;
  for (const declaration of catalogue.values())
    for (const [name, { kind, usual, many }] of Object.entries(declaration.takes)) {
      if (kind !== "length" || !usual || many) continue;
      for (const unit of ["in", "cm"] as const)
        for (const limit of usual)
          for (const share of [0.9, 0.95, 0.99, 1.01, 1.05, 1.1]) {
            const value = limit * share * (unit === "in" ? 1 / 2.54 : 1);
            const args = Object.keys(declaration.takes).map((one) => (one === name ? value : null));
            const found = unusualArguments(declaration, args, { unit, mark: "1/32" });
            for (const { sentence } of found) {
              const [, shown, which, bound] =
                /the \w+ (.+?) (?:in|cm) is (above|below) (.+?) (?:in|cm), /.exec(sentence)!;
              const [given, limitShown] = [shown!, bound!].map((text) => readTape(text, unit)!.length);
              expect(
                which === "above" ? given! - limitShown! : limitShown! - given!,
                sentence,
              ).toBeGreaterThanOrEqual(0);
              warned += 1;
            }
          }
    }
  expect(warned).toBeGreaterThan(200);
});

test("a refused call is not unusual besides", () => {
  expect(unusualIn(CUFF, [2.5, -3], { unit: "in" })).toEqual([]);
});

const PROBE = define({
  name: "PROBE",
  summary: "A function for this test.",
  source: "geometry",
  takes: {
    gap: { kind: "length", about: "a gap", from: 0, usual: [0, 40] },
    edges: { kind: "length", about: "some edges", many: true, blanks: true },
    style: { kind: "text", about: "how", choices: ["open", "shut"], otherwise: "open" },
    part: { kind: "length", about: "a part", otherwise: null },
  },
  returns: "length",
  usual: [
    "2 * gap < SUM(edges)",
    "part <= gap",
    { rule: 'OR(style = "open"; gap = 0)', says: "a shut edge has a gap of {gap}" },
  ],
  compute: ({ gap }) => gap,
  examples: [],
});

test("rules reckon in centimetres, take lists together, leave out what is not given, and speak in the book's unit", () => {
  const said = (unit: "in" | "cm", ...args: Parameters<typeof unusualIn>[1]) =>
    unusualIn(PROBE, args, { unit });
  expect(said("in", 4, [5, null, 4])).toEqual([]);
  expect(said("in", 4, [5, null, 2])).toEqual([
    "PROBE: 2 * gap, which is 8 in, is above SUM(edges), which is 7 in; are they swapped?",
  ]);
  expect(said("in", 4, [50], "shut")).toEqual(["PROBE: a shut edge has a gap of 4 in; is that right?"]);
  expect(said("in", 0, [50], "shut")).toEqual([]);
  expect(said("in", 17, [100])).toEqual([
    "PROBE: the gap 17 in is above 16 in, the usual maximum; is that right?",
  ]);
  expect(said("cm", 40, [100])).toEqual([]);
  expect(said("cm", 40.1, [100])).toEqual([
    "PROBE: the gap 40.1 cm is above 40 cm, the usual maximum; is that right?",
  ]);
  expect(said("cm", 4, [100], "open", 4.004)).toEqual([
    "PROBE: the part 4.004 cm is above the gap 4 cm; are they swapped?",
  ]);
});

test("a rule is read as OpenFormula reads it", () => {
  const holds = (rule: string, names = {}) => ruleOf(rule).holds(names);
  expect(holds("1 + 2 * 3 = 7")).toBe(true);
  expect(holds("(1 + 2) * 3 - -1 = 10")).toBe(true);
  expect(holds("2 ^ 3 / 4 <> 2")).toBe(false);
  expect(holds('AND(a < b; NOT(style = "x"))', { a: 1, b: 2, style: "y" })).toBe(true);
  expect(holds("MAX(a; 3) >= MIN(list)", { a: 1, list: [4, 3] })).toBe(true);
  expect(holds("IF(a > 1; FALSE = 1; ABS(-a) = 1)", { a: 1, FALSE: false })).toBe(true);
  expect(holds("0.1 + 0.2 <= 0.3")).toBe(true);
  expect(ruleOf("top + 1 <= MAX(hem; top)").names).toEqual(["top", "hem"]);
  for (const wrong of ["a <", "a < b)", "SQRT(a) < 2", "a ? b", "MAX(a b) < 1", "a < * b"])
    expect(() => ruleOf(wrong), wrong).toThrow();
});
