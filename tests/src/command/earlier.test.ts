/**
 * Books that earlier builds saved, beside what those builds answered for every named cell. A book opens
 * for ever: each answer is still the same, but for what those builds got worse: lays may be shorter now.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../../src/command/main.ts";

const folder = join(import.meta.dirname, "data/earlier");
const books = readdirSync(folder).filter((name) => !name.endsWith(".answers.json"));

type Answers = Readonly<Record<string, number | string | boolean | null>>;

/** The outline of a piece without the names of its edges, which the first builds did not write. */
const figuresOf = (piece: string): number[] =>
  piece
    .split("|")[0]!
    .match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)!
    .map(Number);

/** Pieces that lie closer across the cloth touch elsewhere along it: far less than the tape shows. */
const LAYS_WITHIN = 0.005;

/** The shape of the first builds' petticoat was up to 3/1000 off. */
const OUTLINES_WITHIN = 3e-3;

/** Answers that were changed on purpose, and by how much. */
const CHANGED: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  // The join of a binding, where it is left out, is round on either tape: 2.5 cm, not 1 in.
  "2026-11-25-peplum-cm.json": { hem_binding: 0.04 },
};

async function answersOf(file: string): Promise<Answers> {
  const out: string[] = [];
  const status = await main(["calculate", join(folder, file), "--json"], {
    read: (path) => readFileSync(path, "utf8"),
    bytes: (path) => readFileSync(path),
    write: () => {},
    out: (text) => out.push(text),
    pass: (text) => out.push(text),
    err: (text) => out.push(text),
  });
  expect(status).toBe(0);
  return JSON.parse(out.join("\n"));
}

describe.each(books)("%s", (file) => {
  test("every named cell answers as the build that saved it did", async () => {
    const before: Answers = JSON.parse(
      readFileSync(join(folder, file.replace(/\.json$/, ".answers.json")), "utf8"),
    );
    const now = await answersOf(file);
    expect(Object.keys(now)).toEqual(expect.arrayContaining(Object.keys(before)));
    // How each lay was found is said since; a search that a build kept may have another effort now.
    for (const [name, was] of Object.entries(before).filter(([name]) => name !== "how laid")) {
      const is = now[name];
      if (typeof was === "string" && /^M /.test(was)) {
        const [a, b] = [figuresOf(was), figuresOf(String(is))];
        expect(b.length, name).toBe(a.length);
        expect(Math.max(...b.map((figure, i) => Math.abs(figure - a[i]!))), name).toBeLessThan(
          OUTLINES_WITHIN,
        );
      } else if (typeof was === "number" && /length|buy/.test(name)) {
        expect(is as number, name).toBeLessThanOrEqual(was + LAYS_WITHIN);
        expect(is as number, name).toBeGreaterThan(0.85 * was);
      } else if (typeof was === "number")
        expect(Math.abs((is as number) - was), name).toBeLessThan((CHANGED[file]?.[name] ?? 0) + 1e-8);
      else expect(is, name).toEqual(was);
    }
  });
});
