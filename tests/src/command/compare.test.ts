import { expect, test } from "vitest";
import { panelSkirt } from "../engine/whatif-books.ts";
import { run } from "./io.ts";

const book = {
  ...panelSkirt(),
  trials: [
    { title: "deeper", cells: { "Draft!B4": "31 in" } },
    { title: "broken", cells: { "Draft!B4": "31 in", "Draft!B3": "0" } },
  ],
};

test("compare gives each trial's settings and answers as data", async () => {
  const { status, out } = await run(book, "compare", "book.json", "--json");
  expect(status).toBe(0);
  const { trials } = JSON.parse(out);
  expect(trials[0]).toMatchObject({
    title: "as it stands",
    cells: { depth: "30 in" },
    answers: { cloth: 99, buy: 99 },
  });
  expect(trials[1]).toMatchObject({
    title: "deeper",
    cells: { depth: "31 in" },
    answers: { cloth: 102, buy: 103.5 },
  });
  expect(trials[2].answers.cloth.error).toMatch(/divides by zero/);
});

test("compare puts the trials side by side for people", async () => {
  const { out } = await run(book, "compare", "book.json", "--set", "fullness=1");
  const lines = out.split("\n");
  expect(lines[0]).toMatch(/^\s+as it stands\s+deeper\s+broken$/);
  expect(lines.find((line) => line.startsWith("depth"))).toMatch(/^depth\s+30 in\s+31 in\s+31 in$/);
  expect(lines.find((line) => line.startsWith("cloth "))).toMatch(/^cloth\s+33\s+34\s+this divides by zero/);
});

test("a book without trials is told so", async () => {
  const { status, err } = await run(panelSkirt(), "compare", "book.json");
  expect(status).toBe(2);
  expect(err).toBe("this book keeps no trials; keep a setting under a title in What if first");
});

test("two books are compared: what was typed otherwise, and what came of it", async () => {
  const { status, out } = await run(panelSkirt(), "compare", "book.json", "other.json");
  expect(status).toBe(0);
  expect(out.split("\n").slice(0, 4)).toEqual([
    "Cells:",
    "  depth (Draft!B4): 30 in -> 31 in",
    "",
    "What came of it:",
  ]);
  expect(out).toContain("  cloth (Draft!B8): 99 -> 102");
  const same = await run(panelSkirt(), "compare", "book.json", "book.json");
  expect(same.out).toBe("the two books are the same");
  const data = JSON.parse((await run(panelSkirt(), "compare", "book.json", "other.json", "--json")).out);
  expect(data.answers.length).toBeGreaterThan(1);
  expect((await run(panelSkirt(), "compare", "book.json", "other.json", "--show", "hem")).status).toBe(2);
});
