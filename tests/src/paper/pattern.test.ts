import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { edgeLength } from "../../../functions/pieces/piece.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { USUAL_LIMITS } from "../../../src/engine/guards.ts";
import { type FoundPiece, piecesOf } from "../../../src/engine/pieces.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { newDocument } from "../../../src/paper/document.ts";
import { laidOut, printed } from "../../../src/paper/documents.ts";
import { readPaper } from "../../../src/paper/paper.ts";
import { type PatternSheet, patternSheet } from "../../../src/paper/pattern-sheet.ts";
import { patternSheets } from "../../../src/paper/pattern-sheets.ts";
import { run } from "../command/io.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { type ReadPage, readPdf } from "./read-pdf.ts";

// By a clock that stands still no formula is stopped for its time, however busy the machine is.
vi.spyOn(USUAL_LIMITS, "clock").mockReturnValue(0);

type Point = readonly [x: number, y: number];

const template = (name: string): Book => {
  const reading = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};

interface Made {
  readonly found: readonly FoundPiece[];
  readonly sheet: PatternSheet;
  readonly pages: readonly ReadPage[];
  readonly missing: readonly string[];
}

async function made(book: Book, paperText: string, scale: number, scaleName: string): Promise<Made> {
  const paper = readPaper(paperText);
  if ("reason" in paper) throw new Error(paper.reason);
  const { found } = piecesOf(new Engine(book, layDesk));
  const doc = await newDocument(book.title, new Date(2026, 4, 20));
  const sheet = patternSheet(book, found, paper, scale, { letters: doc });
  if ("reason" in sheet) throw new Error(sheet.reason);
  const heading = {
    title: book.title,
    what: "pieces",
    whose: "",
    scale: scaleName,
    day: new Date(2026, 4, 20),
    notes: [],
  };
  const sheets = patternSheets(sheet, paper, heading);
  for (const [i, one] of sheets.entries()) {
    doc.page(one);
    one.draw(doc, i + 1, sheets.length);
  }
  return { found, sheet, pages: await readPdf(await doc.bytes()), missing: doc.missing() };
}

/** The width of a cut line; only outlines are drawn with it. */
const CUT = 0.8;
const MARGIN = 10;
const OVERLAP = 10;

/** The column and the row of a sheet, from the name in its foot. */
function placeOf(page: ReadPage): [column: number, row: number] | null {
  const [, letter, number] = /(?:^|\n)([A-Z])(\d+)\s+page \d+ of \d+/.exec(page.text) ?? [];
  return letter === undefined ? null : [letter.charCodeAt(0) - 65, Number(number) - 1];
}

/** The length of a line of chords inside a rectangle. */
function lengthWithin(points: readonly Point[], low: Point, high: Point): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1]!, points[i]!];
    let [from, to] = [0, 1];
    for (const axis of [0, 1] as const) {
      const step = b[axis] - a[axis];
      const [s, t] = [(low[axis] - a[axis]) / step, (high[axis] - a[axis]) / step];
      if (step === 0) {
        if (a[axis] < low[axis] || a[axis] >= high[axis]) to = -1;
      } else [from, to] = [Math.max(from, Math.min(s, t)), Math.min(to, Math.max(s, t))];
    }
    if (to > from) sum += (to - from) * Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

/** What is drawn of every edge of every piece, put together from the sheets as a maker glues them. */
function gluedEdges({ sheet, pages }: Made): number[][] {
  const sums = sheet.pieces.map(({ piece }) => piece.edges.map(() => 0));
  for (const page of pages) {
    const at = placeOf(page);
    if (!at) continue;
    const step = [page.width - 2 * MARGIN - OVERLAP, page.height - 2 * MARGIN - OVERLAP] as const;
    const low: Point = [at[0] * step[0], at[1] * step[1]];
    const isLast = [at[0] === sheet.tiling.columns - 1, at[1] === sheet.tiling.rows - 1];
    const high: Point = [
      low[0] + step[0] + (isLast[0] ? OVERLAP : 0),
      low[1] + step[1] + (isLast[1] ? OVERLAP : 0),
    ];
    for (const { runs, width } of page.paths) {
      // The legend has a straight line of this width.
      if (Math.abs(width - CUT) > 1e-3 || runs[0]!.length < 3) continue;
      const points = runs[0]!.map(([x, y]): Point => [x - MARGIN + low[0], y - MARGIN + low[1]]);
      const near = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.02;
      const which = sheet.pieces.findIndex(({ piece }) => near(piece.edges[0]![0]!.from, points[0]!));
      expect(which).toBeGreaterThanOrEqual(0);
      let begin = 0;
      sheet.pieces[which]!.piece.edges.forEach((edge, i) => {
        const end = points.findIndex((point, k) => k > begin && near(point, edge.at(-1)!.to));
        expect(end).toBeGreaterThan(begin);
        sums[which]![i]! += lengthWithin(points.slice(begin, end + 1), low, high);
        begin = end;
      });
    }
  }
  return sums;
}

describe("the pattern of a bodice on A4", () => {
  let bodice: Made;
  const book = template("peplum-bodice");
  beforeAll(async () => {
    bodice = await made({ ...book, title: `${book.title}, version 2` }, "a4", 1, "1");
  });

  test("every edge, glued together from its sheets, is as long as the piece's to a tenth of a millimetre", () => {
    const glued = gluedEdges(bodice);
    expect(bodice.pages.length).toBeGreaterThan(10);
    bodice.found.forEach(({ piece }, i) => {
      piece.edges.forEach((edge, k) => {
        expect(Math.abs(glued[i]![k]! - 25.4 * edgeLength(edge))).toBeLessThan(0.1);
      });
    });
  });

  test("the first sheet has a square of 10 cm and one of 4 in, and a name for each sheet in its map", () => {
    const [first] = bodice.pages;
    const sides = first!.paths
      .filter(({ runs }) => runs.length === 1 && runs[0]!.length >= 4)
      .map(({ runs }) => {
        const [xs, ys] = [0, 1].map((axis) => runs[0]!.map((point) => point[axis as 0 | 1]));
        return [Math.max(...xs!) - Math.min(...xs!), Math.max(...ys!) - Math.min(...ys!)] as const;
      });
    for (const side of [100, 101.6])
      expect(sides.filter((box) => box.every((length) => Math.abs(length - side) < 0.01))).toHaveLength(1);
    for (const { name } of bodice.sheet.tiles) expect(first!.text.split("\n")).toContain(name);
    expect(first!.text).toContain(`${bodice.pages.length} sheets of A4.`);
    expect(first!.width).toBeCloseTo(210, 3);
    expect(first!.height).toBeCloseTo(297, 3);
  });

  test("every sheet says of which pieces it has a part, whose they are, and the book's version", () => {
    const named = bodice.pages.filter((page) => placeOf(page));
    expect(named.length).toBe(bodice.sheet.tiles.length);
    for (const { text } of named) {
      const lines = text.split("\n");
      const titles = lines.flatMap((line) => (line.includes(", miller's daughter") ? line.split("; ") : []));
      expect(titles.length, text).toBeGreaterThan(0);
      expect(lines.some((line) => /, version 2$/.test(line) && line.startsWith("The Miller"))).toBe(true);
    }
    // A sheet with a letter of a piece's notes has a part of the piece.
    const waistband = named.filter(({ text }) => /^waistband$/m.test(text));
    for (const { text } of waistband) expect(text).toContain("waistband, miller's daughter");
  });

  test("names, wearer, number to cut, cloth, date, edges and kinds of line are text", () => {
    const all = bodice.pages.map(({ text }) => text).join("\n");
    for (const words of [
      ...[
        "skirt half",
        "cut 2, mirrored in pairs",
        "wool",
        "miller's daughter, 2026-05-20, version 2",
        "centre front",
        "waist 15 1/8",
      ],
      ...["not on a cut list", "no allowances are marked"],
      ...["seam line", "straight grain", "fold", "inner fold", "placement line", "cut line"],
    ])
      expect(all).toContain(words);
    expect(bodice.sheet.leftOut).toEqual([]);
  });
});

test("a circle and a large square at a quarter of their size keep their lengths; a roll takes them on one sheet", async () => {
  const book = bookOf({ half_circle: "=CIRCLE_PANEL(28; 60; 1/2)", square: "=RECTANGLE(60; 60)" });
  const small = await made(book, "letter", 1 / 4, "1/4");
  const glued = gluedEdges(small);
  const roll = await made(book, "roll=60in", 1 / 4, "1/4");
  expect(roll.pages).toHaveLength(1);
  expect(roll.pages[0]!.width).toBeCloseTo(60 * 25.4, 2);
  const rolled = gluedEdges(roll);
  small.found.forEach(({ piece }, i) => {
    piece.edges.forEach((edge, k) => {
      const length = (25.4 * edgeLength(edge)) / 4;
      expect(Math.abs(glued[i]![k]! - length)).toBeLessThan(0.1);
      expect(Math.abs(rolled[i]![k]! - length)).toBeLessThan(0.1);
    });
  });
});

test("a sheet with nothing on it is not printed, and the map shows it grey", async () => {
  const { pages, sheet } = await made(bookOf({ cloak: "=RECTANGLE(50; 50)" }), "a4", 1, "1");
  const { columns, rows } = sheet.tiling;
  expect(pages.length - 1).toBeLessThan(columns * rows);
  for (const page of pages.slice(1)) {
    const isLine = page.paths.some(({ width }) => width >= 0.29);
    expect(isLine || page.text.includes("cloak")).toBe(true);
  }
});

test("hostile names of pieces are text in the PDF, and letters without a form are reported", async () => {
  const names = [')>> endobj <script>"&\\', `(${"Žď½⅜ß".repeat(80)}`, "../../漢", "\u0007\u202e"];
  const book = {
    ...bookOf(Object.fromEntries(names.map((name, i) => [name, `=RECTANGLE(${3 + i}; 9)`]))),
    names: {},
  };
  const { pages, missing } = await made(book, "a4", 1, "1");
  const all = pages.map(({ text }) => text).join("\n");
  expect(all).toContain(names[0]);
  expect(all).toContain("Žď½⅜ß");
  expect(missing).toContain("漢");
});

test("the command line says how many sheets it wrote, and what is wrong with a paper or a scale", async () => {
  const book = bookOf({ apron: "=RECTANGLE(10; 20)" });
  const good = await run(book, "print", "book.json", "--out", "p.pdf", "--scale", "1/5");
  expect(good.out).toContain("p.pdf  apron on 2 sheets of A4");
  expect(good.status).toBe(0);
  expect(good.files["p.pdf"]).toMatch(/^37,80,68,70,/);
  const paper = await run(book, "print", "book.json", "--out", "p.pdf", "--paper", "roll=9in");
  expect(paper.err).toContain("35 cm to 2 m");
  const scale = await run(book, "print", "book.json", "--out", "p.pdf", "--scale", "1/3");
  expect(scale.err).toContain("the scale must be one of 1, 1/2, 1/4, 1/5, 1/8");
  const piece = await run(book, "print", "book.json", "--out", "p.pdf", "--piece", "aprn");
  expect(piece.err).toContain("is apron meant?");
  const idle = await run(book, "print", "book.json", "--out", "p.pdf", "--blank");
  expect(idle.err).toBe("--blank has no effect on --what pattern; it is for chart, log, all");
  const what = await run(book, "print", "book.json", "--out", "p.pdf", "--what", "patern");
  expect(what.err).toContain("--what must be one of pattern, chart");
});

test("every line of a piece says on the piece what it is", async () => {
  const book = bookOf({
    bodice: "=WITH_NOTCH(WITH_DART(WITH_ALLOWANCE(RECTANGLE(12; 16); 1/2); 1; 5; 2; 6); 2; 8)",
    skirt: "=PLEATED_PANEL(12; 12; 10; 6; 1)",
  });
  const { pages } = await made(book, "a3", 1, "1");
  const lines = pages.slice(1).flatMap(({ text }) => text.split("\n"));
  const count = (words: string) => lines.filter((line) => line === words).length;
  for (const words of [
    "cut line",
    "seam line",
    "dart leg",
    "notch",
    "fold",
    "inner fold",
    "placement line",
    "outline",
  ])
    expect([words, count(words) > 0]).toEqual([words, true]);
  expect(count("straight grain")).toBeGreaterThanOrEqual(2);
});

test("the pieces of a page are those in its cells, also where a cell only shows a piece of another page", async () => {
  const engine = new Engine(template("peplum-bodice"), layDesk);
  const asked = { what: "pattern", paper: "a4", scale: "1/8", day: new Date(2026, 4, 20) } as const;
  const cut = await laidOut(engine, { ...asked, page: "Cut" });
  const draft = await laidOut(engine, { ...asked, page: "Draft" });
  expect([cut, draft]).toMatchObject([{ says: "4 pieces of the cut list" }, { says: "skirt half" }]);
  expect(await laidOut(engine, { ...asked, page: "Fit" })).toEqual({
    reason: expect.stringContaining("the page Fit has no pattern pieces"),
  });
});

test.each([
  ["1/2", 2],
  ["1/4", 4],
  ["1/5", 5],
  ["1/8", 8],
] as const)("a piece at %s of full size is drawn that small", async (name, part) => {
  const { found, sheet, pages, missing } = await made(
    bookOf({ apron: "=FLARED_PANEL(20; 30; 24)" }),
    "letter",
    1 / part,
    name,
  );
  gluedEdges({ found, sheet, pages, missing }).forEach((edges, i) => {
    edges.forEach((drawn, k) => {
      expect(Math.abs(drawn - (25.4 * edgeLength(found[i]!.piece.edges[k]!)) / part)).toBeLessThan(0.1);
    });
  });
  expect(pages[0]!.text).toContain(`A model: ${name} of full size.`);
});

test("a piece with something unusual, or that rests on an estimate, is printed and says so on the piece and before it", async () => {
  const book = bookOf({
    waist: "27",
    worn: "=GIRTH_OVER(waist; 1/4)",
    apron: "=FLARED_PANEL(30; 20; 12)",
    belt: "=RECTANGLE(2; worn)",
  });
  const sure = await run(book, "print", "book.json", "--out", "p.pdf", "--scale", "1/4");
  expect(sure.out).toContain("2 pieces");
  expect(sure.out).toMatch(/check: apron: FLARED_PANEL: the top 30 in is above the hem 20 in/);
  expect(sure.out).toMatch(/check: belt: rests on an estimate: worn \(Draft!B2\)/);
  expect(sure.status).toBe(1);
  const drafted = await run(book, "draft", "book.json", "--out", "pieces");
  expect(Object.keys(drafted.files)).toEqual(["pieces/apron.svg", "pieces/belt.svg"]);
  expect(drafted.out).toContain("check: apron: FLARED_PANEL");
  const done = await printed(new Engine(book, layDesk), {
    what: "pattern",
    paper: "a4",
    scale: "1/4",
    day: new Date(),
  });
  if ("reason" in done) throw new Error(done.reason);
  const [before, , tile] = await readPdf(done.bytes);
  expect(before!.text).toContain("check before you cut");
  expect(before!.text).toContain("rests on an estimate");
  expect(tile!.text.match(/▲ check before cutting/g)).toHaveLength(2);
});

describe("without a choice", () => {
  const day = new Date(2026, 4, 20);
  const texts = async (book: Book, request: object = {}) => {
    const done = await printed(new Engine(book, layDesk), { what: "pattern", paper: "a0", day, ...request });
    if ("reason" in done) throw new Error(done.reason);
    return { ...done, text: (await readPdf(done.bytes)).map(({ text }) => text).join("\n") };
  };
  const note = "Not printed, because not on a cut list: skirt_flat, skirt_piece.";

  test("the pieces of the cut list are printed with the list's words, and the first sheet says what is not", async () => {
    const { pieces, notes, says, text } = await texts(template("peplum-bodice"));
    expect(pieces).toEqual(["skirt half (skirt_cut)", "hem guard", "waist stay", "cuff"]);
    expect([says, notes]).toEqual(["4 pieces of the cut list", [note]]);
    expect(text.replace(/\s+/g, " ")).toContain(note);
    expect(text).toMatch(/skirt half\s+cut 2, mirrored in pairs/);
  });

  test("every piece is printed when it is asked for, and a piece by the name of the cut list", async () => {
    const every = await texts(template("peplum-bodice"), { everyPiece: true });
    expect([every.says, every.notes]).toEqual(["6 pieces", []]);
    const one = await texts(template("peplum-bodice"), { pieces: ["skirt half"] });
    expect(one.pieces).toEqual(["skirt half (skirt_cut)"]);
  });

  test("words that find no room are said with the piece they belong to", async () => {
    const { sentences } = await texts(template("peplum-bodice"), { scale: "1/8", paper: "roll=36in" });
    expect(sentences.length).toBeGreaterThan(0);
    for (const one of sentences) expect(one).toMatch(/^(skirt half|hem guard|waist stay|cuff): "/);
  });

  test("a book without a cut list has all its pieces printed", async () => {
    const { pieces } = await texts(bookOf({ half: "=RECTANGLE(4;6)", cut: "=WITH_ALLOWANCE(half;1)" }));
    expect(pieces).toEqual(["half", "cut"]);
  });

  test("a piece that is not printed is told from the printed one of the same name by its cell", async () => {
    const base = bookOf({ front: "=RECTANGLE(4;6)", back: "=RECTANGLE(3;6)" });
    const rows = [
      ["Piece", "Outline", "How many"],
      ["front", "=WITH_ALLOWANCE(front;1)", "2"],
    ];
    const page = { ...base.pages[0]!, title: "List", rows, columns: [] };
    const { notes } = await texts({ ...base, pages: [...base.pages, page] });
    expect(notes).toEqual(["Not printed, because not on a cut list: front (Draft!B1), back."]);
  });

  test("one outline on two rows of the list is printed once with both numbers; rows that cut nothing are left out", async () => {
    const base = bookOf({ half: "=RECTANGLE(4;6)", cut: "=WITH_ALLOWANCE(half;0)", old: "=RECTANGLE(3;3)" });
    const rows = [
      ["Piece", "Pattern", "Copies", "Fabric", "Pair"],
      ["bodice front", "=cut", "2", "wool", "yes"],
      ["lining", "=cut", "1", "linen", ""],
      ["pocket", "=old", "0", "linen", ""],
    ];
    const page = { ...base.pages[0]!, title: "List", rows, columns: [] };
    const { pieces, notes, text } = await texts({ ...base, pages: [...base.pages, page] });
    expect(pieces).toEqual(["bodice front, lining (cut)"]);
    expect(notes).toEqual(["Not printed, because not on a cut list: half, old."]);
    expect(text).toContain("bodice front: cut 2, mirrored in pairs, wool");
    expect(text).toContain("lining: cut 1, linen");
  });

  test("a piece of the list that cannot be drawn is said, and no draft is printed in its stead", async () => {
    const cells = { half: "=RECTANGLE(4;6)", cut: "=WITH_ALLOWANCE(half;0-1)" };
    const book = bookOf(cells);
    const list = {
      ...book.pages[0]!,
      title: "List",
      rows: [
        ["Outline", "How many"],
        ["=cut", "2"],
      ],
      columns: [],
    };
    const engine = new Engine({ ...book, pages: [...book.pages, list] }, layDesk);
    const broken = await printed(engine, { what: "pattern", paper: "a0", day });
    expect(broken).toMatchObject({ reason: expect.stringContaining("cut: seam must be at least 0") });
  });
});
