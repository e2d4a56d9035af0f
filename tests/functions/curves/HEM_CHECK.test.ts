import { expect, test } from "vitest";
import { HEM_CHECK } from "../../../functions/curves/HEM_CHECK.ts";
import { run } from "../../../functions/run.ts";

// HE-10, printed: It's Fun to Sew a Cotton School Dress, Oregon State extension L-87, 1961, Hems, table:
// circle 1/4 in or rolled; flared 1 1/2; moderately flared 2 to 3; sheer straight up to 4.
test.each([
  ["circle", 0.25],
  ["flared", 1.5],
  ["slightly flared", 3],
  ["straight", 4],
])("a %s skirt takes a hem of up to %d in", (shape, most) => {
  expect(run(HEM_CHECK, [most, shape], { unit: "in" })).toBe("ok");
  expect(run(HEM_CHECK, [most + 0.125, shape], { unit: "in" })).toMatch(
    /^check: a hem of .* is too deep for a/,
  );
  expect(run(HEM_CHECK, [(most + 0.125) * 2.54, shape], { unit: "cm" })).toMatch(/^check: /);
});

test("a shape the table does not have is refused with those it has", () => {
  expect(run(HEM_CHECK, [2, "bell"], { unit: "in" })).toMatchObject({
    refusal: 'shape must be "circle", "flared", "slightly flared" or "straight", not "bell"',
  });
});
