/**
 * A full-size pattern of six pieces over some thirty sheets of A4, and the other documents of the ready book,
 * by the processor's time, beside a model of it at 1/8 on one sheet: the ratio is worth more than the milliseconds.
 * Goal: the pattern under 2 s.
 */
import { readFileSync } from "node:fs";
import { it } from "vitest";
import { readBook } from "../../src/book/read.ts";
import type { Book } from "../../src/book/shape.ts";
import { Engine } from "../../src/engine/engine.ts";
import { piecesOf } from "../../src/engine/pieces.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { type LaidOut, laidOut } from "../../src/paper/documents.ts";
import { DOCUMENTS, type PaperRequest } from "../../src/paper/kinds.ts";
import { bookOf } from "../src/engine/whatif-books.ts";
import { print } from "./heard.ts";

const DAY = new Date(2026, 4, 20);

const PIECES = bookOf({
  front: "=WITH_ALLOWANCE(PLEATED_PANEL(14; 20; 26; 6; 1); 1/2)",
  back: "=WITH_ALLOWANCE(FLARED_PANEL(16; 24; 26); 1/2)",
  cape: "=WITH_ALLOWANCE(CIRCLE_PANEL(16; 14; 1/2); 1/2)",
  sleeve: "=WITH_NOTCH(WITH_ALLOWANCE(FLARED_PANEL(12; 16; 20); 1/2); 2; 6)",
  yoke: "=WITH_ALLOWANCE(RECTANGLE(18; 6); 1/2)",
  cuff: "=WITH_ALLOWANCE(FLARED_PANEL(9; 11; 3 1/2); 1/2)",
});

/** Milliseconds of the processor. */
async function cpu<T>(act: () => T | Promise<T>): Promise<[T, number]> {
  const before = process.cpuUsage();
  const made = await act();
  const { user, system } = process.cpuUsage(before);
  return [made, (user + system) / 1000];
}

async function times(book: Book, request: Omit<PaperRequest, "day">) {
  const runs: { out: number; drawn: number; sheets: number; size: number }[] = [];
  for (let i = 0; i < 3; i += 1) {
    const engine = new Engine(book, layDesk);
    for (const { place } of piecesOf(engine).found) engine.view(place);
    const [laid, out] = await cpu(() => laidOut(engine, { ...request, day: DAY }));
    if ("reason" in laid) throw new Error(laid.reason);
    const [{ bytes, sheets }, drawn] = await cpu(() => (laid as LaidOut).print());
    runs.push({ out, drawn, sheets, size: bytes.length });
    engine.destroy();
  }
  return runs.sort((a, b) => a.out + a.drawn - b.out - b.drawn)[1]!;
}

const row = (name: string, { out, drawn, sheets, size }: Awaited<ReturnType<typeof times>>, unit: number) => [
  name,
  String(sheets),
  out.toFixed(0),
  drawn.toFixed(0),
  (out + drawn).toFixed(0),
  ((out + drawn) / unit).toFixed(1),
  (size / 1024).toFixed(0),
];

it("a pattern over thirty sheets, and every other document", async () => {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  // The type and the writer are loaded once.
  await times(PIECES, { what: "pattern", paper: "a0" });
  const model = await times(PIECES, { what: "pattern", paper: "a4", scale: "1/8" });
  const unit = model.out + model.drawn;
  const rows = [row("pattern, 1/8", model, unit)];
  for (const paper of ["a4", "letter", "a3", "roll=36in"])
    rows.push(row(`pattern, ${paper}`, await times(PIECES, { what: "pattern", paper }), unit));
  for (const { name } of DOCUMENTS)
    rows.push(
      row(
        `peplum, ${name}`,
        await times(reading.book, { what: name, paper: "a4", cells: name === "working" ? ["hem"] : [] }),
        unit,
      ),
    );
  print("documents: milliseconds of the processor", [
    ["", "sheets", "laid out", "drawn", "in all", "models", "kB"],
    ...rows,
  ]);
});
