import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { lay } from "../../../src/command/lay.ts";
import type { searchOnThreads } from "../../../src/command/lay-threads.ts";
import { type Io, Wrong } from "../../../src/command/verb.ts";
import { answerFrom } from "../../../src/lay/answer.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { innerLoop } from "../../../src/setup/inner-loop.ts";
import { publishedQuestion } from "../lay/published.ts";

const instance = (name: string) =>
  readFileSync(new URL(`../lay/data/instances/${name}.json`, import.meta.url), "utf8");

/** Runs the verb on a text, in this thread. */
async function run(text: string, ...options: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const written = new Map<string, string>();
  const io: Io = {
    read: () => text,
    bytes: () => new TextEncoder().encode(text),
    write: (path, content) => void written.set(path, String(content)),
    out: (line) => void out.push(line),
    pass: (content) => void out.push(content),
    err: (line) => void err.push(line),
  };
  const status = await lay.run(["file.json", "--threads", "0", ...options], io);
  return { status, out, err, written };
}

async function wrong(text: string, ...options: string[]): Promise<string> {
  try {
    await run(text, "--seconds", "0", ...options);
  } catch (error) {
    expect(error).toBeInstanceOf(Wrong);
    return (error as Wrong).message;
  }
  return "";
}

const strip = (more: object, piece: object = {}) =>
  JSON.stringify({
    stripWidth: 30,
    allowedRotations: [0],
    pieces: [
      {
        id: "front",
        quantity: 2,
        outline: [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
        ],
        ...piece,
      },
    ],
    ...more,
  });

describe("the verb lay", () => {
  it("prints one JSON document whose placements are a good lay of the asked pieces", async () => {
    const { status, out, err } = await run(instance("fu"), "--seconds", "0.3", "--json");
    expect([status, out.length, err.length]).toEqual([0, 1, 0]);
    const found = JSON.parse(out[0]!);
    expect(Object.keys(found)).toEqual(["length", "density", "seconds", "placements"]);
    expect(Object.keys(found.placements[0])).toEqual(["piece", "copy", "rotation", "x", "y"]);
    const question = publishedQuestion("fu");
    const placed = found.placements.map(
      (p: { piece: string; copy: number; rotation: number; x: number; y: number }) => ({
        piece: question.pieces.findIndex(({ name }) => name === p.piece),
        copy: p.copy,
        cloth: 0,
        turn: p.rotation,
        x: p.x,
        y: p.y,
      }),
    );
    const again = answerFrom(question, placed);
    expect(checkLay(question, again, 1e-5)).toEqual([]);
    expect(again.missing).toEqual([]);
    expect(found.length).toBeCloseTo(again.lengths[0]!, 6);
    expect(found.density).toBeCloseTo(1083 / (38 * found.length), 6);
  });

  it("says length, share and places in words, and draws every piece", async () => {
    const { out, written } = await run(strip({}), "--seconds", "0", "--svg", "lay.svg");
    expect(out[0]).toMatch(/^2 pieces on a length of 10.0000, 66.67 % of the cloth used/);
    expect(out).toHaveLength(3);
    expect(written.get("lay.svg")!.match(/Z" fill/g)).toHaveLength(2);
  });

  it("takes outlines drawn either way round, closed by their first point, off the origin, after a byte order mark", async () => {
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const shapes: number[][][] = [
      [...square].reverse(),
      [...square, [0, 0]],
      square.map(([x, y]) => [x! + 1000, y! - 500]),
      [[0, 0], ...square, [0, 10]],
    ];
    for (const outline of shapes) {
      const { out } = await run(`\uFEFF${strip({}, { outline })}`, "--seconds", "0", "--json");
      const { length, placements } = JSON.parse(out[0]!);
      expect(length).toBeCloseTo(10, 9);
      // Each placed outline, worked out anew, lies on the strip.
      for (const { x, y } of placements) {
        const xs = outline.map(([px]) => px! + x);
        const ys = outline.map(([, py]) => py! + y);
        expect(Math.min(...xs)).toBeGreaterThan(-1e-6);
        expect(Math.max(...xs)).toBeLessThan(length + 1e-6);
        expect(Math.min(...ys)).toBeGreaterThan(-1e-6);
        expect(Math.max(...ys)).toBeLessThan(30 + 1e-6);
      }
    }
  });

  it("gives an id back as it was given, a number as a number", async () => {
    const { out } = await run(strip({}, { id: 7, quantity: 1 }), "--seconds", "0", "--json");
    expect(JSON.parse(out[0]!).placements).toMatchObject([{ piece: 7, copy: 0 }]);
  });

  it("keeps a gap between cut lines, and the match points on the repeat", async () => {
    const two = async (more: object, piece: object = {}) => {
      const { out } = await run(strip(more, piece), "--seconds", "0", "--json");
      return JSON.parse(out[0]!) as { length: number; placements: { x: number; y: number }[] };
    };
    const apart = await two({ gap: 12 });
    // Corner to corner, 10 aside and √(12² − 10²) along.
    expect(apart.length).toBeCloseTo(20 + Math.sqrt(44), 1);
    expect(apart.length).toBeGreaterThan(20 + Math.sqrt(44) - 1e-6);
    const [a, b] = (await two({ repeat: 7, stripWidth: 15 })).placements;
    expect(Math.abs(a!.x - b!.x)).toBeCloseTo(14, 6);
    const outline = [[0, 0], [10, 0], [10, 10], [0, 10]]; // biome-ignore format: a square
    const pieces = [
      { id: "front", quantity: 1, outline, match: [3, 0] },
      { id: "back", quantity: 1, outline, match: [5, 0] },
    ];
    const { placements } = await two({ repeat: 7, stripWidth: 15, pieces });
    expect((placements[0]!.x - placements[1]!.x - 2) % 7).toBeCloseTo(0, 6);
  });

  it("draws ids with control characters in a well-formed SVG", async () => {
    const { out, written } = await run(
      strip({}, { id: "fro\u0000nt\u001b[31m\ud800<&" }),
      "--seconds", "0", "--svg", "lay.svg", "--json",
    ); // biome-ignore format: one command
    expect(JSON.parse(out[0]!).placements[0].piece).toBe("fro\u0000nt\u001b[31m\ud800<&");
    const svg = written.get("lay.svg")!;
    expect(svg).toContain("fro\ufffdnt\ufffd[31m\ufffd&lt;&amp; 1");
    expect(svg).not.toMatch(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd]/);
  });

  it("refuses more than it can lay in time, and ids that it could not give back", async () => {
    const kinds = Array.from({ length: 5000 }, (_, i) => ({ id: i, quantity: 1, outline: [[0, 0], [9, 0], [0, 9]] })); // biome-ignore format: a list
    expect(await wrong(strip({ pieces: kinds }))).toMatch(
      /^5000 kinds of pieces are more than one lay can hold/,
    );
    const circle = Array.from({ length: 100_000 }, (_, i) => [Math.cos(i / 15_916), Math.sin(i / 15_916)]);
    expect(await wrong(strip({}, { outline: circle }))).toBe(
      "the outline of front has 100000 points: give at most 2000",
    );
    const turns = Array.from({ length: 10_000 }, (_, i) => i / 30);
    expect(await wrong(strip({ allowedRotations: turns }))).toMatch(
      /^front has 10000 turns that its grain allows/,
    );
    const huge = strip({}, { id: 0 }).replace('"id":0', '"id":1e999');
    expect(await wrong(huge)).toMatch(/^piece 1 has a number for its id that is too large to be kept/);
    expect(await wrong(strip({}, { id: 2 ** 53 + 2 }))).toMatch(
      /too large to be kept: give the id as a text$/,
    );
    expect(await wrong(strip({ gap: "wide" }))).toBe('gap must be a length or 0, not "wide"');
    expect(await wrong(strip({ gap: -1 }))).toBe("the gap must be from 0 to 300, not -1");
    expect(await wrong(strip({ gap: 1e9 }))).toBe("the gap must be from 0 to 300, not 1000000000");
    expect(await wrong(strip({ repeat: 1e-6 }))).toMatch(
      /^the repeat must be 0 for plain cloth, or at least 0.03 /,
    );
    expect(await wrong(strip({ repeat: 5 }, { match: 3 }))).toBe(
      "match of front must be a point [x, y], not 3",
    );
  });

  it("refuses what can not be laid in one sentence", async () => {
    expect(await wrong("{")).toMatch(/^the lay file is not JSON/);
    expect(await wrong("[]")).toMatch(/must hold one object/);
    expect(await wrong('{"ellwand": 1, "pages": []}')).toMatch(/^this is a book, and lay takes a file of /);
    expect(await wrong(strip({ stripWidth: 0 }))).toBe("the width of the cloth must be more than 0, not 0");
    expect(await wrong(strip({ stripWidth: "wide" }))).toMatch(/stripWidth must be a number/);
    expect(await wrong(strip({ stripWidth: 8 }))).toMatch(/^front is 2 wider than the cloth/);
    expect(await wrong(strip({ pieces: 3 }))).toBe("pieces must be a list, not 3");
    expect(await wrong(strip({ pieces: [] }))).toMatch(/no piece to lay/);
    expect(await wrong(strip({}, { quantity: 0 }))).toMatch(
      /quantity of front must be a whole number from 1, not 0/,
    );
    expect(await wrong(strip({}, { quantity: 100_000 }))).toMatch(
      /100000 pieces are more than one lay can hold/,
    );
    expect(
      await wrong(
        strip(
          {},
          {
            outline: [
              [0, 0],
              [10, 10],
              [10, 0],
              [0, 10],
            ],
          },
        ),
      ),
    ).toMatch(/crosses itself/);
    expect(await wrong(strip({}, { outline: [[0, 0], [1]] }))).toMatch(/point 2 of the outline of front/);
    expect(await wrong(strip({ allowedRotations: [] }))).toMatch(
      /allowedRotations must be a list of degrees/,
    );
    expect(await wrong(strip({}, { quantity: undefined }))).toBe(
      "the quantity of front must be a whole number from 1, not nothing",
    );
    expect(await wrong(strip({}, { outline: undefined }))).toBe(
      "the outline of front must be a list of [x, y], not nothing",
    );
    expect(await wrong(strip({}, { id: undefined }))).toBe("piece 1 needs an id, not nothing");
    expect(await wrong(strip({ stripWidth: undefined }))).toMatch(
      /^stripWidth must be a number, .*not nothing/,
    );
    // There and back is no crossing, it is no piece at all.
    expect(await wrong(strip({}, { outline: [[0, 0], [5, 0], [10, 0]] }))).toBe("the outline of front has no area"); // biome-ignore format: a row
    expect(await wrong(strip({}, { outline: [[0, 0], [1e300, 0], [0, 9]] }))).toMatch(/farther out than 1000000000/); // biome-ignore format: a row
    expect(await wrong('{"stripWidth": NaN, "pieces": []}')).toMatch(/^the lay file is not JSON/);
    // JSON knows no infinity, but 1e999 is read as one.
    expect(await wrong(strip({}).replace("30", "1e999"))).toMatch(
      /^the width of the cloth must be at most 1000000000, not a number that is not finite/,
    );
    expect(await wrong(strip({}).replace("[10,0]", "[1e999,0]"))).toMatch(/has a point that is not a number/);
    expect(await wrong(strip({}), "--seed", "x")).toMatch(/--seed must be a whole number/);
    expect(await wrong(strip({}), "--fast")).toMatch(/lay has no option --fast/);
    expect(await wrong(strip({}), "other.json")).toMatch(/takes one file/);
  });
});

describe("searching on threads", () => {
  const folder = mkdtempSync(join(tmpdir(), "lay-threads-"));
  const question: LayQuestion = publishedQuestion("fu");
  let search: typeof searchOnThreads;

  beforeAll(async () => {
    // Threads need plain JavaScript, so the two files are built as they are for users.
    const input = { threads: "src/command/lay-threads.ts", "search-thread": "src/command/search-thread.ts" };
    await build({
      configFile: false,
      plugins: [innerLoop],
      logLevel: "error",
      build: { ssr: true, outDir: folder, rollupOptions: { input, output: { entryFileNames: "[name].js" } } },
      ssr: { noExternal: true },
    });
    search = (await import(/* @vite-ignore */ join(folder, "threads.js"))).searchOnThreads;
  });

  afterAll(() => rmSync(folder, { recursive: true }));

  const wish = (seconds: number, complaints: string[] = []) => ({
    seconds,
    seed: 1,
    threads: 2,
    began: performance.now(),
    complain: (text: string) => void complaints.push(text),
  });

  it("finds a better lay than the one at once", async () => {
    const first = (await search(question, wish(0))) as Lay;
    // The seeds 3 and 4 find one in a tenth of a second of processor time: a busy machine comes to it, too.
    const found = (await search(question, { ...wish(4), seed: 3 })) as Lay;
    expect(found.lengths[0]).toBeLessThan(first.lengths[0]!);
    expect(checkLay(question, found, 1e-5)).toEqual([]);
  });

  it("ends early with the best so far when interrupted", async () => {
    const began = performance.now();
    setTimeout(() => process.emit("SIGINT"), 400);
    const found = (await search(question, wish(30))) as Lay;
    expect(performance.now() - began).toBeLessThan(10_000);
    expect(checkLay(question, found, 1e-5)).toEqual([]);
  });

  it("keeps the last good lay when the threads die, and says so", async () => {
    writeFileSync(join(folder, "search-thread.js"), 'throw new Error("out of memory");\n');
    const complaints: string[] = [];
    const found = (await search(question, wish(5, complaints))) as Lay;
    expect(checkLay(question, found, 1e-5)).toEqual([]);
    expect(complaints).toEqual(
      Array(2).fill("a search thread stopped: out of memory; the best lay so far is kept"),
    );
  });
});
