import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Declaration } from "../../../functions/define.ts";
import { unfold } from "../../../functions/pieces/cut-on-fold.ts";
import { edgeNumberOf } from "../../../functions/pieces/edge-names.ts";
import { edgeNumbers } from "../../../functions/pieces/edges.ts";
import {
  edgeLength,
  mirrorPiece,
  type Piece,
  readPiece,
  writePiece,
} from "../../../functions/pieces/piece.ts";
import { type Argument, explain, run } from "../../../functions/run.ts";
import { argumentsOf, setting } from "../laws.ts";

const skirt = "M 0 0 L 20 0 L 24 60 L 0 60 Z | edges waist, side, hem, centre front";
const call = (name: string, ...args: Argument[]) => run(catalogue.get(name)!, args, setting("cm"));
const namesOf = (answer: unknown): readonly string[] => readPiece(String(answer)).names;

test("names stand behind the path data and come back as they were written", () => {
  for (const text of [
    "M 0 0 L 9 0 L 9 9 L 0 0 Z | edges waist, side, centre back",
    "M 0 0 L 9 0 L 9 9 L 0 0 Z M 3 1 L 3 3 M 6 1 L 6 3 | fold inner | edges waist, side",
    "M 0 0 L 9 0 L 9 9 L 0 0 Z | edges , side, centre back",
    "M 0 0 L 9 0 L 9 9 L 0 0 Z M 3 1 L 3 3",
  ])
    expect(writePiece(readPiece(text))).toBe(text);
  const turned = readPiece("M 0 0 L 9 0 L 9 9 Z M 3 1 L 3 3 | edges  Waist,  centre   back |fold");
  expect(turned.names).toEqual(["Waist", "centre back", ""]);
  expect(turned.marks[0]!.role).toBe("fold");
});

test.each([
  ["M 0 0 L 9 0 L 9 9 Z | edges a, b, c, d", "4 edges are named, but there are only 3"],
  ["M 0 0 L 9 0 L 9 9 Z | edges waist, 2", '"2" can not be the name of an edge, which has letters in it'],
  ["M 0 0 L 9 0 L 9 9 Z | waist, hem", '"waist," is not a role of a mark'],
])("%s can not be read: %s", (text, reason) => {
  expect(() => readPiece(text)).toThrow(reason);
});

test("an edge is measured by its name in capital or small letters, or by its number, also as a text", () => {
  for (const edge of ["hem", " HEM ", 3, "3"]) expect(call("EDGE_LENGTH", skirt, edge)).toBe(24);
});

test.each([
  ["wasit", 'not "wasit"; is "waist" meant?'],
  ["collar", 'edge must be the name of an edge (waist, side, hem or centre front) or its number, from 1 to 4, not "collar"'],
  [5, "edge must be at most 4, because the piece has 4 edges, not 5"],
  [1.5, "edge must be a whole number, not 1.5"],
])("the edge %s is refused: %s", (edge, sentence) => {
  expect(call("EDGE_LENGTH", skirt, edge)).toMatchObject({ refusal: expect.stringContaining(sentence) });
}); // biome-ignore format: a table

test("a name that two edges have is refused with their numbers", () => {
  const joined = String(call("JOIN", skirt, "centre front", skirt, 4));
  expect(namesOf(joined)).toEqual(["waist", "side", "hem", "waist", "side", "hem"]);
  expect(call("EDGE_LENGTH", joined, "hem")).toMatchObject({
    refusal: 'edge must be a number where several edges have one name: 3 and 6 are all called "hem"',
  });
});

test("a list of edges holds names and numbers", () => {
  const piece = readPiece(skirt);
  expect([...edgeNumbers("centre front, 1; hem", piece, "fold_edges")]).toEqual([4, 1, 3]);
  expect([...edgeNumbers("1 2, side", piece, "fold_edges")]).toEqual([1, 2]);
});

test("the hem allowance goes to every edge named hem, in whatever place", () => {
  const godet = String(call("GODET", 20, 30, "straight"));
  const cut = readPiece(String(call("WITH_ALLOWANCE", godet, 1, 6)));
  const plain = readPiece(godet);
  const low = (piece: Piece) => Math.max(...piece.edges.flat().map(({ to }) => to[1]));
  expect(low(cut) - low(plain)).toBeCloseTo(6, 9);
});

test("Working, Drawing and refusals call an edge by its name", () => {
  const { steps, shapes } = explain(catalogue.get("EDGE_LENGTH")!, [skirt, 2], setting("cm"));
  expect(steps[0]!.rule).toBe("along the side");
  expect(shapes.flatMap((shape) => (shape.kind === "note" ? [shape.text] : []))).toEqual([
    "waist", "side", "hem", "centre front",
  ]); // biome-ignore format: a list
  expect(call("WITH_NOTCH", skirt, "waist", 30)).toMatchObject({
    refusal: "at must be at most 20 cm, the length of the waist, not 30 cm",
  });
});

test("a left side is the right side of the mirrored piece, opened on the fold too", () => {
  const gore = readPiece(String(call("GORE", 10, 30, 60)));
  expect(mirrorPiece(gore).names).toEqual(["waist", "left side", "hem", "right side"]);
  const half = readPiece(String(call("FLARED_PANEL", 30, 60, 50, "left")));
  expect(unfold(half)!.names).toEqual(["top", "right side", "hem", "hem", "left side", "top"]);
});

/** What the edges of the answer may be called, beside the names of the pieces given. */
const NEW_NAMES: Record<string, readonly string[]> = {
  FACING: ["inner line"],
  SPLIT: ["cut"],
  FLAT_COLLAR: ["neck edge", "front", "outer edge", "centre back"],
  SHOULDER_YOKE: ["front yoke line", "back yoke line"],
};
/** Functions whose answer has parts of the edges given, or none of them. */
const PARTS = ["SPLIT", "FACING", "FLAT_COLLAR", "SHOULDER_YOKE"];

/** The arguments of an example with each piece's edges named after the argument and the edge's number, and edges given by number. */
function withNames(declaration: Declaration, args: readonly Argument[]): Argument[] {
  const names = Object.keys(declaration.takes);
  return Object.entries(declaration.takes).map(([name, take], i) => {
    if (take.kind === "edge" && typeof args[i] === "string")
      return edgeNumberOf(readPiece(String(args[names.indexOf(take.of!)])), args[i], name);
    if (take.kind !== "piece" || typeof args[i] !== "string") return args[i] ?? null;
    const piece = readPiece(args[i]);
    return writePiece({ ...piece, names: piece.edges.map((_, n) => `${name} edge ${"abcdefgh"[n]}`) });
  });
}

const carriers = [...catalogue.values()].filter(
  ({ takes, returns }) => returns === "piece" && Object.values(takes).some(({ kind }) => kind === "piece"),
);

describe.each(carriers)("$name", (declaration) => {
  test.each(declaration.examples.map((example, i) => [i + 1, example] as const))(
    "the names of edges survive in example %i, each on its own edge",
    (_, example) => {
      const args = withNames(declaration, argumentsOf(declaration, example));
      const given = args.flatMap((arg) => {
        const path = typeof arg === "string" && arg.includes("| edges") ? arg : null;
        return path === null ? [] : [readPiece(path)];
      });
      const made = readPiece(String(run(declaration, args, setting(example.unit ?? "in"))));
      const known = given.flatMap(({ names }) => names);
      const added = NEW_NAMES[declaration.name] ?? [];
      for (const name of made.names) expect([...known, ...added]).toContain(name);
      const kept = made.names.filter((name) => known.includes(name));
      const shorter = ["JOIN", ...PARTS].includes(declaration.name);
      if (!shorter) expect(kept).toEqual(known);
      else expect(kept.length).toBeGreaterThanOrEqual(made.edges.length - added.length);
      // A name lies on its own edge: nothing but allowances and pleats changes its length.
      if (["WITH_ALLOWANCE", "OPEN_PLEATS", ...PARTS].includes(declaration.name)) return;
      const lengths = new Map(
        given.flatMap(({ names, edges }) => names.map((name, i) => [name, edgeLength(edges[i]!)])),
      );
      made.names.forEach((name, i) => {
        expect(edgeLength(made.edges[i]!), name).toBeCloseTo(lengths.get(name)!, 8);
      });
    },
  );
});

test("every function that makes a piece names all its edges", () => {
  const makers = [...catalogue.values()].filter((one) => one.returns === "piece" && !carriers.includes(one));
  expect(makers.length).toBeGreaterThan(12);
  for (const declaration of makers) {
    for (const example of declaration.examples) {
      if (declaration.name === "OUTLINE" && !example.given.names) continue;
      const answer = run(declaration, argumentsOf(declaration, example), setting(example.unit ?? "in"));
      expect(namesOf(answer), declaration.name).not.toContain("");
    }
  }
});
