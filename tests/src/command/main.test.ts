import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { main } from "../../../src/command/main.ts";
import { bookOf, panelSkirt } from "../engine/whatif-books.ts";
import { run, runOn } from "./io.ts";

const book = bookOf({
  waist: "27", hip: "42 1/2", depth: "9", sections: "5", skirt: "=hip+depth", price: "4.5", day: "2026-05-04",
  spread: "=SPREAD_PER_GAP(waist/2;skirt/2;sections)", cuff: "=WITH_EASE(waist;2)", trimmed: "ok", apron: "=RECTANGLE(20;30)",
}); // biome-ignore format: a book

const VERBS = [
  "begin",
  "calculate",
  "explain",
  "check",
  "functions",
  "vary",
  "solve",
  "compare",
  "next",
  "lay",
  "draft",
  "export",
  "import",
  "print",
  "serve",
];
const REST: Record<string, string[]> = {
  explain: ["skirt"],
  vary: ["--cell", "depth", "--from", "8", "--to", "9", "--watch", "skirt"],
  solve: ["--cell", "depth", "--make", "skirt", "--atmost", "60"],
  next: ["--out", "version-2.json"],
  draft: ["--out", "pieces"],
  print: ["--out", "pattern.pdf"],
  export: ["--to", "csv", "--page", "Draft", "--out", "draft.csv"],
};
const whole = writeBook(book);

// What lies in the file, and what every verb that reads a book must say of it.
const BROKEN: Record<string, readonly [string, RegExp]> = {
  "a book cut in half": [whole.slice(0, whole.length / 2), /book\.json: this book is cut off: the file stops at ".*"; look for a whole copy/],
  "an empty file": [" \n", /this file is empty/],
  "ten million letters": ["nonsense! ".repeat(1e6), /this is not a book: .* it begins with "nonsense! nonsense! nonsense! "/],
  "bytes of no text": [String.fromCharCode(...Array.from({ length: 4000 }, (_, i) => (i * 37) % 256)), /this is not a book/],
  "a newer version": [whole.replace('"ellwand": 1', '"ellwand": 99'), /saved by a newer Ellwand \(version 99.*bring Ellwand up to date/],
  "a list": ["[1,2]", /this is not a book of Ellwand/],
}; // biome-ignore format: a table

test.each(Object.keys(BROKEN))("every verb says of %s what it is, in words and as JSON", async (kind) => {
  const [text, sentence] = BROKEN[kind]!;
  for (const verb of VERBS.filter((one) => !["begin", "functions", "lay", "import", "serve"].includes(one))) {
    const args = [verb, "book.json", ...(REST[verb] ?? [])];
    const told = await runOn(text, ...args);
    expect([verb, told.status, told.out]).toEqual([verb, 2, ""]);
    expect(told.err, verb).toMatch(sentence);
    expect(told.err, verb).not.toMatch(/\n/);
    const asJson = await runOn(text, ...args, "--json");
    expect([asJson.status, asJson.err]).toEqual([2, ""]);
    expect(JSON.parse(asJson.out)).toEqual({ error: told.err });
  }
});

// What is typed after the program's name, and what is answered: exit 2, one line.
test.each([
  ["clculate book.json", /^there is no command "clculate"; is calculate meant\?$/],
  ["bake", /^there is no command "bake"; the commands are begin, calculate/],
  ["help bake", /^there is no command "bake"/],
  ["calculate", /^calculate needs a book's file, or --formula/],
  ["calculate missing.json", /^missing\.json: there is no such file/],
  ["calculate -", /^standard input: this file is empty/],
  ["calculate book.json twice", /^"twice" is one word more than this command takes$/],
  ["calculate book.json --frm", /^this command has no option --frm; its options are --set, --show/],
  ["calculate book.json --set", /^--set needs a value after it$/],
  ["calculate book.json --set waist", /^--set needs NAME=VALUE, not "waist"$/],
  ["calculate book.json --set =3", /^--set needs NAME=VALUE/],
  ["calculate book.json --set waits=3", /^no cell of this book is named "waits"; is waist meant\?$/],
  ["calculate book.json --set zzzzzz=3", /"calculate" with the book alone lists its named cells$/],
  ["calculate book.json --show ,", /^--show needs the names of cells/],
  ["calculate book.json --show hips", /is hip meant\?$/],
  ["calculate book.json --unit cm", /^--unit is for a formula without a book/],
  ["calculate book.json --show hip --formula =1", /^choose --formula or --show, not both$/],
  ["calculate --formula =1 --unit m", /^--unit must be one of in, cm, mm, not "m"$/],
  ["calculate --formula =1 --set a=2", /^--set needs a book's file/],
  ["calculate --formula", /^--formula needs a value after it$/],
  ["calculate --formula =1/0", /divides by zero/],
  ["calculate --formula =SPREAD_PER_GAP(16.5;23.5;0)", /^sections must be at least 1, not 0$/],
  ["calculate --formula =FOO(1)", /^no function is named FOO/],
  ["calculate --formula =1+", /can't be read/],
  ["explain book.json", /^explain needs a book's file and a cell/],
  ["explain book.json hm", /^no cell of this book is named "hm"/],
  ["functions SLASHD_PANEL", /is SLASHED_PANEL meant\?$/],
  ["functions IFEROR", /is IFERROR meant\?$/],
  ["functions EASE --unit m", /--unit must be one of in, cm, mm, not "m"/],
  ["compare book.json", /keeps no trials/],
  ["vary book.json --from 8 --to 9 --watch skirt", /^vary needs --cell/],
  ["vary book.json --cell skirt --from 8 --to 9 --watch hip", /^skirt is worked out by =hip\+depth; vary a cell with a typed number instead$/],
  ["vary book.json --cell depth --from 14 --to 8 --watch skirt", /depth can't go from 14 up to 8$/],
  ["vary book.json --cell depth --from 8 --to 14 --step 0 --watch skirt", /step of depth must be more than 0/],
  ["vary book.json --cell depth --from 0 --to 1000000 --step 1 --watch skirt", /1,000,001 steps and the most is 20,000/],
  ["vary book.json --cell depth --from 8 --watch skirt", /needs --from and --to/],
  ["vary book.json --cell depth --from 8 --to nine --watch skirt", /^--to must be a length such as 8 1\/2, not "nine"$/],
  ["vary book.json --cell depth --from 8 --to 9 --watch apron", /apron is a piece; watch one of its measures/],
  ["vary book.json --cell depth --from 8 --to 9 --watch ,", /^--watch needs the names of cells/],
  ["vary book.json --cell trimmed --from 8 --to 9 --watch skirt", /trimmed holds ok; vary a cell with a typed number/],
  ["solve book.json --cell depth --make skirt", /^solve needs one of --atmost/],
  ["solve book.json --cell depth --make skirt --atmost 3 --atleast 2", /not 2$/],
  ["solve book.json --cell depth --make skirt --atmost far", /^--atmost must be a length/],
  ["solve book.json --cell depth --make trimmed --atmost 3", /^trimmed says "ok" and holds no number/],
  ["solve book.json --cell depth --make hip --atmost 3", /^hip does not rest on depth/],
  ["solve book.json --cell depth --make skirt --atmost 3 --from 8 --to 9", /^no depth from 8 to 9 keeps skirt at most 3; nearest is depth 8/],
] as const)("%s is refused in a sentence", async (line, sentence) => {
  const args = line.split(" ").map((word) => (word === "book.json" ? word : word));
  const told = await run(book, ...args);
  expect(told.err).toMatch(sentence);
  expect([told.status, told.out]).toEqual([2, ""]);
  expect(told.err).not.toMatch(/\n/);
  const asJson = await run(book, ...args, "--json");
  if (!line.endsWith("--formula") && !line.endsWith("--set")) expect(JSON.parse(asJson.out)).toEqual({ error: told.err });
}); // biome-ignore format: a table

test.each([
  ["hip=46 1/2", 46.5], ["hip=46½", 46.5], ["hip = 46", 46], ["HIP=46", 46], ["hip=110 cm", 110 / 2.54],
  ["hip=3' 10\"", 46], ["hip==waist+2", 29], ["Draft!B2=40", 40], ["skirt=12", 42.5],
] as const)("--set %s is typed as in the grid", async (setting, hip) => {
  const { out, status } = await run(book, "calculate", "book.json", "--set", setting, "--show", "hip", "--json");
  expect(status).toBe(0);
  expect(JSON.parse(out).hip).toBeCloseTo(hip, 9);
}); // biome-ignore format: a table

test("a worked-out cell may be set for the day, and what rests on it follows", async () => {
  const { out } = await run(
    book,
    "calculate",
    "book.json",
    "--set",
    "skirt=41",
    "--show",
    "spread",
    "--json",
  );
  // (41/2 − 27/2) ÷ 5 gaps, half a gap at either edge.
  expect(JSON.parse(out)).toEqual({ spread: 1.4 });
});

test("a blank or a word where a length is needed is told in the cell's place, and exits 2 when asked for", async () => {
  const blank = await run(book, "calculate", "book.json", "--set", "waist=", "--show", "hip,cuff");
  expect([blank.status, blank.out]).toEqual([
    2,
    "hip   42 1/2\ncuff  check: body is empty: a length is needed there",
  ]);
  const word = await run(book, "calculate", "book.json", "--set", "waist=wide", "--show", "cuff", "--json");
  expect([word.status, JSON.parse(word.out).error]).toEqual([2, expect.stringMatching(/^cuff: .*"wide"/)]);
  // Not asked for by name, it stands in its place and the rest is there.
  const all = JSON.parse((await run(book, "calculate", "book.json", "--set", "waist=", "--json")).out);
  expect(all.hip).toBe(42.5);
  expect(all.cuff.error).toMatch(/body is empty/);
});

test("a formula is worked alone, or as if it stood in the book", async () => {
  const of = async (...args: string[]) => (await run(book, "calculate", ...args)).out;
  expect(await of("--formula", "=SPREAD_PER_GAP(16.5;23.5;5)")).toBe("1.4");
  expect(await of("--formula", "=SEAM_GIRTH(76;108;20;7)")).toMatch(/^80\.788/);
  expect(await of("--formula", "EASE(36 1/2, 39)", "--json")).toBe('{"value":2.5}');
  expect(await of("book.json", "--formula", "=skirt*2")).toBe("103");
  expect(await of("book.json", "--set", "depth=10", "--formula", "=skirt*2", "--json")).toBe('{"value":105}');
  expect(await of("--formula", "=DATE(2026;5;4)")).toBe("2026-05-04");
});

test("check exits 1 and names each cell, and 0 when there are no problems", async () => {
  const well = await run(book, "check", "book.json");
  expect([well.status, well.out]).toEqual([0, "no problems"]);
  const ill = await run(book, "check", "book.json", "--set", "sections=0", "--json");
  expect(ill.status).toBe(1);
  expect(JSON.parse(ill.out)).toEqual([
    {
      address: "Draft!B8",
      name: "spread",
      label: "spread",
      is: "error",
      sentence: expect.stringMatching(/^sections must be/),
      at: ["Draft!B4"],
      waiting: 0,
    },
  ]);
});

test("a script in a cell is a text like any other", async () => {
  const { err, status } = await run(
    book,
    "calculate",
    "book.json",
    "--set",
    "waist=<script>alert(1)</script>",
    "--show",
    "waist",
  );
  expect([status, err]).toEqual([0, ""]);
});

test("explain tells a rounded length's decimals beside it, and none where the tape has the mark", async () => {
  const { out } = await run(
    bookOf({ a: "8 1/2", b: "=a/3", c: "=b*3", d: "=EASE(a;b)" }),
    "explain",
    "book.json",
    "d",
  );
  // 8 1/2 ÷ 3 = 2.8333…, by the eighth 2 7/8.
  expect(out).toContain("EASE: body 8 1/2, garment 2 7/8 (2.8333)");
  expect(out).toContain("ease = (2 7/8) - (8 1/2) = -5 5/8 (-5.6667)");
  expect(out).toMatch(/^b \(Draft!B2\) {2}2 7\/8 \(2\.8333\)$/m);
  expect(out).toMatch(/^a \(Draft!B1\) {2}8 1\/2$/m);
  const [top] = JSON.parse(
    (await run(bookOf({ a: "8 1/2", b: "=a/3" }), "explain", "book.json", "b", "--json")).out,
  );
  expect(top.shown).toBe("2 7/8");
  expect(top.value).toBeCloseTo(8.5 / 3, 9);
});

test("help tells all verbs, or one, as text or as one JSON document", async () => {
  for (const args of [["help"], ["--help"], ["-h"]]) {
    const { out, status } = await run(book, ...args);
    expect(status).toBe(0);
    for (const verb of VERBS) expect(out).toContain(`  ${verb} `);
  }
  expect((await run(book, "help", "draft")).out).toContain("draft BOOK --out DIR");
  expect((await run(book, "vary", "--help")).out).not.toContain("draft");
  expect(
    JSON.parse((await run(book, "help", "--json")).out).map(({ name }: { name: string }) => name),
  ).toEqual(VERBS);
  expect((await run(book)).status).toBe(2);
});

test("what works is shown where a cell has no answer in part of the range", async () => {
  const half: Book = bookOf({
    depth: "4",
    share: "=IF(depth<3;1/0;depth*2)",
    word: '=IF(depth<3;"no";"ok")',
  });
  const args = [
    "--cell",
    "depth",
    "--from",
    "2",
    "--to",
    "4",
    "--step",
    "1",
    "--watch",
    "share,word",
    "--json",
  ];
  const { out, status } = await run(half, "vary", "book.json", ...args);
  expect(status).toBe(0);
  expect(JSON.parse(out).rows).toEqual([
    { depth: 2, share: { error: expect.stringMatching(/divides by zero/) }, word: "no" },
    { depth: 3, share: 6, word: "ok" },
    { depth: 4, share: 8, word: "ok" },
  ]);
});

test("what fails in a way nobody thought of is still one sentence", async () => {
  const io = { read: () => { throw new RangeError("odd"); }, bytes: () => new Uint8Array(), write() {}, out() {}, pass() {}, err: (text: string) => said.push(text) }; // biome-ignore format: short
  const said: string[] = [];
  expect(await main(["calculate", "book.json"], io)).toBe(2);
  expect(said).toEqual(["this failed unexpectedly (odd)"]);
  expect((await run(blankBook("Withy Green", "in", "1/8"), "calculate", "book.json", "--json")).out).toBe(
    "{}",
  );
  expect((await run(panelSkirt(), "check", "book.json")).status).toBe(0);
});

test("calculate says what is unusual beside the answer, and check lists it", async () => {
  const odd = bookOf({ wrist: "2 1/2", deep: "6 1/2", cuff: "=PIECE_AREA(CUFF(wrist;deep))" });
  const sentence = "CUFF: the depth 6 1/2 in is above the wrist 2 1/2 in; are they swapped?";
  const told = JSON.parse((await run(odd, "calculate", "book.json", "--json")).out);
  expect(told.cuff).toEqual({ value: 32.5, check: sentence });
  expect(told.wrist).toBe(2.5);
  expect((await run(odd, "calculate", "book.json")).out).toMatch(
    /^cuff +32.5 sq in {2}check: CUFF: the depth/m,
  );
  const checked = await run(odd, "check", "book.json", "--json");
  expect([checked.status, JSON.parse(checked.out)]).toEqual([
    1,
    [
      {
        address: expect.stringMatching(/!B3$/),
        name: "cuff",
        label: "cuff",
        is: "unusual",
        sentence,
        at: ["Draft!B2", "Draft!B1"],
        waiting: 0,
      },
    ],
  ]);
  expect((await run(odd, "explain", "book.json", "cuff")).out).toContain(`32.5 sq in  check: ${sentence}`);
  const alone = await run(book, "calculate", "--formula", "=HOOK_COUNT(1;7)", "--json");
  expect(JSON.parse(alone.out)).toEqual({
    value: 2,
    check: expect.stringMatching(/^HOOK_COUNT: the spacing 7 in/),
  });
});
