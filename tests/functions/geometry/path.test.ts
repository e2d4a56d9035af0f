import { Bezier } from "bezier-js";
import fc from "fast-check";
import svgpath from "svgpath";
import { expect, test } from "vitest";
import { readPath, writePath } from "../../../functions/geometry/path.ts";
import { distance, type Point, strokeLength } from "../../../functions/geometry/strokes.ts";
import { edgeLength, readPiece, writePiece } from "../../../functions/pieces/piece.ts";

const SEED = 1999;
const length = (text: string) =>
  readPath(text).reduce((sum, { edges }) => sum + edges.reduce((all, edge) => all + edgeLength(edge), 0), 0);

/** The length by another route: svgpath makes all absolute curves and lines, bezier-js measures them. */
function lengthElsewhere(text: string): number {
  let sum = 0;
  let start: Point = [0, 0];
  svgpath(text)
    .abs()
    .unshort()
    .unarc()
    .iterate(([letter, ...numbers], _, x, y) => {
      const n = numbers as number[];
      const to = (p: Point) => distance([x, y], p);
      if (letter === "M") start = [n[0]!, n[1]!];
      if (letter === "L") sum += to([n[0]!, n[1]!]);
      if (letter === "H") sum += to([n[0]!, y]);
      if (letter === "V") sum += to([x, n[0]!]);
      if (letter === "Z") sum += to(start);
      if (letter === "C" || letter === "Q") {
        const curve = new Bezier(x, y, ...n);
        for (let i = 0; i < 8; i += 1) sum += curve.split(i / 8, (i + 1) / 8).length();
      }
    });
  return sum;
}

const step = fc.double({ min: -20, max: 20, noNaN: true }).map((x) => Math.round(x * 100) / 100);
const command = fc.oneof(
  fc.tuple(fc.constantFrom("L", "l", "T", "t"), fc.array(step, { minLength: 2, maxLength: 2 })),
  fc.tuple(fc.constantFrom("H", "h", "V", "v"), fc.array(step, { minLength: 1, maxLength: 1 })),
  fc.tuple(fc.constantFrom("C", "c"), fc.array(step, { minLength: 6, maxLength: 6 })),
  fc.tuple(fc.constantFrom("S", "s", "Q", "q"), fc.array(step, { minLength: 4, maxLength: 4 })),
  fc
    .tuple(fc.constantFrom("A", "a"), step, step, step, fc.boolean(), fc.boolean(), step, step)
    .map(([letter, rx, ry, turn, large, sweep, x, y]): [string, number[]] => [
      letter,
      [Math.abs(rx) + 1, Math.abs(ry) + 1, turn * 9, large ? 1 : 0, sweep ? 1 : 0, x, y],
    ]),
);

test("any path is as long as two other libraries together find it", () => {
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 8 }), fc.boolean(), (commands, closed) => {
      const text = `M 3 4 ${commands.map(([letter, n]) => letter + n.join(" ")).join(" ")}${closed ? " Z" : ""}`;
      const wanted = lengthElsewhere(text);
      // Z's line home is added when a piece is read, not before.
      const found = readPath(text)[0]!;
      const end = found.edges.at(-1)?.at(-1)?.to ?? found.start;
      const home = closed ? distance(end, found.start) : 0;
      expect(Math.abs(length(text) + home - wanted)).toBeLessThan(1e-3 * Math.max(1, wanted));
    }),
    { seed: SEED, numRuns: 300 },
  );
});

// Pairs of texts that the SVG 2 specification (section 9.3) says mean the same.
test.each([
  ["M 100 100 L 200 200", "M100 100L200 200", "blanks may be left out"],
  ["M 100 200 L 200 100 -100 -200", "M 100 200 L 200 100 L -100 -200", "a letter need not be repeated"],
  ["M 0.6 0.5 L 1 1", "M 0.6.5L1 1", "a second point begins a new number"],
  ["M 100 -200 L 3 4", "M 100-200L3 4", "a minus begins a new number"],
  ["m 10 10 l 5 0 0 5", "M 10 10 L 15 10 L 15 15", "small letters are relative"],
  ["M 0 0 1 1 2 0", "M 0 0 L 1 1 L 2 0", "more pairs after M are lines"],
  ["m 1 1 2 2", "M 1 1 l 2 2", "after m they are relative"],
  ["M 0 0 a 5 5 0 1 1 3 3", "M 0 0 a5 5 0 113 3", "flags need no blanks"],
  ["M 0 0 C 1 2 3 4 5 6 S 9 9 10 0", "M 0 0 C 1 2 3 4 5 6 C 7 8 9 9 10 0", "S reflects the last handle"],
  ["M 0 0 Q 1 2 4 4 T 9 9", "M 0 0 Q 1 2 4 4 Q 7 6 9 9", "T reflects it too"],
  ["M 0 0 L 4 4 S 9 9 10 0", "M 0 0 L 4 4 C 4 4 9 9 10 0", "S after a line has none to reflect"],
  ["M 0 0 A 0 7 0 0 1 5 5", "M 0 0 L 5 5", "an arc of radius 0 is a line (9.5.1)"],
  ["M 0 0 A 1 1 0 0 1 10 0", "M 0 0 A 5 5 0 0 1 10 0", "a radius too small grows to fit (9.5.1)"],
  ["M 0 0 A -5 -5 0 0 1 10 0", "M 0 0 A 5 5 0 0 1 10 0", "a radius below zero is taken above (9.5.1)"],
  [
    "M 0 0 h 4 v 3 H 0 z m 1 1 l 1 0",
    "M 0 0 L 4 0 L 4 3 L 0 3 Z M 1 1 L 2 1",
    "z goes back to the beginning",
  ],
  ["M1e1-.5L2E-1 4", "M 10 -0.5 L 0.2 4", "figures may have an exponent"],
])("%s is %s: %s", (one, other) => {
  const flat = (text: string) =>
    readPath(text).map(({ edges, closed }) => [
      closed,
      edges.flat().map((stroke) => [stroke.kind, stroke.to]),
    ]);
  expect(flat(one)).toEqual(flat(other));
  expect(length(one)).toBeCloseTo(length(other), 12);
});

test("half a circle, three quarters and an ellipse are as long as they must be", () => {
  expect(length("M 0 0 A 5 5 0 0 1 10 0")).toBeCloseTo(5 * Math.PI, 12);
  expect(length("M 5 0 A 5 5 0 1 1 0 -5")).toBeCloseTo(7.5 * Math.PI, 12);
  // GI-02: an ellipse of semi-axes 15 and 10, leaning by 30°; told in curves of at most 15°.
  const [x, y] = [15 * Math.cos(Math.PI / 6), 15 * Math.sin(Math.PI / 6)];
  const ellipse = `M ${x} ${y} A 15 10 30 0 1 ${-x} ${-y} A 15 10 30 0 1 ${x} ${y}`;
  expect(Math.abs(length(ellipse) - 79.327197946453)).toBeLessThan(1e-6);
});

const corner = fc.tuple(step, step);
test("what is written and read again has the same strokes", () => {
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 6 }), corner, (commands, [x, y]) => {
      const text = `M ${x} ${y} ${commands.map(([letter, n]) => letter + n.join(" ")).join(" ")}`;
      const once = writePath(readPath(text));
      const twice = writePath(readPath(once));
      const [a, b] = [readPath(once), readPath(twice)];
      expect(b.map(({ edges }) => edges.length)).toEqual(a.map(({ edges }) => edges.length));
      expect(length(twice)).toBeCloseTo(length(once), 8);
      expect(length(once)).toBeCloseTo(length(text), 6);
      a.forEach(({ edges }, i) => {
        edges.forEach((edge, j) => {
          expect(distance(edge.at(-1)!.to, b[i]!.edges[j]!.at(-1)!.to)).toBeLessThan(1e-9);
        });
      });
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("a line in an edge of curves is a line again when read, an arc in an edge with lines stays an arc", () => {
  const kinds = (text: string) =>
    readPiece(writePiece(readPiece(text))).edges.map((edge) => edge.map(({ kind }) => kind));
  expect(kinds("M 0 0 C 1 1 2 1 3 0 4 -1 5 -1 6 0 L 6 9 0 9 Z")[0]).toEqual(["curve", "curve"]);
  expect(kinds("M 0 0 C 1 0 2 0 3 0 4 -1 5 -1 6 0 L 6 9 0 9 Z")[0]).toEqual(["line", "curve"]);
  expect(kinds("M 0 0 A 0 0 0 0 0 4 0 2 2 0 0 1 6 2 L 6 9 0 9 Z")[0]).toEqual(["line", "arc"]);
});

test.each([
  ["", "the outline is empty"],
  ["M", 'path data has no numbers after "M"'],
  ["L 1 1", 'path data must begin with "M"'],
  ["Z", 'path data must begin with "M"'],
  ["M 0 0 L 4 0 L 4 4 Z Z", "path data closes an outline twice"],
  ["M 0 0 L 1", 'path data stops short after "L 1"'],
  ["M 0 0 L 5 NaN 3 3 Z", 'path data stops short after "L 5"'],
  ["M 0 0 L 1e999 3 Z", "path data can not hold a figure as large as 1e999"],
  ["M 0 0 A 5 5 0 2 1 9 9 Z", 'path data stops short after "A 5 5 0"'],
  ["skirt", 'path data must begin with "M"'],
  ["front", 'path data can not hold "front"'],
  ["M 0 0 L 10 0 L 10 10", "the outline is open: it begins at (0, 0) and ends at (10, 10); close it with Z"],
  ["M 0 0 L 10 0 L 5 0 Z", "the outline has no area"],
  ["M 0 0 L 10 10 L 10 0 L 0 10 Z", "the outline crosses itself near (5, 5)"],
  ["M 0 0 L 5 5 L 10 10 L 10 0 L 5 5 L 0 10 Z", "the outline crosses itself near (5, 5)"],
  ["M 0 0 A 5 5 0 0 1 10 0 Z M 0 0 L <script>", 'path data has no numbers after "L"'],
])("%s is refused: %s", (text, sentence) => {
  expect(() => readPiece(text)).toThrow(sentence);
});

test("a hundred kilobytes of junk are refused at the first sign that makes no sense", () => {
  const junk = ["x", "M", "M 0 0 L ", "9", " ", ",", "M 0 0 Z ", "M 0 0 A 1 1 "].map((text) =>
    text.repeat(100_000 / text.length),
  );
  for (const text of junk) expect(() => readPiece(text)).toThrow(/path data|empty/);
  const many = `M ${Array.from({ length: 9000 }, (_, i) => `${i} ${(i * i) % 97}`).join(" ")} Z`;
  expect(() => readPiece(many)).toThrow("the outline has 8999 strokes, more than 5000");
});

test("strokes of length nothing are left out", () => {
  const { edges } = readPath("M 0 0 L 0 0 5 0 A 3 3 0 0 1 5 0 C 5 0 5 0 5 0 L 9 9")[0]!;
  for (const stroke of edges.flat()) expect(strokeLength(stroke)).toBeGreaterThan(0);
});

test("a figure is read to the last digit as Number reads it (seed 1999)", () => {
  const digits = (most: number) =>
    fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: most }).map((list) => list.join(""));
  const written = fc
    .tuple(fc.constantFrom("", "-", "+"), digits(9), digits(24), fc.constantFrom("", "", "e-3", "E-12"))
    .map(([sign, whole, decimals, power]) => `${sign}${whole || "0"}.${decimals}${power}`);
  const shown = fc.double({ min: -1e9, max: 1e9, noNaN: true }).map((value) => value.toPrecision(15));
  fc.assert(
    fc.property(fc.oneof(written, shown), (text) => {
      expect(readPath(`M 0 0 L ${text} 1e6`)[0]!.edges[0]![0]!.to[0]).toBe(Number(text));
    }),
    { seed: SEED, numRuns: 300 },
  );
});
