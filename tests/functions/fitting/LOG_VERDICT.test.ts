import { expect, test } from "vitest";
import { LOG_VERDICT } from "../../../functions/fitting/LOG_VERDICT.ts";
import { run } from "../../../functions/run.ts";
import { setting } from "../laws.ts";
import { blockOf, seamsOf } from "./seam-lists.ts";

test("a log with its entries all in the list is ok, and a misspelt entry is named with the edge that was meant", () => {
  const log = (seam: string) => blockOf(["Piece", "Seam", "Amount"], [["skirt", "waist", 1], ["bodice", seam, -0.5]]); // biome-ignore format: rows
  const seams = seamsOf(["bodice", "waist", "skirt", "waist"]);
  expect(run(LOG_VERDICT, [log("Waist "), seams], setting("cm"))).toBe("ok");
  expect(run(LOG_VERDICT, [log("wiast"), seams], setting("cm"))).toBe(
    'check: row 2 of the fitting log names "bodice wiast", and the list of seams has no such edge; is "bodice waist" meant?',
  );
});
