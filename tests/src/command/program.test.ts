import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Papa from "papaparse";
import { afterAll, describe, expect, test } from "vitest";
import { writeBook } from "../../../src/book/write.ts";
import { fileName, harmless, machine, outputFault } from "../../../src/command/machine.ts";
import { bookOf } from "../engine/whatif-books.ts";

const folder = mkdtempSync(join(tmpdir(), "ellwand-"));
afterAll(() => rmSync(folder, { recursive: true }));
const inFolder = (name: string): string => join(folder, name);
const book = writeBook(bookOf({ apron: "=RECTANGLE(20;30)", long: "=PIECE_LENGTH(apron)" }));
writeFileSync(inFolder("book.json"), book);
mkdirSync(inFolder("folder"));

describe("the machine's files", () => {
  const read = (path: string) => () => machine.read(path);
  test("what can't be read is told with its reason", () => {
    expect(read(inFolder("none.json"))).toThrow(
      /none\.json: there is no such file; check its name and folder$/,
    );
    expect(read(inFolder("folder"))).toThrow(/folder: it is a folder; give the file in it$/);
    expect(read(inFolder("book.json/page"))).toThrow(/is taken for a folder and is a file$/);
    expect(read(inFolder("x".repeat(400)))).toThrow(/the name is too long for a file$/);
    expect(fileName("-")).toBe("standard input");
  });

  test("folders are made on the way, and what can't be written is told with its reason", () => {
    machine.write(inFolder("new/deep/one.svg"), "<svg/>");
    machine.write(inFolder("new/deep/one.svg"), "<svg />");
    expect(readFileSync(inFolder("new/deep/one.svg"), "utf8")).toBe("<svg />");
    const write = (path: string) => () => machine.write(path, "");
    expect(write(inFolder("book.json/one.svg"))).toThrow(
      /can't be written: a file stands where its folder should be/,
    );
    expect(write(inFolder("folder"))).toThrow(/can't be written: a folder has that name/);
    expect(write("/dev/null/one.svg")).toThrow(/can't be written: a file stands where/);
  });

  test.runIf(process.platform === "linux")(
    "a folder that can never be made is refused, not tried for ever",
    () => {
      expect(() => machine.write("/proc/nowhere/one.svg", "")).toThrow(/can't be written: /);
    },
  );

  test("a terminal gets no orders from a cell, and keeps the ends of lines as they are", () => {
    expect(harmless("a\tb\r\nc\n\u001b[2Jd\re\u009b")).toBe("a\tb\r\nc\n\ufffd[2Jd\ufffde\ufffd");
  });

  test("a reader that goes away is no fault, a full disk is", () => {
    expect(outputFault({ code: "EPIPE" })).toBeNull();
    expect(outputFault({ code: "ENOSPC" })).toBe(
      "the answer can't be written: the disk is full; make room, or choose another disk",
    );
  });
});

describe("the program in a shell", () => {
  const shell = (line: string, input = "") =>
    spawnSync("sh", ["-c", line.replaceAll(/\bellwand (?=[a-z])/g, "node src/setup/ellwand.mjs ")], {
      input,
      encoding: "utf8",
    });

  test("is built with the notices of all that is in it, the writer of PDFs and its type among them", () => {
    expect(shell("ellwand help").status).toBe(0);
    const text = readFileSync("dist/command/notices.txt", "utf8");
    for (const words of [
      ...["pdfkit 0.", "fontkit ", "dejavu-fonts-ttf ", "hyperformula 3."],
      ...["Bitstream Vera Fonts Copyright", "GNU GENERAL PUBLIC LICENSE"],
    ])
      expect(text).toContain(words);
  });

  test("reads a book from standard input", () => {
    const { stdout, stderr, status } = shell("ellwand calculate - --show long --json", book);
    expect([status, stderr, JSON.parse(stdout)]).toEqual([0, "", { long: 30 }]);
  });

  test("hands a table of figures and texts to another program sign by sign", () => {
    const slit = '=IF(depth>27;"-1+cmd|x";IF(depth>26;"say ""two"", twice";4))';
    writeFileSync(inFolder("slit.json"), writeBook(bookOf({ depth: "26", slit, twice: "=2*depth-54" })));
    const { stdout, stderr, status } = shell(
      `ellwand vary ${inFolder("slit.json")} --cell depth --from 26 --to 28 --step 1 --watch slit,twice --csv`,
    );
    expect([stderr, status]).toEqual(["", 0]);
    const { data, errors } = Papa.parse(stdout, { newline: "\r\n" });
    expect(errors).toEqual([]);
    expect(data).toEqual([
      ["depth", "slit", "twice"],
      ["26", "4", "-2"],
      ["27", 'say "two", twice', "0"],
      ["28", "'-1+cmd|x", "2"],
      [""],
    ]);
  });

  test("says nothing when the reader goes away early", () => {
    const { stdout, stderr } = shell("ellwand functions --json | head -1");
    expect([stdout, stderr]).toEqual(["[\n", ""]);
  });

  test("writes the pieces of a book and says where", () => {
    const { stdout, status } = shell(`ellwand draft ${inFolder("book.json")} --out ${inFolder("pieces")}`);
    expect(status).toBe(0);
    expect(stdout).toMatch(/pieces\/apron\.svg {2}apron, piece 20 × 30, on /);
    expect(readdirSync(inFolder("pieces"))).toEqual(["apron.svg"]);
  });

  test("refuses in one line, and with --json in one document", () => {
    const plain = shell(`ellwand draft ${inFolder("book.json")} --out /dev/null/pieces`);
    expect([plain.status, plain.stdout]).toEqual([2, ""]);
    expect(plain.stderr).toMatch(/^\/dev\/null\/pieces\/apron\.svg can't be written: [^\n]*\n$/);
    const json = shell(`ellwand draft ${inFolder("book.json")} --out /dev/null/pieces --json`);
    expect([json.status, json.stderr]).toEqual([2, ""]);
    expect(JSON.parse(json.stdout)).toEqual({ error: plain.stderr.trimEnd() });
  });
});
