import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { CLOTH_CHECK } from "../../../functions/cloth/CLOTH_CHECK.ts";
import { YARDAGE } from "../../../functions/cloth/YARDAGE.ts";
import type { Cell } from "../../../functions/define.ts";
import { blockSignature, helpText } from "../../../functions/help.ts";
import { explain, run } from "../../../functions/run.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const PANEL = "M 0 0 L 27 0 L 27 40 L 0 40 Z";
const GORE = "M 30 0 L 40 0 L 40 60 L 0 60 Z";
const setting = {
  unit: "in" as const,
  plan: (question: Parameters<typeof layDesk>[0]) => layDesk(question, {}),
};

const block = (rows: readonly (readonly Cell[])[], headings: readonly string[] = []) =>
  asBlock(rows.flat(), rows[0]!.length, headings);
const yardage = (rows: readonly (readonly Cell[])[], ...more: Cell[]) => {
  const answer = run(YARDAGE, [block(rows), 54, ...more], setting);
  return typeof answer === "object" ? answer.refusal : answer;
};

const HEADS = ["Piece", "Outline", "How many", "Cloth"];
const LIST = [HEADS, ["panel", PANEL, 2, "wool"], ["gore", GORE, 2, "wool, on the straight"]];
const OLD = [[PANEL, GORE], [2, 2], 54] as const;
const oldAnswer = (...more: (Cell | readonly Cell[])[]) => run(YARDAGE, [...OLD, ...more], setting);

test("a cut list as one block takes the cloth that its columns take one by one, in any order and with columns of no concern", () => {
  expect(yardage(LIST)).toBe(oldAnswer());
  const turned = LIST.map(([name, outline, many, cloth]) => [cloth, "note", many, outline, name] as Cell[]);
  turned[0]![1] = "Remarks";
  expect(yardage(turned)).toBe(oldAnswer());
  expect(yardage([...LIST, [null, null, null, null], ["sum", null, null, null]])).toBe(oldAnswer());
  // The outlines may stand under "piece" when no other column has them.
  expect(yardage([["pieces", "HOW MANY?"], [PANEL, 2], [GORE, 2]])).toBe(oldAnswer());
  // What the other columns say is heard.
  const half = "M 0 0 L 27 0 L 27 40 L 0 40 Z";
  const said = (head: string, cell: Cell) => yardage([["outline", "quantity", head], [half, 2, cell]]);
  expect([said("on the fold", "yes"), said("on the fold", null)]).toEqual([80, 40]);
  expect(yardage([["outline", "how many", "one way"], [GORE, 2, "yes"]])).toBe(run(YARDAGE, [[GORE], [2], 54, true], setting));
  expect(yardage([["outline", "how many", "turn"], [GORE, 2, "no"]])).toBe(run(YARDAGE, [[GORE], [2], 54, true], setting));
  expect(yardage([["outline", "how many", "turn"], [GORE, 2, null]])).toBe(run(YARDAGE, [[GORE], [2], 54], setting));
  expect(yardage(LIST, null, true)).toBe(oldAnswer(true));
}); // biome-ignore format: lists

test("the headings may be those of the page's columns", () => {
  const under = asBlock(LIST.slice(1).flat() as Cell[], 4, HEADS);
  expect(run(YARDAGE, [under, 54], setting)).toBe(oldAnswer());
  const none = run(YARDAGE, [asBlock(under, 4, ["", "", "", ""]), 54], setting);
  expect(none).toMatchObject({
    refusal:
      'the cut list has no headings that are known here: write "piece", "outline" and "how many" over its columns',
  });
});

test("one list serves several cloths, and which is meant is asked", () => {
  const two = [...LIST, ["lining", PANEL, 1, "Linen"]];
  expect(yardage(two, "linen")).toBe(40);
  expect(yardage(two, "WOOL")).toBe(oldAnswer());
  expect(yardage(two)).toBe(
    'the cut list has pieces of 2 cloths ("wool", "Linen"): say in the argument cloth which is laid',
  );
  expect(yardage(two, "linnen")).toBe('no piece of the cut list is of "linnen"; is "Linen" meant?');
  expect(yardage([...two, ["cuff", PANEL, 1, null]], "wool")).toBe(
    "cuff has no cloth: write in its row which it is cut from",
  );
  expect(yardage([["outline", "how many"], [PANEL, 1]], "wool")).toBe(
    'the cut list has no column "cloth", so "wool" chooses nothing: add the column, or leave the cloth out',
  );
}); // biome-ignore format: lists

test("a heading that is missing, twice, misspelt or unclear is one sentence, and so is a row half filled", () => {
  const row = ["panel", PANEL, 2, "wool"];
  const heads = (...list: string[]) => yardage([list, row]);
  for (const [said, sentence] of [
    [heads("piece", "outline", "", "cloth"), 'the cut list has no column "how many": give that heading to the column with how many to cut; a pair counts as 2'],
    [heads("piece", "", "how many", "cloth"), 'the cut list has no column "outline", and its column "piece" holds words such as "panel": add a column "outline" with the outline of each piece'],
    [heads("piece", "outline", "how many", "How many"), 'the cut list has two columns headed "how many": keep one'],
    [heads("piece", "outline", "how many", "quantity"), 'the cut list has two columns that mean the same, "how many" and "quantity": keep one'],
    [heads("piece", "outline", "how mny", "cloth"), 'the cut list has a column headed "how mny"; is "how many" meant?'],
    [heads("peice", "outlin", "nr", "x"), 'the cut list has a column headed "peice"; is "piece" meant?'],
    [heads("piece", "outline", "how many", "seam"), 'the cut list\'s heading "seam" does not say whether the outlines have it: nothing is added here; head the column "seam included", or add it to the outlines with WITH_ALLOWANCE'],
    [heads("piece", "outline", "how many", "seam included"), 40],
    [yardage([...LIST, ["cuff", null, 4, "wool"]]), 'cuff has no outline in the column "outline"'],
    [yardage([...LIST, ["cuff", PANEL, null, "wool"]]), 'cuff is not counted: the column "how many" is empty there'],
    [yardage([...LIST, ["cuff", null, null, "wool"]]), "cuff has neither an outline nor how many to cut: fill them in, or clear its row"],
    [yardage([...LIST, ["cuff", PANEL, "four", "wool"]]), 'how many of cuff must be a whole number, not "four"'],
    [yardage([...LIST, ["cuff", "round", 4, "wool"]]), /^outline of cuff is not a valid piece: /],
    [yardage([HEADS]), "pieces is empty: give at least one outline and how many to cut"],
  ] as const)
    if (sentence instanceof RegExp) expect(said).toMatch(sentence);
    else expect(said).toBe(sentence);
}); // biome-ignore format: a table

test("CLOTH_CHECK reads the same list, and both say in their help how", () => {
  const answer = run(CLOTH_CHECK, [block(LIST), [54], [200], "wool"], setting);
  expect(answer).toBe("ok");
  expect(run(CLOTH_CHECK, [block(LIST), [54], [50]], setting)).toBe(
    "check: gore is 10 in longer than the cloth",
  );
  expect(blockSignature(YARDAGE)).toBe(
    "YARDAGE(cut_list; cloth_width; [cloth]; [one_way = FALSE]; [gap = 0]; [repeat = 0])",
  );
  const help = helpText(YARDAGE, "in");
  expect(help).toContain("=YARDAGE(cut_list; cloth_width)");
  expect(help).toContain(
    "on the fold, fold, on fold, cut on the fold, cut on fold: yes where the outline is half",
  );
});

test("the working of a block shows its columns and how many pieces there are", () => {
  const { given, steps } = explain(YARDAGE, [block(LIST), 54], setting);
  expect(given).toMatchObject({ quantities: [2, 2], names: ["panel", "gore"], cloth_width: 54, gap: 0 });
  expect(given).not.toHaveProperty("cut_list");
  expect(steps.find(({ name }) => name === "copies")?.value).toBe(4);
});

test("an unusual width is said for a block too", () => {
  expect(explain(YARDAGE, [block(LIST), 200], setting).unusual).toEqual([
    expect.stringMatching(/^the cloth_width 200 in is above/),
  ]);
});
