/** Book files that a bad disk, a wrong hand or somebody hostile has changed. */
import { readFileSync } from "node:fs";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { define } from "../generator.ts";
import { argument } from "../pieces-of-formula.ts";
import { bookWith, engineFault, SHORT } from "../probe.ts";
import type { Random } from "../random.ts";

/** The command starts in the project's folder. */
const READY = readFileSync("templates/peplum-bodice.json", "utf8");

/** A small book with something in each of its parts. */
const SMALL: Book = {
  ...bookWith([
    "=B1+1",
    "=SUM(2:5)",
    "=SUM(B:B)",
    "=PLEATED_PANEL(B1;3;1)",
    "16 1/2",
    "=D1*Cut!A1",
    "=hem+1",
  ]),
  trials: [{ title: "deeper", cells: { "Measure!B1": "6", "Measure!D5": "17" } }],
};
const small = (() => {
  const [first, ...rest] = SMALL.pages;
  const marks = {
    ...first!,
    notes: { D1: "over the corset" },
    cells: { D5: { choices: "16; 17", decimals: 2 } },
    names: { waist: "Measure!D1" },
    frozen: 1,
    hidden: ["4:5"],
  };
  return JSON.parse(writeBook({ ...SMALL, pages: [marks, ...rest] } as unknown as Book)) as unknown;
})();
const SMALL_TEXT = JSON.stringify(small);

const KEYS = ["__proto__", "constructor", "prototype", "toString", "", "A1", "Measure!B3", "measure!$B$3", "Measure!ZZ99999", "=1", "length"]; // biome-ignore format: a list
const VALUES: readonly unknown[] = [null, true, 0, -1, 1e308, 0.5, "", "x", "=1+1", "Measure!$B$3", "Measure!A:Z", "__proto__", [], {}, [[]], "a".repeat(5000), 20_001]; // biome-ignore format: a list
const NAMES = ["SUM", "INDEX", "OFFSET", "MEASURE_OF", "CLOTH_CHECK", "LIST_SUM", "YARDAGE", "SEAM_VERDICT", "IF", "MATCH", "WEARER_CHECK"]; // biome-ignore format: a list

/** A key such as __proto__ is a field of its own only when it is defined so. */
const FIELD = { enumerable: true, configurable: true, writable: true };

/** Changes one thing of the data, at random depth. */
function change(random: Random, node: unknown): void {
  if (typeof node !== "object" || node === null) return;
  const keys = Object.keys(node);
  const group = node as Record<string, unknown>;
  const key = keys.length > 0 ? random.pick(keys) : Array.isArray(node) ? "0" : random.pick(KEYS);
  // What every object has from its prototype does not belong to the book: changing it would damage the program.
  const was = Object.hasOwn(group, key) ? group[key] : undefined;
  if (random.chance(0.75) && typeof was === "object" && was !== null) {
    change(random, was);
    return;
  }
  const value =
    typeof was === "string" && random.chance(0.6)
      ? `=${argument(random, NAMES)}${random.pick(["", "+D1", "+hem", "*2"])}`
      : structuredClone(random.pick(VALUES));
  const what = random.below(Array.isArray(node) ? 3 : 4);
  if (what === 0) Object.defineProperty(group, key, { ...FIELD, value });
  else if (what === 1 && Array.isArray(node)) node.splice(Number(key), random.below(2), value);
  else if (what === 1) delete group[key];
  else if (what === 2 && Array.isArray(node)) node.push(...(node.slice(0, 50) as unknown[]));
  else Object.defineProperty(node, random.pick(KEYS), { ...FIELD, value: was });
}

/** Signs lost, doubled or other than they were. */
function scratched(random: Random, text: string): string {
  const at = random.below(text.length);
  const end = at + random.below(40);
  return random.pick([
    text.slice(0, at),
    text.slice(0, at) + text.slice(end),
    text.slice(0, end) + text.slice(at),
    text.slice(0, at) +
      random.pick(['"', "{", "]", ",", "9", "\\u0000", "=", "é", "-", "e5"]) +
      text.slice(at + 1),
  ]);
}

export const generator = define<string>({
  name: "damaged books",
  about:
    "files of books that are damaged: refused in one line, or a book that is worked, shown, converted and written as it was read",
  make(random) {
    if (random.chance(0.02)) return scratched(random, READY);
    if (random.chance(0.3)) return scratched(random, SMALL_TEXT);
    const data = structuredClone(small);
    const changes = random.between(1, 6);
    for (let i = 0; i < changes; i += 1) change(random, data);
    return JSON.stringify(data);
  },
  attempt(text) {
    const reading = readBook(text);
    if ("reason" in reading)
      return /^th[^\n\r]{10,400}$/.test(reading.reason) ? null : `no sentence: ${reading.reason}`;
    const written = writeBook(reading.book);
    const again = readBook(written);
    if ("reason" in again) return `what it writes can't be read: ${again.reason}`;
    if (writeBook(again.book) !== written) return "what it writes is another book when it is read again";
    const engine = new Engine(reading.book, layDesk, SHORT);
    try {
      const fault = engineFault(engine);
      if (fault) return fault;
      engine.become(convertBook(engine.book, engine.book.unit === "in" ? "cm" : "in"));
      return engineFault(engine, false);
    } finally {
      engine.destroy();
    }
  },
  longest: 8000,
});
