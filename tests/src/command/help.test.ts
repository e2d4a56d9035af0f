import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { writeBook } from "../../../src/book/write.ts";
import { main, VERBS } from "../../../src/command/main.ts";
import type { Io } from "../../../src/command/verb.ts";
import { bookOf } from "../engine/whatif-books.ts";

const FILES: Record<string, string> = {
  "book.json": writeBook({
    ...bookOf({ waist: "27", hem: "=waist*2" }),
    trials: [
      { title: "As cut", cells: { "Draft!B1": "27" } },
      { title: "Fuller", cells: { "Draft!B1": "30" } },
    ],
  }),
  "pieces.json": JSON.stringify({
    stripWidth: 30,
    pieces: [{ id: "yoke", quantity: 2, outline: [[0, 0], [10, 0], [10, 4], [0, 4]] }],
  }),
}; // biome-ignore format: points in pairs

/** Runs a command line; files are read from the project's folder, written ones are kept. */
async function run(line: string) {
  const [out, err, written]: [string[], string[], string[]] = [[], [], []];
  const io: Io = {
    read: (path) => FILES[path] ?? readFileSync(path, "utf8"),
    bytes: (path) => readFileSync(path),
    write: (path) => written.push(path),
    out: (text) => out.push(text),
    pass: (text) => out.push(text),
    err: (text) => err.push(text),
  };
  const words = [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, word]) => quoted ?? word!);
  return { status: await main(words, io), out: out.join("\n"), err: err.join("\n"), written };
}

describe.each([...VERBS])("the help of $name", (verb) => {
  test("names every option of its usage line, each with what it does, and no other", async () => {
    const { out, status } = await run(`${verb.name} --help`);
    expect(status).toBe(0);
    const inUsage = new Set([...verb.usage.matchAll(/--([a-z-]+)/g)].map(([, name]) => name!));
    expect(new Set(Object.keys(verb.options))).toEqual(inUsage);
    for (const [name, { about }] of Object.entries(verb.options))
      expect(out).toMatch(new RegExp(`^  --${name}\\b.*  ${about.replace(/[^\w ]/g, ".")}$`, "m"));
    expect(out).toContain(verb.writes);
    expect(out).toMatch(/^ {2}0 {2}done$/m);
    expect(out).toMatch(/^ {2}2 {2}the request was wrong/m);
  });

  // A verb that goes on until it is interrupted has its examples run by a test of its own.
  test.skipIf(verb.lasting).each([...verb.examples])("%s", async (example) => {
    expect(example.split(" ")[0]).toBe(verb.name);
    const { status, out, err, written } = await run(example);
    expect([err, out !== "" || written.length > 0]).toEqual(["", true]);
    expect(verb.problems ? [0, 1] : [0]).toContain(status);
    expect(written.length > 0).toBe(/--out|--svg/.test(example));
    if (example.includes("--json")) expect(() => JSON.parse(out)).not.toThrow();
  });
});
