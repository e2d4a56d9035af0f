/**
 * What it costs to bring a table in and to write a book out, in processor time, since a busy machine says
 * little in wall time. The goals: 10,000 rows in 2 s, the ready book in 1 s.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/tables.speed.ts
 */
import { readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import { it } from "vitest";
import { readBook } from "../../src/book/read.ts";
import { Engine } from "../../src/engine/engine.ts";
import { readTable, understandTable } from "../../src/exchange/read-table.ts";
import { writeOds } from "../../src/exchange/write-ods.ts";
import { writeXlsx } from "../../src/exchange/write-xlsx.ts";
import { layDesk } from "../../src/lay/desk.ts";

const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
async function cost<T>(what: string, act: () => Promise<T>): Promise<T> {
  const [began, clock] = [worked(), performance.now()];
  const found = await act();
  const [cpu, wall] = [worked() - began, performance.now() - clock];
  console.log(
    `${what.padEnd(44)} ${cpu.toFixed(0).padStart(6)} ms of processor, ${wall.toFixed(0).padStart(6)} ms`,
  );
  return found;
}

const ROWS = 10_000;
const HEADINGS = ["role", "waist (cm)", "hip (cm)", "taken", "price", "shoe", "note", "sum"];
const row = (i: number) => [
  `role ${i}`,
  60 + (i % 40) / 2,
  90 + (i % 30),
  46_000 + (i % 300),
  12.5,
  `0${i % 50}`,
  "from the mill",
];

function sheetOf(type: "xlsx" | "ods"): Uint8Array {
  const sheet = XLSX.utils.aoa_to_sheet([HEADINGS, ...Array.from({ length: ROWS }, (_, i) => row(i))]);
  for (let i = 0; i < ROWS; i += 1)
    sheet[`H${i + 2}`] = {
      t: "n",
      v: (row(i)[1] as number) + (row(i)[2] as number),
      f: `B${i + 2}+C${i + 2}`,
    };
  sheet["!ref"] = `A1:H${ROWS + 1}`;
  return new Uint8Array(
    XLSX.write({ SheetNames: ["Cast"], Sheets: { Cast: sheet } }, { type: "array", bookType: type }),
  );
}

const csv = new TextEncoder().encode(
  [HEADINGS.join(";"), ...Array.from({ length: ROWS }, (_, i) => row(i).join(";").replaceAll(".", ","))].join(
    "\r\n",
  ),
);

it("a table of 10,000 rows is brought in", async () => {
  for (const [name, bytes] of [["cast.csv", csv], ["cast.xlsx", sheetOf("xlsx")], ["cast.ods", sheetOf("ods")]] as const) {
    const bring = async () => {
      const read = await readTable(bytes, name);
      if ("refusal" in read) throw new Error(read.refusal);
      return understandTable(read, {}, { decimal: "point", unit: "cm", desk: layDesk });
    };
    await cost(`${name}, ${(bytes.length / 1e6).toFixed(1)} MB, first`, bring);
    const found = await cost(`${name}, again`, bring);
    if ("refusal" in found) throw new Error(found.refusal);
    const engine = await cost(`${name}, its book calculated on the page`, async () => new Engine(found.book, layDesk));
    engine.destroy();
  }
}, 120_000); // biome-ignore format: a list

it("the ready book is written", async () => {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  for (const [name, write] of [
    ["xlsx", writeXlsx],
    ["ods", writeOds],
  ] as const) {
    await cost(`peplum-bodice.${name}, first`, () => write(engine));
    await cost(`peplum-bodice.${name}, again`, () => write(engine));
  }
}, 60_000);
