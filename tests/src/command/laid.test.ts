import { describe, expect, it } from "vitest";
import type { LayOrigin } from "../../../functions/lay.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { calculate } from "../../../src/command/calculate.ts";
import { check } from "../../../src/command/check.ts";
import { compare } from "../../../src/command/compare.ts";
import { unsureNote } from "../../../src/command/laid.ts";
import { solve } from "../../../src/command/solve.ts";
import { vary } from "../../../src/command/vary.ts";
import type { Io, Verb } from "../../../src/command/verb.ts";

/** A skirt of six gores with a lining on 59 in cloth, and the same on a length in hand. */
function skirtBook(): string {
  const book = blankBook("Skirt", "in", "1/8");
  const rows = [
    ["length", "42"],
    ["", ""],
    ["gore", '=GORE(5 1/2; 15; B1; ; ; "straight")'],
    ["cloth", "=YARDAGE(B3; 12; 59)"],
    ["buy", "=BUY_LENGTH(B4)"],
    ["in_hand", "90"],
    ["enough", "=CLOTH_CHECK(B3; 12; 59; B6)"],
  ];
  const trials = [{ title: "shorter", cells: { "Measure!B1": "40 1/2" } }];
  const names = { length: "B1", cloth: "B4", buy: "B5", in_hand: "B6", enough: "B7" };
  return writeBook({
    ...book,
    pages: book.pages.map((page, i) => (i === 0 ? { ...page, rows } : page)),
    names: Object.fromEntries(Object.entries(names).map(([name, cell]) => [name, `Measure!${cell}`])),
    trials,
  });
}

async function run(verb: Verb, ...args: string[]) {
  const out: string[] = [];
  const io: Io = {
    read: () => skirtBook(),
    bytes: () => new TextEncoder().encode(skirtBook()),
    write: () => {},
    out: (line) => void out.push(line),
    pass: (text) => void out.push(String(text)),
    err: (line) => void out.push(line),
  };
  const status = await verb.run(["book.json", ...args], io);
  return { status, text: out.join("\n") };
}

describe("figures that come from lays, on the command line", () => {
  it("say in JSON how each lay was found and what no lay can undercut", async () => {
    const { text } = await run(calculate, "--json");
    const { cloth, "how laid": laid } = JSON.parse(text);
    expect(laid.cloth).toEqual([
      { by: "quick", length: expect.closeTo(cloth, 6), least: expect.any(Number) },
    ]);
    expect(laid.cloth[0].least).toBeLessThanOrEqual(cloth);
    expect((await run(calculate, "--show", "cloth")).text).toMatch(/^cloth +\S+( \S+)? {2}\(quick\)$/);
  });

  it("are searched for as long as --seconds says, in each lay", async () => {
    const quick = JSON.parse((await run(calculate, "--json")).text);
    const searched = JSON.parse((await run(calculate, "--seconds", "0.5", "--json")).text);
    expect(searched.cloth).toBeLessThanOrEqual(quick.cloth);
    expect(searched["how laid"].cloth[0]).toMatchObject({ by: "search", seconds: expect.any(Number) });
    await expect(run(calculate, "--seconds", "soon")).rejects.toThrow(
      /^--seconds must be a number from 0 to 3600/,
    );
  });

  it("a list is searched for before it is said not to fit, and the no says so", async () => {
    const { text } = await run(calculate, "--show", "enough", "--set", "in_hand=104");
    expect(text).toMatch(/^enough +(ok|check: no place for \d+ of piece 1 was found \(searched for )/);
    expect((await run(check)).text).toMatch(
      /^enough \(Measure!B7\): no place for \d+ of piece 1 was found \(searched for .*\); .*, short by .* in; see Measure!B6$/,
    );
    const { text: area } = await run(check, "--set", "in_hand=80");
    expect(area).toMatch(/by area there is not enough: the pieces cover .* % of all the cloth/);
  });

  it("never grow with a shorter skirt in vary, which says when its steps say nothing", async () => {
    const { text } = await run(vary, "--cell", "length", "--from", "41", "--to", "42 1/2", "--step", "1/4", "--watch", "cloth", "--json"); // biome-ignore format: one command
    const { rows, notes, "how laid": laid } = JSON.parse(text);
    const lengths = rows.map((row: { cloth: number }) => row.cloth);
    expect(lengths).toEqual(lengths.toSorted((a: number, b: number) => a - b));
    expect(laid).toEqual({ by: "quick" });
    expect(notes[0]).toMatch(/^cloth: some steps differ by less than a lay is sure of \(quick: /);
  });

  it("say in solve and compare what they rest on", async () => {
    const { text } = await run(solve, "--cell", "length", "--make", "cloth", "--atmost", "110", "--from", "30", "--to", "44"); // biome-ignore format: one command
    expect(text).toMatch(
      /the lengths of cloth rest on lays \(.*\): a longer search may shorten each by some [\d.]+ %$/,
    );
    const { text: trials } = await run(compare, "--json");
    expect(JSON.parse(trials).trials[1]["how laid"].cloth.by).toMatch(/quick|search/);
  });

  it("differ by less than a lay is sure of when the difference is within what a search may still gain", () => {
    const note = (figures: number[], origin: LayOrigin) => unsureNote("cloth", figures, origin, "trials");
    expect(note([100, 105], { by: "quick" })).toMatch(
      /^cloth: some trials differ by less than a lay is sure of/,
    );
    expect(note([100, 100], { by: "quick" })).toBe("");
    expect(note([100, 120], { by: "quick" })).toBe("");
    expect(note([100, 105], { by: "search", seconds: 20 })).toBe("");
    expect(note([100, 101], { by: "search", seconds: 20 })).toMatch(/searched for 20 s.* by some 1 %/);
    expect(note([100, 101], { by: "search", seconds: 1, proved: true })).toBe("");
  });
});
