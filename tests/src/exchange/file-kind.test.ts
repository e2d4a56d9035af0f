import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { fileKind } from "../../../src/exchange/file-kind.ts";

const kindOf = (text: string, name = "file") => {
  const found = fileKind(new TextEncoder().encode(text), name);
  return "kind" in found ? found.kind : found.refusal;
};

test("a file is judged by how it begins, whatever its name says", () => {
  expect(kindOf('{\n  "ellwand": 1', "list.csv")).toBe("book");
  expect(kindOf("{}", "list.json")).toBe("book");
  expect(kindOf("not a book", "book.json")).toBe("book");
  expect(kindOf("name;waist\nMiller;76", "list.svg")).toBe("table");
  expect(kindOf("{waist};{hip}\n1;2", "list.csv")).toBe("table");
  expect(kindOf("PK\u0003\u0004rest", "list.csv")).toBe("table");
  expect(kindOf('<?xml version="1.0"?><!-- traced --><svg viewBox="0 0 1 1">', "piece.txt")).toBe("outline");
  expect(kindOf('<s:svg xmlns:s="http://www.w3.org/2000/svg">')).toBe("outline");
  expect(kindOf("  0\r\nSECTION\r\n  2\r\nENTITIES", "a.csv")).toBe("outline");
  expect(fileKind(readFileSync("templates/peplum-bodice.json"), "x.csv")).toEqual({ kind: "book" });
  const wide = new Uint8Array([0xff, 0xfe, ...[..."<svg>"].flatMap((sign) => [sign.charCodeAt(0), 0])]);
  expect(fileKind(wide, "piece.svg")).toEqual({ kind: "outline" });
});

test("what no reader takes is refused in one sentence, and nothing of it is run", () => {
  expect(kindOf("%PDF-1.7", "list.csv")).toBe(
    "it is a PDF; save the table or the drawing in the program it was made with",
  );
  expect(kindOf("")).toBe("the file is empty");
  expect(kindOf("MZ\u0090", "list.csv")).toMatch(/^it is a program/);
  expect(kindOf("<html><table>", "old.xls")).toMatch(/^it is a web page/);
  expect(kindOf("<feed/>", "x.xml")).toMatch(/marked-up text/);
  expect(fileKind(new Uint8Array([0x89, 0x50, 0x4e, 0x47]), "a.csv")).toMatchObject({ refusal: /picture/ });
});
