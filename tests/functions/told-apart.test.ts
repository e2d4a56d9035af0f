import fc from "fast-check";
import { expect, test } from "vitest";
import { EASE_CHECK } from "../../functions/body/EASE_CHECK.ts";
import { CAP_CHECK } from "../../functions/curves/CAP_CHECK.ts";
import { HEM_CHECK } from "../../functions/curves/HEM_CHECK.ts";
import { SEAM_CHECK } from "../../functions/curves/SEAM_CHECK.ts";
import { define } from "../../functions/define.ts";
import { SPREAD_PER_GAP } from "../../functions/flare/SPREAD_PER_GAP.ts";
import { readTape, tapeTextBeside } from "../../functions/fractions.ts";
import { limitsOf, limitText } from "../../functions/limits.ts";
import { Refusal } from "../../functions/refusal.ts";
import { run } from "../../functions/run.ts";

const SEED = 20261127;
const inches = { unit: "in" } as const;

test("two lengths beside each other read apart exactly when they differ, and neither is off by more than half a mark", () => {
  const length = fc.double({ min: 0, max: 200, noNaN: true });
  const small = fc.constantFrom(0, 1e-3, 0.004, 0.02, 0.06, 0.3);
  fc.assert(
    fc.property(length, small, fc.constantFrom("in", "cm"), (a, off, unit) => {
      const mark = unit === "in" ? "1/8" : "1 mm";
      const [one, two] = [tapeTextBeside(a, [a + off], unit, mark), tapeTextBeside(a + off, [a], unit, mark)];
      expect(one === two).toBe(off === 0);
      expect(Math.abs(readTape(one, unit)!.length - a)).toBeLessThanOrEqual(1 / 16 + 1e-9);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("a verdict never says that an ease is more, or less, than what reads the same", () => {
  const cap = String(run(CAP_CHECK, [18.66, 17, 1, 1.625], inches));
  expect(cap).toMatch(/^check: the cap has 1 11\/16 in of ease, more than 1 5\/8 in:/);
  const less = String(run(CAP_CHECK, [18.22, 17, 1.25, 2], inches));
  expect(less).toMatch(/^check: the cap has 1 7\/32 in of ease, less than 1 1\/4 in:/);
  expect(run(HEM_CHECK, [1.51, "flared"], inches)).toBe(
    "check: a hem of 1.51 in is too deep for a flared skirt; up to 1.5 in lies flat",
  );
  expect(run(EASE_CHECK, ["bust", 36, 37.49], inches)).toMatch(
    /^check: ease of 1.49 in at the bust is 0.01 in less than the usual minimum, 1.5 in$/,
  );
  expect(run(SEAM_CHECK, [17.51, 17, 0.5, 0], inches)).toBe(
    "check: the first edge is 0.51 in longer than the second; the first should be 0.5 in longer",
  );
  expect(run(SEAM_CHECK, [17.01, 17, 0, 0], inches)).toBe(
    "check: the first edge is 0.01 in longer than the second; they should be equally long",
  );
});

test("a refusal shows lengths as the tape does, and unequal ones apart", () => {
  expect(run(SPREAD_PER_GAP, [16.1234567891234, 12.5, 5], inches)).toMatchObject({
    refusal: expect.stringMatching(/not 12 1\/2 in against 16 1\/8 in:/),
  });
  expect(run(SPREAD_PER_GAP, [16.52, 16.5, 5], inches)).toMatchObject({
    refusal: expect.stringMatching(/not 16 1\/2 in against 16 17\/32 in:/),
  });
  expect(new Refusal((say) => `not ${say(1.23456789)}`).message).toBe("not 1.23457");
});

test("limits are round figures of the tape in either unit", () => {
  const shown = (from: number, unit: "in" | "cm") => limitText(from, "length", unit);
  const limits = [0.05, 0.1, 0.3, 0.5, 1, 2, 5, 10, 15, 25, 45, 60, 140, 300, 500, 5000, 50_000];
  expect(limits.map((one) => shown(one, "in"))).toEqual([
    "1/32", "1/32", "1/8", "1/4", "3/8", "3/4", "2", "4", "6", "10", "18", "25", "55", "120", "200", "2000", "20000",
  ]); // biome-ignore format: a row
  expect(limits.map((one) => shown(one, "cm"))).toEqual(limits.map(String));
  expect(shown(-30, "in")).toBe("-12");
});

test("what is let through is the same in both units, and what is refused lies beyond the limit shown in each", () => {
  const PROBE = define({
    name: "PROBE",
    summary: "A function for this test.",
    source: "geometry",
    takes: { top: { kind: "length", about: "a top", from: 1, to: 50_000 } },
    returns: "length",
    compute: ({ top }) => top,
    examples: [],
  });
  const refusal = (top: number, unit: "in" | "cm") =>
    (run(PROBE, [top], { unit }) as { refusal?: string }).refusal;
  expect(refusal(0.37, "in")).toBe("top must be at least 3/8 in, not 0.37 in");
  expect(refusal(0.37 * 2.54, "cm")).toBe("top must be at least 1 cm, not 0.9 cm");
  expect([refusal(0.38, "in"), refusal(0.38 * 2.54, "cm")]).toEqual([undefined, undefined]);
  expect(refusal(20_001, "in")).toBe("top must be at most 20000 in, not 20001 in");
  expect([refusal(19_999, "in"), refusal(19_999 * 2.54, "cm")]).toEqual([undefined, undefined]);
  const { least, most } = limitsOf(PROBE.takes.top!, "cm");
  expect(least).toBeCloseTo(0.9525, 12);
  expect(most).toBe(50_800);
});
