/** Hostile files for the verb lay: outlines, ids, rotations and figures that no maker would give. */
import type { Lay } from "../../../functions/lay.ts";
import { layDrawing } from "../../../src/command/lay-drawing.ts";
import { readLayFile } from "../../../src/command/lay-file.ts";
import { Wrong } from "../../../src/command/verb.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { quickLayUntil } from "../../../src/lay/plan.ts";
import { define } from "../generator.ts";
import type { Random } from "../random.ts";

const FIGURES = [
  "0",
  "1",
  "-1",
  "7.5",
  "30",
  "1e-300",
  "1e-9",
  "1e6",
  "1e9",
  "1e308",
  "1e999",
  '"9"',
  "null",
  "[]",
];
const IDS = ['"a"', '"\\u0000\\u001b[2J"', '"\\ud800"', '"<svg>&]]>"', "1e999", "9007199254740993", "-0", '""', "{}", '"__proto__"']; // biome-ignore format: a list

function outline(random: Random): string {
  const count = random.pick([0, 1, 2, 3, 4, 5, 12, 60, 1500, 2500]);
  const size = random.pick([1e-6, 1, 5, 20, 1e6]);
  const jagged = random.next() < 0.5;
  const points = Array.from({ length: count }, (_, i) => {
    if (random.next() < 0.002) return random.pick(FIGURES);
    const angle = (2 * Math.PI * i) / Math.max(count, 1);
    const out = size * (jagged ? 0.2 + random.next() : 1);
    return `[${out * Math.cos(angle)},${out * Math.sin(angle)}]`;
  });
  return `[${points.join()}]`;
}

function file(random: Random): string {
  const kinds = random.pick([0, 1, 1, 2, 3, 8, 40, 600]);
  const usual = (text: string) => (random.next() < 0.9 ? text : random.pick(FIGURES));
  const turns = () => {
    const count = random.pick([1, 2, 2, 4, 36, 361]);
    return `[${Array.from({ length: count }, (_, i) => (count === 2 ? i * 180 : (360 * i) / count)).join()}]`;
  };
  const shared = outline(random);
  const pieces = Array.from({ length: kinds }, (_, i) => {
    const id = random.next() < 0.9 ? String(i) : random.pick(IDS);
    const quantity = usual(String(random.pick([1, 1, 2, 5, 60])));
    const own = random.next() < 0.3 ? `,"allowedRotations":${turns()}` : "";
    return `{"id":${id},"quantity":${quantity},"outline":${kinds > 50 ? shared : outline(random)}${own}}`;
  });
  const text = `{"stripWidth":${usual("30")},"allowedRotations":${turns()},"gap":${usual("0")},"repeat":${usual("0")},"pieces":[${pieces.join()}]}`;
  return random.next() < 0.05 ? text.slice(0, Math.floor(random.next() * text.length)) : text;
}

/** How long the quick lay may take before boxes in rows are good enough, in milliseconds. */
const QUICK_MS = 500;

export const generator = define<string>({
  name: "lay files",
  about:
    "files for the verb lay: laid without fault in their time and drawn as a sound SVG, or refused in one sentence",
  longest: 8000,
  make: file,
  attempt(text) {
    let read: ReturnType<typeof readLayFile>;
    try {
      read = readLayFile(text);
    } catch (reason) {
      return reason instanceof Wrong ? unsound(reason.message) : String(reason);
    }
    const began = performance.now();
    const lay = quickLayUntil(read.question, () => performance.now() - began > QUICK_MS);
    if ("refusal" in lay) return unsound(lay.refusal);
    return faultOf(read, lay);
  },
});

/** A refusal is one line that a person can read. */
const unsound = (sentence: string): string | null =>
  sentence.length > 0 && sentence.length < 600 && !sentence.includes("\n")
    ? null
    : `no sentence: ${sentence}`;

function faultOf({ question, ids }: ReturnType<typeof readLayFile>, lay: Lay): string | null {
  const [fault] = lay.placements.length > 300 ? [] : checkLay(question, lay, 1e-5);
  if (fault) return fault;
  if (JSON.stringify(ids).includes("null")) return "an id is lost";
  const drawn = layDrawing(question, lay);
  return /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd]|NaN|Infinity/.test(drawn)
    ? "the drawing is no sound SVG"
    : null;
}
