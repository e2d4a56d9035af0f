import { expect, test } from "vitest";
import { CLOTH_CHECK } from "../../../functions/cloth/CLOTH_CHECK.ts";
import { YARDAGE } from "../../../functions/cloth/YARDAGE.ts";
import type { Lay, LayOrigin, Planner } from "../../../functions/lay.ts";
import { type Argument, besideAnswer, explain, isRefused, run } from "../../../functions/run.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const setting = { unit: "in", plan: quickLay } as const;
const check = (...args: Argument[]) => run(CLOTH_CHECK, args, setting);
const bodice = "M 0 2 C 3 2 5 0 5 0 L 12 1 C 9 4 10 8 13 9 L 12 20 L 0 22 Z";
const skirt = "M 0 0 L 12 0 L 20 38 L -6 38 Z";

test("the length that YARDAGE asks for is enough, and half of it is not", () => {
  const length = run(YARDAGE, [[bodice, skirt], [4, 4], 45], setting) as number;
  expect(check([bodice, skirt], [4, 4], [45], [length + 0.01])).toBe("ok");
  expect(check([bodice, skirt], [4, 4], [45], [length / 2])).toMatch(
    /^check: .*no place for .* of piece .* in a quick lay.*; all together take .* of 45 in cloth, short by .* in$/,
  );
});

test("two remnants do what neither does alone", () => {
  expect(check([skirt], [4], [30, 30], [80, 80])).toBe("ok");
  expect(check([skirt], [4], [30], [80])).toMatch(/^check: /);
  expect(check([skirt], [4], [30, 30], [80, 40])).toMatch(
    /^check: no place for 1 of piece 1 in a quick lay, a search may still find one; by themselves they take 38 in more of 30 in cloth$/,
  );
});

test("a no says how it is known: by area, by what must lie one after another, or how long was searched", () => {
  const panel = "M 0 0 H 30 V 40 H 0 Z";
  expect(check([panel], [3], [50], [71])).toBe(
    "check: by area there is not enough: the pieces cover 101.5 % of all the cloth; no place for 2 of piece 1 in a quick lay; all together take 120 in of 50 in cloth, short by 49 in",
  );
  // Two do not lie side by side: three take 120 in, although they are less than the cloth.
  expect(check([panel], [3], [50], [100])).toBe(
    "check: there is not enough: no lay of these pieces on 50 in cloth is shorter than 120 in; no place for 1 of piece 1 in a quick lay; all together take 120 in of 50 in cloth, short by 20 in",
  );
  const searched = (origin: LayOrigin) =>
    run(CLOTH_CHECK, [["M 0 0 H 27 V 40 H 0 Z"], [3], [54], [60]], {
      unit: "in",
      plan: (question) => ({ ...(quickLay(question) as Lay), origin }),
    });
  const short = "all together take 80 in of 54 in cloth, short by 20 in";
  expect(searched({ by: "search", seconds: 10 })).toBe(
    `check: no place for 1 of piece 1 was found (searched for 10 s); ${short}`,
  );
  expect(searched({ by: "search", seconds: 0 })).toBe(
    `check: no place for 1 of piece 1 was found by a search; ${short}`,
  );
  expect(searched({ by: "hand" })).toBe(`check: no place for 1 of piece 1 in the lay made by hand; ${short}`);
});

test("a list that fits in a lay of such cloth without an end fits", () => {
  // As when a search has shortened the one lay and not yet the other.
  const plan: Planner = (question) => {
    const lay = quickLay(question) as Lay;
    const [cloth] = question.cloths;
    return cloth!.length === null ? { ...lay, lengths: [60] } : lay;
  };
  const given: Argument[] = [["M 0 0 H 27 V 40 H 0 Z"], [3], [54], [60]];
  expect(run(CLOTH_CHECK, given, { unit: "in", plan })).toBe("ok");
});

test("a piece too wide and one too long are both named, each with what it lacks on the nearest cloth", () => {
  const names = ["cape", "train"];
  const pieces = ["M 0 0 H 60 V 20 H 0 Z", "M 0 0 H 20 V 100 H 0 Z"];
  const more: Argument[] = [false, 0, 0, null, null, names];
  expect(check(pieces, [1, 1], [54], [90], ...more)).toBe(
    "check: cape is 6 in wider than the cloth; train is 10 in longer than the cloth",
  );
  expect(check(pieces, [1, 1], [54, 58], [99, 30], ...more)).toBe(
    "check: cape is 2 in wider than cloth 2; train is 1 in longer than cloth 1",
  );
});

test("a strip that may lie across the cloth is not too long for it, and a bias square needs its diagonal", () => {
  const lying = (grain: string): Argument[] => [false, 0, 0, null, null, ["strip"], [grain]];
  const strip = "M 0 0 H 8 V 40 H 0 Z";
  expect(check([strip], [1], [45], [10], ...lying(""))).toBe("check: strip is 30 in longer than the cloth");
  expect(check([strip], [1], [45], [10], ...lying("cross"))).toBe("ok");
  // 10 √2 = 14.14 each way.
  const square = "M 0 0 H 10 V 10 H 0 Z";
  expect(check([square], [1], [14.2], [14.2], ...lying("bias"))).toBe("ok");
  expect(check([square], [1], [14], [20], ...lying("bias"))).toMatch(
    /^check: strip is .* wider than the cloth$/,
  );
});

test("a cloth of which only one side was measured is asked for", () => {
  const answer = check([skirt], [1], [45, 54, null], [60, null, null]);
  expect(isRefused(answer) && answer.refusal).toBe(
    "lengths, number 2, is empty: measure that piece of cloth",
  );
});

test("what finds no place is drawn beneath the cloth", () => {
  const { shapes } = explain(CLOTH_CHECK, [[skirt], [4], [30], [80]], setting);
  const labels = shapes.flatMap((shape) => ("label" in shape ? [shape.label] : []));
  expect(labels).toContainEqual(expect.stringMatching(/^no place: \d of piece 1$/));
});

test("a join lies on a whole mark of the tape, and where none is found the sentence says after how many lays", () => {
  const joining = (piece: string, width: number, length: number) =>
    String(check([piece], [1], width, length, false, 0, 0, null, null, ["cape"], null, null, 0.5));
  const said = joining("M 0 0 H 60.3 V 40 H 0 Z", 54.1, 90);
  const [, from] = /cape in two, ([\d /]+) in from its left border/.exec(said)!;
  const [whole, eighths = "0/8"] = from!.trim().split(" ");
  const at = Number(whole) + Number(eighths.split("/")[0]) / Number(eighths.split("/")[1]);
  // 6.2 in and the allowance are over on one side; the part with it must not be wider than the cloth.
  expect(Math.max(at, 60.3 - at) + 0.5).toBeLessThanOrEqual(54.1 + 1e-9);
  expect(joining("M 0 0 H 60 V 40 H 0 Z", 30, 50)).toMatch(
    /; in \d+ lays no join was found with which it fits$/,
  );
});

test("beside the verdict stands which pieces to cut from which cloth", () => {
  const beside = (...args: Argument[]) => besideAnswer(CLOTH_CHECK, args, setting);
  const cloths = [[skirt], [4], [30, 30]] as const;
  expect(beside(...cloths, [80, 80])).toBe("cut 2 of piece 1 from cloth 1; cut 2 of piece 1 from cloth 2");
  expect(beside([skirt], [4], [60], [90])).toBe("cut all 4 pieces from cloth 1");
  const strips = Array.from({ length: 7 }, (_, i) => `M 0 0 H 30 V ${10 + i} H 0 Z`);
  expect(
    beside(
      strips,
      strips.map(() => 1),
      [30, 30],
      [50, 50],
    ),
  ).toMatch(
    /^cut (1 of piece \d, )*1 of piece \d from cloth 1; cut (1 of piece \d, )*1 of piece \d from cloth 2$/,
  );
  expect(
    beside(
      strips,
      strips.map(() => 1),
      [30, 30],
      [80, 20],
    ),
  ).toMatch(/^cut (1 of piece \d, ){4}2 more kinds from cloth 1; cut 1 of piece \d from cloth 2$/);
  // What found no place is named by the verdict itself.
  expect(beside(...cloths, [80, 40])).toBe("cut 2 of piece 1 from cloth 1; cut 1 of piece 1 from cloth 2");
});

test("a piece that is called like the mirror image of another leads to its own row", () => {
  const points: unknown[] = [];
  const names = ["front", "front, mirrored"];
  const pieces = ["M 0 0 H 10 V 10 H 0 Z", "M 0 0 H 40 V 40 H 0 Z"];
  // The large piece finds no place beside the pair of small ones.
  const args = [pieces, [2, 1], [45, 12], [45, 12], null, null, null, ["yes", "no"], null, names];
  const verdict = run(CLOTH_CHECK, args, {
    ...setting,
    plan: (question) => {
      const lay = quickLay(question);
      return "refusal" in lay || question.cloths.length === 1 ? lay : { ...lay, missing: [[2, 1]] };
    },
    points: (at) => points.push(at),
  });
  expect(verdict).toMatch(/no place for 1 of front, mirrored/);
  expect(points).toEqual([{ position: 0, cell: 1 }]);
});

test("of very many pieces without a place some are named, and the others counted", () => {
  const names = Array.from({ length: 60 }, (_, i) => `strip ${i + 1}`);
  const ask = (outline: string) =>
    check(names.map(() => outline), names.map(() => 1), [45, 36], [20, 20], null, null, null, null, null, names); // biome-ignore format: one call
  const large = String(ask("M 0 0 H 90 V 90 H 0 Z"));
  expect(large).toContain(
    "strip 6 is 45 in wider and 70 in longer than cloth 1; 54 more pieces fit on no cloth either",
  );
  expect(large).not.toContain("strip 7");
  const missing = String(ask("M 0 0 H 9 V 19 H 0 Z"));
  expect(missing).toMatch(/no place for (?:1 of strip \d+, ){12}\d+ more kinds in a quick lay/);
  expect(missing.length).toBeLessThan(450);
});
