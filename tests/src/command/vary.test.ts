import { expect, test } from "vitest";
import { bookOf, panelSkirt } from "../engine/whatif-books.ts";
import { run } from "./io.ts";

const vary = (...args: string[]) => run(panelSkirt(), "vary", "book.json", ...args);
const DEPTH = ["--cell", "depth", "--from", "26", "--to", "28"];

test("vary prints its rows as one JSON document", async () => {
  const { status, out } = await vary(...DEPTH, "--step", "0.5", "--watch", "cloth", "--json");
  expect(status).toBe(0);
  expect(JSON.parse(out)).toEqual({
    rows: [26, 26.5, 27, 27.5, 28].map((depth) => ({ depth, cloth: 3 * (depth + 3) })),
    thresholds: [],
  });
});

test("lengths are typed as on the tape, and several cells watched", async () => {
  const { out } = await vary(
    "--cell",
    "depth",
    "--from",
    "26 1/2",
    "--to",
    "27 1/2",
    "--step",
    "1/2",
    "--watch",
    "cloth,buy",
    "--json",
  );
  const { rows, thresholds } = JSON.parse(out);
  expect(rows).toEqual([
    { depth: 26.5, cloth: 88.5, buy: 90 },
    { depth: 27, cloth: 90, buy: 90 },
    { depth: 27.5, cloth: 91.5, buy: 94.5 },
  ]);
  expect(thresholds).toEqual([
    { cell: "buy", at: 27.125, before: 90, after: 94.5, sentence: "from depth 27 1/8 buy is 94 1/2, not 90" },
  ]);
});

test("the table for people tells lengths on the tape, thresholds and what does not follow", async () => {
  const { out } = await vary(...DEPTH, "--step", "1", "--watch", "buy", "--watch", "panels");
  expect(out.split("\n")).toEqual([
    "depth  buy     panels",
    "26     90      3",
    "27     90      3",
    "28     94 1/2  3",
    "",
    "from depth 27 1/8 buy is 94 1/2, not 90",
    "panels does not rest on depth",
  ]);
});

test("two cells vary together, and --csv gives the same rows", async () => {
  const { out } = await vary(
    ...DEPTH,
    "--step",
    "2",
    "--cell",
    "fullness",
    "--from",
    "2",
    "--to",
    "3",
    "--step",
    "1",
    "--watch",
    "panels,cloth",
    "--csv",
  );
  expect(out).toBe(
    ["depth,fullness,panels,cloth", "26,2,2,58", "26,3,3,87", "28,2,2,62", "28,3,3,93"]
      .map((line) => `${line}\r\n`)
      .join(""),
  );
});

test("a setting without an answer keeps its sentence in its row and the exit is still 0", async () => {
  const book = bookOf({ waist: "28 in", hem: "40 in", spread: "=SPREAD_PER_GAP(waist;hem;5)" });
  const { status, out } = await run(
    book,
    "vary",
    "book.json",
    "--cell",
    "hem",
    "--from",
    "26",
    "--to",
    "30",
    "--step",
    "2",
    "--watch",
    "spread",
    "--json",
  );
  expect(status).toBe(0);
  const { rows } = JSON.parse(out);
  expect(rows[0].spread.error).toMatch(/^hem must be at least as long as top/);
  expect(rows[1]).toEqual({ hem: 28, spread: 0 });
});

test("--set changes the book before it is varied", async () => {
  const { out } = await vary(...DEPTH, "--step", "2", "--watch", "cloth", "--set", "hem=1 in", "--json");
  expect(JSON.parse(out).rows[0]).toEqual({ depth: 26, cloth: 82.5 });
});

test("each wrong request is one sentence, and exits 2", async () => {
  const wrong = async (...args: string[]) => {
    const { status, out, err } = await vary(...args);
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(err.split("\n")).toHaveLength(1);
    return err;
  };
  const [from, to] = [
    ["--from", "8"],
    ["--to", "14"],
  ];
  expect(await wrong("--cell", "cut", ...from!, ...to!, "--watch", "cloth")).toMatch(/^cut is worked out by/);
  expect(await wrong("--cell", "depht", ...from!, ...to!, "--watch", "cloth")).toMatch(/is depth meant\?/);
  expect(await wrong("--cell", "depth", ...from!, ...to!, "--watch", "note")).toMatch(/^note is a text/);
  expect(await wrong("--cell", "depth", ...from!, ...to!)).toMatch(/^vary needs --watch/);
  expect(await wrong("--cell", "depth", ...from!, "--watch", "cloth")).toMatch(
    /^vary needs --from and --to for depth/,
  );
  expect(await wrong("--cell", "depth", "--from", "deep", ...to!, "--watch", "cloth")).toBe(
    '--from must be a length such as 8 1/2, not "deep"',
  );
  expect(await wrong("--cell", "depth", "--from", "14", "--to", "8", "--watch", "cloth")).toMatch(
    /^from must be at most to/,
  );
  expect(await wrong("--cell", "depth", ...from!, ...to!, "--step", "0", "--watch", "cloth")).toMatch(
    /^the step of depth must be more than 0/,
  );
  expect(await wrong("--cell", "depth", ...from!, ...to!, "--step", "0.000006", "--watch", "cloth")).toMatch(
    /^that makes 1,000,001 steps/,
  );
  expect(
    await wrong(
      ...DEPTH,
      "--cell",
      "fullness",
      "--from",
      "1",
      "--to",
      "3",
      "--cell",
      "hip",
      "--watch",
      "cloth",
    ),
  ).toMatch(/one or two cells, not 3/);
  expect(JSON.parse((await vary(...DEPTH, "--watch", "cloth", "--json", "--csv")).out)).toEqual({
    error: "choose --json or --csv, not both",
  });
});

test("when no step has an answer the sentence says why", async () => {
  const book = bookOf({ waist: "28 in", hem: "40 in", spread: "=SPREAD_PER_GAP(waist;hem;5)" });
  const { status, out } = await run(
    book,
    "vary",
    "book.json",
    "--cell",
    "hem",
    "--from",
    "10",
    "--to",
    "20",
    "--watch",
    "spread",
    "--json",
  );
  expect(status).toBe(2);
  expect(JSON.parse(out).error).toMatch(/^no step has an answer: at the first, hem must be at least/);
});

test("a range may be typed with decimal commas, and a book that shows them is told with them", async () => {
  const args = [
    "book.json",
    "--cell",
    "depth",
    "--from",
    "26,5",
    "--to",
    "27,5",
    "--step",
    "0,5",
    "--watch",
    "cloth",
  ];
  const { out } = await run(panelSkirt(), "vary", ...args, "--json");
  expect(JSON.parse(out).rows.map(({ depth }: { depth: number }) => depth)).toEqual([26.5, 27, 27.5]);
  const comma = { ...bookOf({ depth: "70,5", twice: "=depth*2,1" }, "cm"), decimal: "comma" as const };
  const told = await run(
    comma,
    "vary",
    "book.json",
    "--cell",
    "depth",
    "--from",
    "70,5",
    "--to",
    "70.6",
    "--step",
    "0,1",
    "--watch",
    "twice",
  );
  expect(told.out.split("\n")).toEqual(["depth  twice", "70,5   148,05", "70,6   148,26"]);
  const unclear = await run(
    panelSkirt(),
    "vary",
    "book.json",
    "--cell",
    "depth",
    "--from",
    "1,250",
    "--to",
    "3",
  );
  expect([unclear.status, unclear.err]).toEqual([
    2,
    "--from: 1,250 has two readings: 1.250 with the comma as its decimal mark, or 1250; type the one that is meant",
  ]);
});

test("--set takes a decimal comma as a cell does", async () => {
  const set = (value: string) =>
    run(panelSkirt(), "calculate", "book.json", "--set", `hip=${value}`, "--show", "hip", "--json");
  expect(JSON.parse((await set("70,5")).out)).toEqual({ hip: 70.5 });
  expect(JSON.parse((await set("70,5 cm")).out).hip).toBeCloseTo(70.5 / 2.54, 9);
  const comma = { ...bookOf({ hip: "70,5", half: "=hip/4" }, "cm"), decimal: "comma" as const };
  expect((await run(comma, "calculate", "book.json")).out.split("\n")).toEqual([
    "hip   70,5",
    "half  17,625",
  ]);
  expect((await run(comma, "calculate", "book.json", "--formula", "=hip*1,5")).out).toBe("105,75");
});

test("an answer that leaves a cell out says so beside the rows, the solution and a formula's answer", async () => {
  const book = bookOf({
    first: "28",
    second: "n/a",
    third: "30",
    fourth: "29",
    sum: "=SUM(B1:B4)",
    twice: "=sum*2",
  });
  const sentence = `second (Draft!B2): B2 holds the text "n/a" within the list B1:B4 that sum (Draft!B5) adds up, and is not counted: type a number, or - where there is no number`;
  const range = ["--cell", "first", "--from", "28", "--to", "29", "--step", "1"];
  const table = await run(book, "vary", "book.json", ...range, "--watch", "twice");
  expect(table.out.split("\n").at(-1)).toBe(`check: ${sentence}`);
  expect(
    JSON.parse((await run(book, "vary", "book.json", ...range, "--watch", "twice", "--json")).out).check,
  ).toEqual([sentence]);
  const solved = await run(
    book,
    "solve",
    "book.json",
    "--cell",
    "first",
    "--make",
    "twice",
    "--equal",
    "180",
    "--json",
  );
  expect(JSON.parse(solved.out).check).toEqual([sentence]);
  const alone = await run(book, "calculate", "book.json", "--formula", "=MAX(B1:B4)");
  expect(alone.out).toBe(
    `30\ncheck: ${sentence.replace("sum (Draft!B5) adds up", "this formula takes the greatest of")}`,
  );
  const whole = bookOf({ first: "28", second: "27", sum: "=SUM(B1:B2)" });
  expect(
    JSON.parse((await run(whole, "vary", "book.json", ...range, "--watch", "sum", "--json")).out),
  ).not.toHaveProperty("check");
});

test("vary marks the steps at which the arguments of a function become unusual", async () => {
  const book = bookOf({
    depth: "4 in",
    cuff: "=CUFF(6 1/2;depth)",
    around: "=PIECE_WIDTH(cuff)",
  });
  const asked = ["--cell", "depth", "--from", "6", "--to", "8", "--step", "1", "--watch", "around"];
  const lines = (await run(book, "vary", "book.json", ...asked)).out.split("\n");
  expect(lines[1]).not.toContain("check");
  expect(lines[2]).toMatch(/ {2}check: cuff is unusual$/);
  expect(lines.at(-1)).toMatch(/^check: at depth 7 to 8: cuff: CUFF: the depth 7 in/);
  const { unusual } = JSON.parse((await run(book, "vary", "book.json", ...asked, "--json")).out);
  expect(unusual.map(({ at, cell }: { at: object; cell: string }) => [at, cell])).toEqual([
    [{ depth: 7 }, "cuff"],
    [{ depth: 8 }, "cuff"],
  ]);
});
