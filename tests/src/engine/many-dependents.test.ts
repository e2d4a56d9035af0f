import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { indexDependents } from "../../../src/engine/many-dependents.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { Random } from "../../attack/random.ts";

const ROWS = 90;
const entryOf = (random: Random, row: number): string =>
  random.pick([`=ease+${row}`, "=$B$1+ease", "=B1*2", `=SUM(B1:B2)+${row}`, "7", ""]);

function bookOf(random: Random): Book {
  const blank = blankBook("The baker's coat", "cm", "1 mm");
  const rows = random.many(ROWS, (row) => [entryOf(random, row), row < 2 ? `${row + 3}` : ""]);
  return {
    ...blank,
    names: { ease: "Measure!B2" },
    pages: blank.pages.map((page, i) => (i === 0 ? { ...page, rows } : page)),
  };
}

test("cells that many formulas rest on lose none and gain each, whatever is typed and taken out again", () => {
  const random = new Random(5);
  let book = bookOf(random);
  const engine = new Engine(book, layDesk);
  const values = (one: Engine) => Array.from({ length: ROWS }, (_, row) => one.value({ page: 0, row, column: 0 }));
  for (let step = 0; step < 60; step += 1) {
    const typings = random.many(3, () => {
      const row = random.below(ROWS);
      return { page: 0, row, column: 0, typed: entryOf(random, row) };
    });
    const ease = { page: 0, row: random.below(2), column: 1, typed: `${random.below(50)}` };
    book = type(book, step % 2 === 0 ? typings : [...typings, ease]);
    engine.become(book);
    if (step % 10 > 7) expect(values(engine)).toEqual(values(new Engine(book, layDesk)));
  }
}); // biome-ignore format: short

test("thousands of formulas rest on one cell without a look through all of them for each", () => {
  let looks = 0;
  const dependents: number[] = [];
  dependents.includes = (id) => {
    looks += dependents.length;
    return dependents.indexOf(id) >= 0;
  };
  const graph = {
    edgesSparseArray: [dependents],
    getNodeIdIfNotNumber: (node: unknown) => node as number,
    addEdge: (_: unknown, to: unknown) => {
      if (!dependents.includes(to as number)) dependents.push(to as number);
    },
  };
  indexDependents(graph);
  for (let id = 1; id <= 3000; id += 1) graph.addEdge(0, id);
  expect(dependents).toHaveLength(3000);
  expect(looks).toBeLessThan(3000);
  graph.addEdge(0, 1500);
  expect(dependents).toHaveLength(3000);
  // One that was taken out is put in again.
  delete dependents[1499];
  graph.addEdge(0, 1500);
  expect(dependents.filter((id) => id === 1500)).toEqual([1500]);
});
