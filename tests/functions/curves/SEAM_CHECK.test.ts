import { expect, test } from "vitest";
import { SEAM_CHECK } from "../../../functions/curves/SEAM_CHECK.ts";
import { run } from "../../../functions/run.ts";

const inches = (...args: (number | null)[]) => run(SEAM_CHECK, args, { unit: "in" });

test("a sixteenth is let pass, an eighth is not", () => {
  expect(inches(17 + 1 / 16, 17)).toBe("ok");
  expect(inches(17 - 1 / 16, 17)).toBe("ok");
  expect(inches(17.125, 17)).toBe(
    "check: the first edge is 1/8 in longer than the second; they should be equally long",
  );
  expect(inches(17, 17.125)).toBe(
    "check: the first edge is 1/8 in shorter than the second; they should be equally long",
  );
});

test("with ease wanted, equal seams are wrong", () => {
  expect(inches(5, 5, 0.375)).toBe(
    "check: the first edge is as long as the second; the first should be 3/8 in longer",
  );
  expect(inches(5.375, 5, 0.375)).toBe("ok");
  expect(inches(5, 5.5, -0.5)).toBe("ok");
  expect(inches(5.5, 5, -0.5)).toBe(
    "check: the first edge is 1/2 in longer than the second; the first should be 1/2 in shorter",
  );
});

test("a tolerance that is told counts, and what is on it is ok", () => {
  expect(inches(17.5, 17, 0, 0.5)).toBe("ok");
  expect(inches(17.05, 17, 0, 0)).toBe(
    "check: the first edge is 1/16 in longer than the second; they should be equally long",
  );
});
