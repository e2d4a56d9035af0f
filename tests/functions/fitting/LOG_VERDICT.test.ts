import { expect, test } from "vitest";
import type { Cell } from "../../../functions/define.ts";
import { LOG_VERDICT } from "../../../functions/fitting/LOG_VERDICT.ts";
import { run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { setting } from "../laws.ts";
import { blockOf, seamsOf } from "./seam-lists.ts";

test("a log with its entries all in the list is ok, and a misspelt entry is named with the edge that was meant", () => {
  const log = (seam: string) => blockOf(["Piece", "Seam", "Amount"], [["skirt", "waist", -0.5], ["bodice", seam, -0.5]]); // biome-ignore format: rows
  const seams = seamsOf(["bodice", "waist", "skirt", "waist"]);
  expect(run(LOG_VERDICT, [log("Waist "), seams], setting("cm"))).toBe("ok");
  expect(run(LOG_VERDICT, [log("wiast"), seams], setting("cm"))).toBe(
    'check: row 2 of the fitting log names "bodice wiast", and the list of seams has no such edge; is "bodice waist" meant?',
  );
});

test("a seam that is logged under both its names, by different amounts, is not ok, at one end of it either", () => {
  const seams = seamsOf(["front + back", "waist", "skirt", "waist"], ["front", "side", "back", "side"]);
  const given = (rows: readonly (readonly Cell[])[]) =>
    [blockOf(["Piece", "Seam", "Amount", "Top or bottom", "Each side"], rows), seams]; // biome-ignore format: one list
  const asked = (...rows: readonly (readonly Cell[])[]) => run(LOG_VERDICT, given(rows), setting("in"));
  const cautions = (...rows: readonly (readonly Cell[])[]) =>
    toLookAt(LOG_VERDICT, given(rows), setting("in"));
  expect(asked(["skirt", "waist", 0.75], ["front", "waist", 0.25, null, "each side"])).toBe(
    'check: rows 1, 2 of the fitting log alter one seam under two names, "front waist" and "skirt waist", by different amounts: write all its changes under one of them',
  );
  expect(asked(["front", "side", 0.5], ["back", "side", 0.25, "top"])).toMatch(
    /^check: rows 1, 2 .*two names/,
  );
  // Two edges on one side, or different ends: everything is counted. Alike on both sides, it counts once.
  expect(cautions(["skirt", "waist", 0.5], ["front", "waist", 0.25, null, "each side"])).toEqual([
    'LOG_VERDICT: rows 1, 2 of the fitting log alter one seam under two names, "front waist" and "skirt waist", by the same amount, which counts once: where these are two alterations, write both under one name',
  ]);
  expect(cautions(["front", "waist", 0.5], ["back", "waist", 0.25])).toEqual([]);
  expect(asked(["front", "side", 0.5, "top"], ["back", "side", 0.25, "bottom"])).toBe("ok");
  expect(asked(["skirt", "waist", 0.5], ["front", "waist", 0.25, null, "each side"])).toBe("ok");
  expect(asked(["front", "waist", 0.5], ["back", "waist", 0.25])).toBe("ok");
});
