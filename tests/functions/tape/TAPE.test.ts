import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { TAPE } from "../../../functions/tape/TAPE.ts";

const inches = (text: string | number) => run(TAPE, [text], { unit: "in" });

test("lengths are read as people write them on patterns", () => {
  const written: [string, number][] = [
    ["3/8", 0.375], ["16½", 16.5], ["16-1/2", 16.5], ["16 1/2 in", 16.5], ["42 cm", 42 / 2.54], ["5' 3\"", 63],
    ["1 yd 9 in", 45], ["2 m", 200 / 2.54], ["12 mm", 12 / 25.4], [".5", 0.5], ["-1/4", -0.25], ["1 foot 2 inches", 14],
  ]; // biome-ignore format: a table
  for (const [text, length] of written) expect(inches(text), text).toBeCloseTo(length, 12);
  expect(inches(18.25)).toBe(18.25);
  expect(run(TAPE, ["18.25"], { unit: "cm" })).toBe(18.25);
});

test("what is no length is refused with an example of one", () => {
  for (const text of ["a bit", "1/0", "12 furlongs", "1 2 3", "3/", "16 1/2 1/4"]) {
    expect(inches(text)).toMatchObject({
      refusal: `text must be a length such as 16 1/2 in, 42 cm or 1 yd 9 in, not "${text}"`,
    });
  }
  expect(inches("")).toMatchObject({ refusal: "text is empty: a length such as 16 1/2 in is needed there" });
  expect(inches("9".repeat(400))).toHaveProperty("refusal");
});
