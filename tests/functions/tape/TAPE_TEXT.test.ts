import fc from "fast-check";
import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { TAPE } from "../../../functions/tape/TAPE.ts";
import { TAPE_TEXT } from "../../../functions/tape/TAPE_TEXT.ts";

const inches = (length: number, mark: string | number | null = null) =>
  run(TAPE_TEXT, [length, mark], { unit: "in", mark: "1/8" });

test("fractions are told in lowest terms, at the mark asked for", () => {
  expect(inches(0.25, "1/16")).toBe("1/4 in");
  expect(inches(12.0624, "1/16")).toBe("12 1/16 in");
  expect(inches(7.999)).toBe("8 in");
  expect(inches(-1.5)).toBe("-1 1/2 in");
  expect(inches(5.2, 0.25)).toBe("5 1/4 in");
  expect(inches(10, "5 mm")).toBe("10.039 in");
  expect(run(TAPE_TEXT, [42.36, "5 mm"], { unit: "cm" })).toBe("42.5 cm");
});

test("the text read back is the length, to half a mark", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -5000, max: 5000 }),
      fc.constantFrom<"in" | "cm">("in", "cm"),
      (thousandths, unit) => {
        const length = thousandths / 37;
        const text = run(TAPE_TEXT, [length, "1/16"], { unit });
        expect(Math.abs((run(TAPE, [text as string], { unit }) as number) - length)).toBeLessThan(0.1);
      },
    ),
    { seed: 7 },
  );
});

test("a mark that is no length is refused", () => {
  expect(inches(3, "fine")).toMatchObject({
    refusal: 'mark must be a length above 0 such as 1/8 or 5 mm, not "fine"',
  });
  expect(inches(3, 0)).toMatchObject({
    refusal: 'mark must be a length above 0 such as 1/8 or 5 mm, not "0"',
  });
});
