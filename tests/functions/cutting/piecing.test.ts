import { describe, expect, test } from "vitest";
import type { CutRow } from "../../../functions/cutting/cut-list.ts";
import { layQuestion } from "../../../functions/cutting/lay-question.ts";
import { joinsWith } from "../../../functions/cutting/piecing.ts";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import type { Lay, LayCloth, LayQuestion, Pieced } from "../../../functions/lay.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const row = (path: string, name: string, quantity = 1): CutRow => ({
  name,
  piece: readPiece(path),
  quantity,
  paired: false,
  folded: false,
  grain: "straight",
});
const cloth = (width: number, length: number): LayCloth => ({ name: "cloth", width, length });
const ask = (rows: CutRow[], cloths: LayCloth[]): LayQuestion =>
  layQuestion(rows, cloths, { oneWay: false, gap: 0, repeat: 0 }, 0.01);

function pieced(question: LayQuestion, seam: number): Pieced | null {
  return joinsWith(quickLay)({ question, start: quickLay(question) as Lay, seam, mark: 0 }).pieced;
}
const area = ({ pieces }: LayQuestion) =>
  pieces.reduce((sum, { outline, quantity }) => sum + quantity * Math.abs(signedArea(outline)), 0);

describe("a piece that is too wide for the cloth in hand", () => {
  const question = ask([row("M 0 0 H 60 V 40 H 0 Z", "cape")], [cloth(54, 90)]);
  const found = pieced(question, 0.5)!;

  test("is cut in two along the grain, and both parts lie on the cloth, by the independent checker", () => {
    expect(found.joins).toMatchObject([{ name: "cape", copies: 1, inPleat: false }]);
    expect(found.lay.missing).toEqual([]);
    expect(checkLay(found.question, found.lay)).toEqual([]);
  });

  test("takes two allowances of cloth along the join and no more", () => {
    // Two strips of half an inch, 40 in long.
    expect(area(found.question) - area(question)).toBeCloseTo(2 * 0.5 * 40, 9);
  });

  test("is joined as near to its side as the cloth allows: 6 in and the allowance are missing", () => {
    const { at } = found.joins[0]!;
    const fromSide = Math.min(at, 60 - at);
    expect(fromSide).toBeGreaterThanOrEqual(6.5 - 1e-9);
    expect(fromSide).toBeLessThan(10);
  });
});

test("a pleat's inner fold takes the join before any place where it would show", () => {
  // A panel with one knife pleat: fold at 20, placement line at 26, so that 23 lies beneath.
  const panel = "M 0 0 H 60 V 40 H 0 Z M 20 0 L 20 40 M 23 0 L 23 40 M 26 0 L 26 40";
  const question = ask([row(panel, "panel")], [cloth(45, 90)]);
  const folds = question.pieces[0]!.innerFolds;
  expect(folds).toBeDefined();
  const found = pieced(question, 0.5)!;
  expect(found.joins).toMatchObject([{ name: "panel", inPleat: true }]);
  expect(found.joins[0]!.at).toBeCloseTo(23, 6);
  expect(checkLay(found.question, found.lay)).toEqual([]);
});

test("nothing is proposed where no join would do: there is less cloth than piece", () => {
  expect(pieced(ask([row("M 0 0 H 60 V 40 H 0 Z", "cape")], [cloth(30, 50)]), 0.5)).toBeNull();
});

test("what fits as it is needs no join", () => {
  expect(pieced(ask([row("M 0 0 H 40 V 40 H 0 Z", "cape")], [cloth(54, 50)]), 0.5)).toBeNull();
});
