import fc from "fast-check";
import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Declaration } from "../../functions/define.ts";
import { selfCrossing } from "../../functions/geometry/self-crossing.ts";
import { flattenPiece, pieceBounds, readPiece } from "../../functions/pieces/piece.ts";
import { type Argument, run } from "../../functions/run.ts";
import { anyArguments, argumentsNearExamples, setting } from "./laws.ts";

const makers = [...catalogue.values()].filter(({ returns }) => returns === "piece");
const takesPiece = ({ takes }: Declaration) => Object.values(takes).some(({ kind }) => kind === "piece");

/** The path data of an answer, which must be a simple outline at any fineness, or null when the call is refused. */
function outlineOf(declaration: Declaration, args: readonly Argument[]): string | null {
  const answer = run(declaration, args, setting("cm"));
  if (typeof answer !== "string") return null;
  const call = `${declaration.name} ${JSON.stringify(args)}`;
  const piece = readPiece(answer);
  const { left, right, low, high } = pieceBounds(piece);
  const size = Math.max(right - left, high - low);
  for (const fineness of [1 / 200, 1 / 8000])
    expect(selfCrossing(flattenPiece(piece, size * fineness)), call).toBeNull();
  return answer;
}

test("every function that gives a piece gives a simple outline or refuses, for usual and for extreme arguments", () => {
  for (const declaration of makers) {
    const calls = [
      ...fc.sample(anyArguments(declaration), { seed: 6, numRuns: 60 }),
      ...fc.sample(argumentsNearExamples(declaration), { seed: 6, numRuns: 20 }),
    ];
    const outlines = calls.map((args) => outlineOf(declaration, args));
    expect(outlines.some(Boolean), declaration.name).toBe(true);
  }
});

test("every function that changes a piece does so for the pieces of all others, changed again and again", () => {
  const pool = makers
    .filter((declaration) => !takesPiece(declaration))
    .flatMap((declaration) =>
      fc
        .sample(argumentsNearExamples(declaration), { seed: 66, numRuns: 3 })
        .map((args) => run(declaration, args, setting("cm"))),
    )
    .filter((answer) => typeof answer === "string");
  const changers = makers.filter(takesPiece);
  const draws = fc.tuple(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 4 }));
  const answered = new Set<string>();
  for (const declaration of changers) {
    const kinds = Object.entries(declaration.takes);
    const asked = fc.sample(fc.tuple(anyArguments(declaration), draws), { seed: 666, numRuns: 100 });
    for (const [args, [at, edge]] of asked) {
      const with_ = kinds.map(([, { kind }], i): Argument => {
        if (kind === "piece") return pool[(at + i * 7) % pool.length]!;
        // Lengths of a seam, a facing or a dart beside pieces of a hand's or a wearer's size; an edge that is there.
        if (kind === "length" && typeof args[i] === "number") return (args[i] * 0.05) as Argument;
        return kind === "edge" && args[i] !== null ? edge : args[i]!;
      });
      const outline = outlineOf(declaration, with_);
      if (outline !== null) answered.add(declaration.name);
      if (outline !== null && outline.length < 2000) pool.push(outline);
    }
  }
  expect([...answered].sort()).toEqual(
    expect.arrayContaining(["FACING", "JOIN", "TURN", "WITH_ALLOWANCE", "WITH_DART"]),
  );
});

test("panels within a hair of a whole circle are whole circles", () => {
  const panel = catalogue.get("CIRCLE_PANEL")!;
  const flared = catalogue.get("FLARED_PANEL")!;
  for (const straight of ["left", "middle", "right"])
    for (const hair of [1.373e-10, 8e-10, 1e-12, -1e-12, -1e-9, -1e-6]) {
      for (const [waist, length] of [[0.5, 0.5], [72, 60], [140.8, 60]] as const)
        expect(outlineOf(panel, [waist, length, 1 + hair, 1, 0, straight])).not.toBeNull();
      expect(outlineOf(flared, [30, 30 + 2 * Math.PI * 40 * (1 + hair), 40, straight])).not.toBeNull();
    } // biome-ignore format: pairs
});

test("the facing of a flared panel has four strokes, and takes allowances", () => {
  const panels = fc.tuple(
    fc.integer({ min: 240, max: 480 }).map((eighths) => eighths / 8),
    fc.integer({ min: 400, max: 700 }).map((eighths) => eighths / 8),
    fc.integer({ min: 320, max: 720 }).map((eighths) => eighths / 8),
  );
  for (const [top, hem, depth] of fc.sample(panels, { seed: 60, numRuns: 100 })) {
    const panel = outlineOf(catalogue.get("FLARED_PANEL")!, [top, top + hem / 2, depth]);
    const facing = outlineOf(catalogue.get("FACING")!, [panel, 1, 4])!;
    expect(readPiece(facing).edges.map(({ length }) => length)).toEqual([1, 1, 1, 1]);
    expect(outlineOf(catalogue.get("WITH_ALLOWANCE")!, [facing, 1.5, 3])).not.toBeNull();
  }
});
