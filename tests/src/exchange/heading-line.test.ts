import * as XLSX from "@e965/xlsx";
import { describe, expect, test } from "vitest";
import { readCsv } from "../../../src/exchange/read-csv.ts";
import { understood, written } from "./foreign-files.ts";

/** One table in several file formats: its headings and the kinds of its columns, or the first row where it has no headings. */
async function read(rows: readonly (readonly (string | number)[])[], type: "csv" | "xlsx" | "ods") {
  if (type !== "csv") {
    const { book } = await understood(
      written({ Table: XLSX.utils.aoa_to_sheet(rows.map((row) => [...row])) }, type),
    );
    return book.pages[0]!.columns.map(({ heading, kind }) => `${heading}: ${kind}`);
  }
  const found = readCsv(new TextEncoder().encode(rows.map((row) => row.join(",")).join("\r\n")), "Table");
  if ("refusal" in found) throw new Error(found.refusal);
  return found.page.columns.map(({ heading, kind }) => `${heading}: ${kind}`);
}

describe.each(["csv", "xlsx", "ods"] as const)("a table as %s", (type) => {
  test("has headings where a text of its own stands over each column and a figure below", async () => {
    expect(await read([["seam", "taken in"], ["side", 0.5]], type)).toEqual(["seam: any", "taken in: any"]);
    expect(await read([["seam", "day"], ["side", "2026-05-04"]], type)).toEqual(["seam: any", "day: any"]);
  }); // biome-ignore format: tables

  test("has none where a column has no text over it, two have the same, the text is a figure or a date, or all below is text", async () => {
    const none = [": any", ": any"];
    expect(await read([["seam", "taken in"], ["side", 0.5, "twice"], ["hem", 1, "once"]], type)).toEqual([...none, ": any"]);
    expect(await read([["seam", "Seam "], ["side", 0.5]], type)).toEqual(none);
    expect(await read([["seam", "2026-05-04"], ["side", 0.5]], type)).toEqual(none);
    expect(await read([["seam", "50 %"], ["side", 0.5]], type)).toEqual(none);
    expect(await read([["linen", "wool"], ["side", "hem"]], type)).toEqual(none);
  }); // biome-ignore format: tables

  test("keeps a column as text where a number begins with 0 or has more digits than a figure, but not a date", async () => {
    const kinds = async (text: string) => (await read([["who", "n"], ["cook", text], ["smith", "x1"], ["groom", "3 in"]], type))[1];
    expect(await kinds("0170 555 123")).toBe("n: text");
    expect(await kinds("1234567890123456")).toBe("n: text");
    expect(await kinds("04.05.2026")).toBe("n: any");
    expect(await kinds("0.5")).toBe("n: any");
  }); // biome-ignore format: tables
});
