import fc from "fast-check";
import { expect, test } from "vitest";
import { readTape } from "../../../functions/fractions.ts";
import { findPlace } from "../../../src/book/address.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { explain } from "../../../src/engine/explain.ts";
import { sharedOut } from "../../../src/engine/shared-out.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { run } from "../command/io.ts";
import { bookOf } from "./whatif-books.ts";

const inches = { unit: "in", mark: "1/8" } as const;

test("six gores of a waist of 27 1/4 are not six of 4 1/2", () => {
  expect(sharedOut(27.25 / 6, 6, inches)).toBe(
    "6 of 4 1/2 make 27, 1/4 less than 27 1/4: make 4 of 4 1/2 and 2 of 4 5/8, or 5 of 4 1/2 and one of 4 3/4",
  );
  expect(sharedOut(27.375 / 6, 6, inches)).toMatch(/^6 of 4 5\/8 make 27 3\/4, .*, or each 4 9\/16$/);
  expect(sharedOut(4.5, 6, inches)).toBeNull();
  expect(sharedOut(28.4 / 3, 3, { unit: "cm", mark: "1 mm" })).toMatch(
    /^3 of 9.5 make 28.5, 0.1 more than 28.4: make 1 of 9.4 and 2 of 9.5/,
  );
});

test("every way that is offered adds up to the whole on the tape", () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 900 }), fc.integer({ min: 2, max: 24 }), (eighths, parts) => {
      const whole = eighths / 8;
      const said = sharedOut(whole / parts, parts, inches);
      if (said === null) return;
      const ways = said.replace(/^.*?: make /, "").split(", or ");
      for (const way of ways.filter((one) => !one.startsWith("each"))) {
        const sum = way.split(" and ").reduce((total, one) => {
          const [, count, length] = /^(one|\d+) of (.+)$/.exec(one)!;
          return total + (count === "one" ? 1 : Number(count)) * readTape(length!, "in")!.length;
        }, 0);
        expect(sum, said).toBeCloseTo(whole, 9);
      }
    }),
    { seed: 20261127, numRuns: 300 },
  );
});

test("the working says it of a cell that divides a length and of a function's step that does", async () => {
  const book = bookOf({
    waist: "27 1/4 in", gores: "6", gore: "=waist/gores", half: "=waist/2",
    dart: "=DART_INTAKE(waist;25;4)",
  }); // biome-ignore format: a book
  const engine = new Engine(book, layDesk);
  const working = (name: string) => explain(engine, findPlace(book, book.names[name]!)!);
  expect(working("gore").parts).toMatch(/^6 of 4 1\/2 make 27, 1\/4 less than 27 1\/4/);
  expect(working("half").parts).toBeNull();
  const step = working("dart").calls[0]!.steps.find(({ name }) => name === "intake");
  expect(step?.parts).toMatch(/^4 of 5\/8 make 2 1\/2, 1\/4 more than 2 1\/4: make .*, or each 9\/16$/);
  engine.destroy();
  expect((await run(book, "explain", "book.json", "gore")).out).toContain(
    "6 of 4 1/2 make 27, 1/4 less than 27 1/4",
  );
  expect((await run(book, "explain", "book.json", "dart")).out).toContain("4 of 5/8 make 2 1/2");
  expect(JSON.parse((await run(book, "explain", "book.json", "gore", "--json")).out)[0].parts).toMatch(
    /^6 of 4 1\/2/,
  );
});
