import fc from "fast-check";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { csvText } from "../../../src/engine/csv.ts";
import { often } from "../../often.ts";

/** What another program reads, the blank line after the last line break left off. */
const read = (text: string): string[][] => {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: ",", newline: "\r\n" });
  expect(errors).toEqual([]);
  expect(data.pop()).toEqual([""]);
  return data;
};

/** The cases of RFC 4180, section 2, rules 1 to 7. */
test.each([
  ["each line ends with CR LF, the last too", [["aaa", "bbb"], ["zzz", "yyy"]], "aaa,bbb\r\nzzz,yyy\r\n"],
  ["spaces are part of a field", [["a b", " c "]], 'a b," c "\r\n'],
  ["a line break, a comma and a quote stand within quotes", [["b\r\nbb", "c,c", "\n"]], '"b\r\nbb","c,c","\'\n"\r\n'],
  ["a quote within quotes is written twice", [["aaa", 'b"bb']], 'aaa,"b""bb"\r\n'],
  ["a blank field", [["", "a", ""]], ",a,\r\n"],
])("RFC 4180: %s", (_, lines, text) => {
  expect(csvText(lines)).toBe(text);
}); // biome-ignore format: a table

test.each([
  "=1+1", "+1+cmd|x", "-1+cmd|x", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "  =1", "\u00a0@x", "\u200b=1", "\ufeff=1",
  "-", "- 1", "-1.5 in", "+1/2", "＝1", "-1.5\t", "--1", "-1e", "-.", "=",
])("%j is marked as text", (text) => {
  expect(read(csvText([[text, "x"]]))).toEqual([[`'${text}`, "x"]]);
}); // biome-ignore format: a list

test.each([
  "-1.5",
  "+2",
  "-.5",
  "-3.",
  "1e-7",
  "-1E+300",
  " -2 ",
  "27 1/2",
  "waist",
  "1+1",
  "a=b",
  "'=1",
  "",
])("%j stays as it is", (text) => {
  expect(read(csvText([[text, "x"]]))).toEqual([[text, "x"]]);
});

test("another program reads back whatever texts there are, and none as a formula", () => {
  const hostile = fc.array(fc.constantFrom(..."=+-@\t\r\n\"', ;1.5e|a\u0000\u0085"), { maxLength: 6 });
  const text = fc.oneof(fc.string({ unit: "binary" }), hostile.map((signs) => signs.join(""))); // biome-ignore format: short
  const table = fc.array(fc.array(text, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(table, (lines) => {
      const back = read(csvText(lines));
      expect(back.map((line) => line.length)).toEqual(lines.map((line) => line.length));
      back.flat().forEach((field, i) => {
        const was = lines.flat()[i]!;
        expect([was, `'${was}`]).toContain(field);
        if (!Number.isFinite(Number(field))) expect(field.trimStart()).not.toMatch(/^[=+\-@]/);
      });
    }),
    { seed: 20_261_127, numRuns: often(500) },
  );
});
