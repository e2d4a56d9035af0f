/** Which functions the page loads first. */
import { readdirSync, readFileSync } from "node:fs";
import { HyperFormula } from "hyperformula";
import { expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { tokens } from "../../../src/book/formula.ts";
import { readBook } from "../../../src/book/read.ts";
import { typedAt } from "../../../src/book/shape.ts";
import { formulaPlaces } from "../../../src/engine/book-for-engine.ts";
import { workedBook } from "../../../src/engine/fitted-cells.ts";
import { isFunction } from "../../../src/engine/function-names.ts";
import { lateNames, sewingFiles } from "../../../src/setup/late-functions.ts";

it("every sewing function is loaded at the start or late, and formulas know each late name", async () => {
  const { first, late } = sewingFiles();
  const name = (path: string) => /([A-Z0-9_]+)\.ts$/.exec(path)![1]!;
  expect([...first, ...late].map(name).sort()).toEqual([...catalogue.keys()]);
  const names = await lateNames();
  const known = new Set(HyperFormula.getRegisteredFunctionNames("enGB"));
  expect(names.filter((one) => !known.has(one) || !isFunction(one))).toEqual([]);
});

it("the book of a first start, as it is calculated, waits for no function", async () => {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const book = workedBook(reading.book);
  const late = new Set(await lateNames());
  const named = formulaPlaces(book)
    .flatMap(({ page, row, column }) => tokens(typedAt(book, page, row, column)))
    .filter(({ kind }) => kind === "function")
    .map(({ text }) => text.toUpperCase());
  expect(named.length).toBeGreaterThan(50);
  expect(named.filter((one) => late.has(one))).toEqual([]);
});

/** The statements at the outside of a file, each from its first line to the line that ends it. */
const outside = (text: string): string[] => text.split(/\n(?=\S)/);

it("nothing on the page keeps what it made of the catalogue before the late functions came", () => {
  const files = ["src", "functions"].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((path) => /\.tsx?$/.test(path))
      .map((path) => `${folder}/${path}`),
  );
  const keeping = files.flatMap((path) =>
    outside(readFileSync(path, "utf8"))
      // A function asks anew each time; `ofCatalogue` makes it anew.
      .filter((one) => /^(?:export )?(?:const|let) /.test(one))
      .filter((one) => /\bcatalogue\b/.test(one.split(/=>|ofCatalogue/)[0]!))
      .map(() => path),
  );
  // The help and the command line are loaded when every function is there.
  expect(keeping.filter((path) => !/^src\/(?:app\/help|command|setup|package)\//.test(path))).toEqual([
    "functions/catalogue.ts",
  ]);
});
