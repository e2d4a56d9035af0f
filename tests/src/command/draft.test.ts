import { readFileSync } from "node:fs";
import { Bezier } from "bezier-js";
import SvgPath from "svgpath";
import { describe, expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { run } from "./io.ts";

function template(name: string): Book {
  const reading = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
}

const attribute = (tag: string, name: string): string => new RegExp(` ${name}="([^"]*)"`).exec(tag)![1]!;
const pathsOf = (svg: string, role: string): string[] =>
  [...svg.matchAll(/<path [^>]*>/g)].map(([tag]) => tag).filter((tag) => tag.includes(` class="${role}"`));

/** Length round and area within of path data, by two general-purpose libraries: svgpath to curves, bezier-js along them. */
function measured(d: string): { length: number; area: number } {
  let [length, twice] = [0, 0];
  let start = [0, 0];
  new SvgPath(d)
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _, x, y) => {
      const [letter, ...n] = segment as [string, ...number[]];
      if (letter === "M") start = n;
      const end =
        letter === "H" ? [n[0]!, y] : letter === "V" ? [x, n[0]!] : letter === "Z" ? start : n.slice(-2);
      if (letter === "M") return;
      const third = (share: number) => [x + (end[0]! - x) * share, y + (end[1]! - y) * share];
      const curve = letter === "C" ? n : [...third(1 / 3), ...third(2 / 3), ...end];
      if (end[0] === x && end[1] === y && letter !== "C") return;
      const bezier = new Bezier(x, y, ...(curve as number[]));
      length += bezier.length();
      for (let i = 0; i < 200; i += 1) {
        const [a, b] = [bezier.get(i / 200), bezier.get((i + 1) / 200)];
        twice += a.x * b.y - a.y * b.x;
      }
    });
  return { length, area: Math.abs(twice) / 2 };
}

/** Millimetres or inches of the sheet to one unit of the book. */
const SCALE = { in: 1, cm: 10, mm: 1 } as const;

describe.each(["peplum-bodice", "peplum-bodice-cm"])("the sheets of %s", (name) => {
  const book = template(name);
  const scale = SCALE[book.unit];
  const engine = new Engine(book, layDesk);
  const number = (formula: string): number => {
    const answer = engine.evaluate(formula);
    if ("problem" in answer) throw new Error(answer.problem);
    return answer.value as number;
  };

  test("have outlines as long and as large as EDGE_LENGTH and PIECE_AREA say", async () => {
    const { files, status } = await run(book, "draft", "book.json", "--out", "pieces");
    expect(status).toBe(0);
    const cells: Record<string, string> = {
      "skirt_flat.svg": "skirt_flat", "skirt_piece.svg": "skirt_piece", "skirt_cut.svg": "skirt_cut",
      "hem-guard-Cut-B2.svg": "Cut!B2", "waist-stay-Cut-B3.svg": "Cut!B3", "cuff-Cut-B4.svg": "Cut!B4",
    }; // biome-ignore format: a table
    expect(Object.keys(files).sort()).toEqual(
      Object.keys(cells)
        .map((file) => `pieces/${file}`)
        .sort(),
    );
    for (const [file, cell] of Object.entries(cells)) {
      const outlines = pathsOf(files[`pieces/${file}`]!, "outline");
      expect(outlines).toHaveLength(1);
      const { length, area } = measured(attribute(outlines[0]!, "d"));
      const edges = [1, 2, 3, 4].reduce((sum, edge) => sum + number(`=EDGE_LENGTH(${cell};${edge})`), 0);
      // An arc as cubic curves of a quarter turn strays by 3 parts in ten thousand at most, and these turn far less.
      expect(Math.abs(length / scale / edges - 1), `${file}, round`).toBeLessThan(1e-4);
      expect(Math.abs(area / scale ** 2 / number(`=PIECE_AREA(${cell})`) - 1), `${file}, area`).toBeLessThan(
        1e-4,
      );
    }
  });

  test("are to true scale: a millimetre or an inch is one unit of the picture, and the test square tells it", async () => {
    const { files } = await run(book, "draft", "book.json", "--out", "pieces");
    for (const svg of Object.values(files)) {
      const tag = /<svg [^>]*>/.exec(svg)![0];
      const [, , wide, tall] = attribute(tag, "viewBox").split(" ");
      const unit = book.unit === "in" ? "in" : "mm";
      expect(attribute(tag, "width")).toBe(`${wide}${unit}`);
      expect(attribute(tag, "height")).toBe(`${tall}${unit}`);
      const square = /<rect id="square"[^>]*>/.exec(svg)![0];
      const side = book.unit === "in" ? "2" : "50";
      expect([attribute(square, "width"), attribute(square, "height")]).toEqual([side, side]);
    }
  });

  test("hold all that is drawn within their borders", async () => {
    const { files } = await run(book, "draft", "book.json", "--out", "pieces");
    for (const svg of Object.values(files)) {
      const [left, top, wide, tall] = attribute(/<svg [^>]*>/.exec(svg)![0], "viewBox")
        .split(" ")
        .map(Number) as [number, number, number, number];
      for (const tag of pathsOf(svg, "outline")) {
        new SvgPath(attribute(tag, "d"))
          .abs()
          .unarc()
          .iterate((segment) => {
            const [x, y] = segment.slice(-2) as [number, number];
            if (segment[0] === "Z") return;
            expect(x).toBeGreaterThan(left);
            expect(x).toBeLessThan(left + wide);
            expect(y).toBeGreaterThan(top);
            expect(y).toBeLessThan(top + tall);
          });
      }
    }
  });

  test("show the cut skirt's two box pleats with their folds, its seam line and the grain", async () => {
    const { files } = await run(book, "draft", "book.json", "--out", "pieces");
    const svg = files["pieces/skirt_cut.svg"]!;
    const counts = ["fold", "placement", "inner", "seam", "grain", "head"].map(
      (role) => pathsOf(svg, role).length,
    );
    // A box pleat has two folds, two inner folds and two placement lines; the sewing line has four edges.
    expect(counts).toEqual([4, 4, 4, 4, 1, 2]);
    for (const said of [
      "straight grain",
      "seam line",
      "fold",
      "The solid outline is the cut line",
      "skirt_cut",
      book.title.split(":")[0]!,
    ])
      expect(svg).toContain(said);
    expect(files["pieces/skirt_piece.svg"]).toContain("No seam line is marked");
  });
});

const small = (more: Record<string, string> = {}) => bookOf({ apron: "=RECTANGLE(20;30)", ...more });

test("notches are drawn where they are marked", async () => {
  const { files } = await run(
    bookOf({ pocket: "=WITH_NOTCH(RECTANGLE(6;8);2;3)" }),
    "draft",
    "book.json",
    "--out",
    "d",
  );
  expect(pathsOf(files["d/pocket.svg"]!, "mark-notch")).toHaveLength(1);
});

test("what is set for the day is drafted, and a typed outline too", async () => {
  const book = bookOf({ deep: "30", apron: "=RECTANGLE(20;deep)", patch: "M 0 0 L 4 0 L 4 3 Z" });
  const { out, files } = await run(
    book,
    "draft",
    "book.json",
    "--out",
    "d",
    "--set",
    "deep=12 1/2",
    "--json",
  );
  const { area } = measured(attribute(pathsOf(files["d/apron.svg"]!, "outline")[0]!, "d"));
  expect(area).toBeCloseTo(250, 6);
  const patch = measured(attribute(pathsOf(files["d/patch.svg"]!, "outline")[0]!, "d"));
  expect(patch.length).toBeCloseTo(12, 9);
  expect(patch.area).toBeCloseTo(6, 9);
  expect(
    JSON.parse(out).files.map(({ piece, file }: { piece: string; file: string }) => [piece, file]),
  ).toEqual([
    ["apron", "d/apron.svg"],
    ["patch", "d/patch.svg"],
  ]);
});

test("file names are safe on every machine, and what is written in a cell is never markup", async () => {
  const titles = [
    "../../etc/passwd",
    "con",
    "<script>alert(1)</script>",
    "Ärmel & Bündchen",
    "cuff",
    "CUFF",
    "???",
  ];
  const book: Book = {
    ...small(),
    title: '"><script>alert(1)</script>',
    pages: [
      {
        ...small().pages[0]!,
        title: "Draft",
        rows: titles.map((title, i) => [title, `=RECTANGLE(5;${i + 1})`]),
      },
    ],
    names: {},
  };
  const { files } = await run(book, "draft", "book.json", "--out", "d");
  expect(Object.keys(files)).toEqual([
    "d/etc-passwd-Draft-B1.svg", "d/con-Draft-B2.svg", "d/script-alert-1-script-Draft-B3.svg", "d/Ärmel-Bündchen-Draft-B4.svg",
    "d/cuff-Draft-B5.svg", "d/CUFF-Draft-B6.svg", "d/Draft-B7.svg",
  ]); // biome-ignore format: a list
  for (const svg of Object.values(files)) expect(svg).not.toMatch(/<script/);
});

test("a piece that has a problem is named, and the others are written", async () => {
  const { status, out, files } = await run(
    small({ cuff: "=RECTANGLE(0-4;3)" }),
    "draft",
    "book.json",
    "--out",
    "d",
  );
  expect(status).toBe(1);
  expect(Object.keys(files)).toEqual(["d/apron.svg"]);
  expect(out).toMatch(/check: cuff is not drawn: width must be at least .* in, not -4/);
});

test.each([
  [["--out", "d"], bookOf({ waist: "27" }), /book\.json has no pattern pieces: a cell with =RECTANGLE/],
  [
    ["--out", "d"],
    bookOf({ cuff: "=RECTANGLE(0-4;3)" }),
    /no piece of book\.json can be drawn: cuff: width must/,
  ],
  [[], small(), /draft needs a folder to write to, such as --out pieces/],
  [["--out", " "], small(), /draft needs a folder/],
] as const)("draft %j is refused in a sentence", async (args, book, sentence) => {
  const { status, err, files } = await run(book, "draft", "book.json", ...args);
  expect(err).toMatch(sentence);
  expect([status, files]).toEqual([2, {}]);
});

test("with --worn each garment is written as worn too, once, from whatever piece it is behind", async () => {
  const { files, out, status } = await run(
    template("petticoat-and-cape"),
    "draft",
    "book.json",
    "--worn",
    "--out",
    "made",
  );
  expect(status).toBe(0);
  const worn = Object.keys(files).filter((file) => file.endsWith("-as-worn.svg"));
  expect(worn).toEqual(["made/petticoat_half-as-worn.svg", "made/cape_half-as-worn.svg"]);
  const svg = files[worn[0]!]!;
  expect(svg).toMatch(
    /The figure has waist girth 32 in from Measure!B2[\s\S]*Assumed: the pad holds it out most/,
  );
  for (const view of ["front", "side", "back"]) expect(svg).toContain(`>${view}</text>`);
  expect(svg).not.toMatch(/NaN|undefined/);
  expect(out).toContain("petticoat_half as worn: the hem is 106 in all round as drafted");
});

test("with --worn a panel that may be a cuff or a guard is left out, and the reason said", async () => {
  const { files, out } = await run(
    template("peplum-bodice"),
    "draft",
    "book.json",
    "--worn",
    "--out",
    "made",
  );
  const worn = Object.keys(files).filter((file) => file.endsWith("-as-worn.svg"));
  expect(worn).toEqual(["made/skirt_flat-as-worn.svg"]);
  for (const title of ["hem guard", "cuff"])
    expect(out).toContain(
      `${title} is not drawn as worn: nothing in the book says that it goes round the waist`,
    );
});
