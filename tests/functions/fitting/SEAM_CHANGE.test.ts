import fc from "fast-check";
import { expect, test } from "vitest";
import { SEAM_CHANGE } from "../../../functions/fitting/SEAM_CHANGE.ts";
import { explain, run } from "../../../functions/run.ts";

type Row = [piece: string | null, seam: string | null, amount: number | null];
const net = (rows: Row[], piece: string, seam: string, garment: string[] | null = null) =>
  run(
    SEAM_CHANGE,
    [
      rows.map(([one]) => one),
      rows.map(([, one]) => one),
      rows.map(([, , one]) => one),
      piece,
      seam,
      garment,
    ],
    {
      unit: "in",
    },
  );

const SEAMS = ["bodice", "skirt"].flatMap((one) =>
  ["side", "centre back", "shoulder"].map((two) => `${one} ${two}`),
);

test("the seams' changes together are all the amounts of the log", () => {
  const piece = fc.constantFrom("bodice", "Skirt ");
  const seam = fc.constantFrom("side", "centre back", "shoulder");
  fc.assert(
    fc.property(
      fc.array(fc.tuple(piece, seam, fc.integer({ min: -16, max: 16 })), { maxLength: 20 }),
      (rows) => {
        const log = rows.map(([one, two, eighths]): Row => [one, two, eighths / 8]);
        let sum = 0;
        for (const one of ["BODICE", "skirt"]) {
          for (const two of ["side", "Centre back", "shoulder"]) sum += net(log, one, two, SEAMS) as number;
        }
        expect(sum).toBeCloseTo(
          rows.reduce((total, [, , eighths]) => total + eighths / 8, 0),
          10,
        );
      },
    ),
    { seed: 22 },
  );
});

test("what was let out and what was taken in are told apart", () => {
  const { steps } = explain(SEAM_CHANGE, [["cape", "cape"], ["neck", "neck"], [0.5, -0.25], "cape", "neck"], {
    unit: "in",
  });
  expect(steps.map(({ name, value }) => [name, value])).toEqual([["times", 2], ["let_out", 0.5], ["taken_in", 0.25], ["net", 0.25]]); // biome-ignore format: pairs
});

test("empty rows are passed over, half-filled ones are asked about", () => {
  expect(net([["bodice", "side", 1], [null, null, null], ["", " ", null]], "bodice", "side")).toBe(1);
  expect(net([["bodice", "side", null]], "bodice", "side")).toMatchObject({
    refusal: "amounts, number 1, is empty: write how much the bodice's side was let out (+) or taken in (-)",
  });
  expect(net([["bodice", "side", 1], [null, "side", 0.5]], "bodice", "side")).toMatchObject({
    refusal: "pieces, number 2, is empty although the row has an amount: write what was altered",
  });
  expect(net([["skirt", "side", null]], "bodice", "side", SEAMS)).toBe(0);
  expect(net([[null, null, null]], "bodice", "side")).toBe(0);
}); // biome-ignore format: rows

test("columns of unequal length are refused", () => {
  expect(run(SEAM_CHANGE, [["a", "b"], ["c", "d"], [1], "a", "c"], { unit: "in" })).toMatchObject({
    refusal: "pieces, seams and amounts must have the same number of cells, not 2, 2 and 1",
  });
  expect(run(SEAM_CHANGE, [["a"], ["c"], ["taken in a bit"], "a", "c"], { unit: "in" })).toHaveProperty(
    "refusal",
    'amounts must be a length, not "taken in a bit"',
  );
});

test("a piece or seam that the log does not name is refused with the name that was meant", () => {
  const log: Row[] = [["bodice", "side", -0.5], ["bodice", "centre back", 0.25]];
  expect(net(log, "bodice", "sdie")).toMatchObject({
    refusal: 'seam is "sdie", and no row of the log names it for the bodice; is "side" meant?',
  });
  expect(net(log, "bodcie", "side")).toMatchObject({
    refusal: 'piece is "bodcie", and no row of the log names it; is "bodice" meant?',
  });
  expect(net(log, "cape", "neck")).toMatchObject({
    refusal:
      'piece is "cape", and no row of the log names it: correct the name, or list all seams in garment; a listed seam that was never fitted has changed by 0',
  });
  expect(net(log, "bodice", "neck", ["bodice side", "bodice centre back", "bodice neck"])).toBe(0);
  expect(net(log, "bodice", "nekc", ["bodice side", "bodice centre back", "bodice neck"])).toMatchObject({
    refusal: 'garment has no seam called "bodice nekc"; is "bodice neck" meant?',
  });
}); // biome-ignore format: rows

test("a row of the log that names no seam of the garment is refused, not left out of the sum", () => {
  expect(net([["bodice", "side", -0.5], ["bodcie", "side", 0.25]], "bodice", "side", SEAMS)).toMatchObject({
    refusal: 'row 2 of the log names "bodcie side", and garment has no seam of that name; is "bodice side" meant?',
  });
}); // biome-ignore format: rows
