import fc from "fast-check";
import { expect, test } from "vitest";
import type { CutRow } from "../../../functions/cutting/cut-list.ts";
import { fnv1a, layQuestion, questionHash, questionText } from "../../../functions/cutting/lay-question.ts";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import type { LayQuestion } from "../../../functions/lay.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";

const row = (path: string, more: Partial<CutRow> = {}): CutRow => ({
  name: "sleeve",
  piece: readPiece(path),
  quantity: 2,
  paired: false,
  folded: false,
  grain: "straight",
  ...more,
});
const cloth = [{ name: "cloth", width: 100, length: null }];
const plain = { oneWay: false, gap: 0, repeat: 0 };
const ask = (rows: CutRow[], laying = plain) => layQuestion(rows, cloth, laying, 0.02);

test("a piece is turned a quarter to lie along the selvedge and is not mirrored", () => {
  // A left-hand L: a reflection would put its foot on the other side and change the way round.
  const path = "M 3 1 L 4 1 L 4 6 L 6 6 L 6 7 L 3 7 Z";
  const { outline } = ask([row(path)]).pieces[0]!;
  expect(outline).toEqual(
    [
      [0, 2],
      [5, 2],
      [5, 0],
      [6, 0],
      [6, 3],
      [0, 3],
    ].map((p) => expect.arrayContaining(p)),
  );
  expect(signedArea(outline)).toBeCloseTo(-signedArea([...outline].reverse()), 9);
  expect(Math.sign(signedArea(outline))).toBe(1);
});

test("a pair is half as cut and half mirrored, on nap neither is turned round", () => {
  const { pieces } = ask([row("M 0 0 L 4 0 L 6 9 L 0 9 Z", { quantity: 4, paired: true })], {
    ...plain,
    oneWay: true,
  });
  expect(pieces.map(({ name, quantity, turns }) => [name, quantity, turns])).toEqual([
    ["sleeve", 2, [0]],
    ["sleeve, mirrored", 2, [0]],
  ]);
  const [one, other] = pieces.map(({ outline }) => signedArea(outline));
  expect(one).toBeCloseTo(-other!, 9);
});

test("a piece opened out on its fold keeps the fold as a line down its middle, from edge to edge", () => {
  // Half of 6 wide and 9 long, its left side the fold; the top slopes from 0 at the fold to 2.
  const [whole] = ask([row("M 0 0 L 6 2 L 6 9 L 0 9 Z", { quantity: 1, folded: true })]).pieces;
  const sorted = [...whole!.fold!].sort((a, b) => a[0] - b[0]);
  expect(sorted).toEqual([
    [0, 6],
    [9, 6],
  ]);
  expect(ask([row("M 0 0 H 6 V 9 H 0 Z")]).pieces[0]).not.toHaveProperty("fold");
});

test("inner folds of pleats go along with the piece and its mirror image, and change nothing of its name", () => {
  const pleated = "M 0 0 H 30 V 10 H 0 Z M 6 0 V 10 M 7 0 V 10 M 8 0 V 10";
  const { pieces } = ask([row(pleated, { paired: true })]);
  // Across the cloth 30 - 7 from one selvedge; in the mirror image 7.
  expect(pieces.map(({ innerFolds }) => innerFolds!.map((line) => line.map(([, y]) => y)))).toEqual([
    [[23, 23]],
    [[7, 7]],
  ]);
  expect(questionHash(ask([row(pleated)]))).toBe(questionHash(ask([row("M 0 0 H 30 V 10 H 0 Z")])));
});

test("with a repeat the outline's first point is what must match, in its mirror image too", () => {
  const [one, other] = ask([row("M 2 3 L 9 0 L 9 9 L 0 9 Z", { paired: true })], {
    ...plain,
    repeat: 12,
  }).pieces;
  expect(one!.match).toEqual([3, 7]);
  expect(other!.match).toEqual([3, 2]);
  expect(one!.outline).toContainEqual(one!.match);
});

test("the hash is FNV-1a as its authors publish it", () => {
  // Test vectors of draft-eastlake-fnv, appendix C, from memory.
  expect(fnv1a("")).toBe("cbf29ce484222325");
  expect(fnv1a("a")).toBe("af63dc4c8601ec8c");
  expect(fnv1a("foobar")).toBe("85944171f73967e8");
});

test("the hash is the same as one worked with whole numbers of any size", () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(..."[],.-0123456789nul") }), (text) => {
      let hash = 0xcbf29ce484222325n;
      for (const sign of text)
        hash = BigInt.asUintN(64, (hash ^ BigInt(sign.charCodeAt(0))) * 0x100000001b3n);
      expect(fnv1a(text)).toBe(hash.toString(16).padStart(16, "0"));
    }),
    { seed: 3 },
  );
});

test("a question has another hash when anything that bears on the lay changes, and the same when a name does", () => {
  const question = ask([row("M 0 0 L 4 0 L 6 9 L 0 9 Z")]);
  const piece = question.pieces[0]!;
  const first = cloth[0]!;
  const changed: LayQuestion[] = [
    { ...question, gap: 1 },
    { ...question, repeat: 1 },
    { ...question, pieces: [{ ...piece, quantity: 3 }] },
    { ...question, pieces: [{ ...piece, turns: [0] }] },
    { ...question, pieces: [{ ...piece, match: [0, 0] }] },
    { ...question, pieces: [{ ...piece, outline: piece.outline.map(([x, y]) => [x, y * 1.001]) }] },
    { ...question, cloths: [{ ...first, width: 99 }] },
    { ...question, cloths: [{ ...first, length: 99 }] },
    { ...question, cloths: [{ ...first, flaws: [piece.outline] }] },
    { ...question, cloths: [{ ...first, outline: piece.outline }] },
    { ...question, pinned: [{ piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 }] },
  ];
  expect(new Set([question, ...changed].map(questionHash)).size).toBe(12);
  expect(questionHash({ ...question, pieces: [{ ...piece, name: "cuff" }] })).toBe(questionHash(question));
});

test("a question is told in the same words when its figures differ by less than a millionth", () => {
  const question = ask([row("M 0 0 L 4 0 L 6 9 L 0 9 Z")]);
  expect(questionText({ ...question, gap: 1e-9 })).toBe(questionText(question));
});
