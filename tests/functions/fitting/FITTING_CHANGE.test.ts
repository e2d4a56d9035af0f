import { describe, expect, test } from "vitest";
import type { Cell } from "../../../functions/define.ts";
import { FITTING_CHANGE } from "../../../functions/fitting/FITTING_CHANGE.ts";
import { LOG_VERDICT } from "../../../functions/fitting/LOG_VERDICT.ts";
import { SEAM_CHANGE } from "../../../functions/fitting/SEAM_CHANGE.ts";
import { explain, isRefused, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { setting } from "../laws.ts";
import { blockOf, seamsOf } from "./seam-lists.ts";

type Row = readonly Cell[];
const HEADS = [
  "Date",
  "Round",
  "Piece",
  "Seam",
  "Amount",
  "In or out",
  "Top or bottom",
  "Each side or all round",
  "Carried into version",
];
/** A log: piece, seam, amount, in or out, top or bottom, each side or all round, carried. */
const logOf = (...rows: Row[]) =>
  blockOf(
    HEADS,
    rows.map((row) => [null, "1", ...row]),
  );
const inches = setting("in");
const ask = (log: unknown, seam: string, ...more: unknown[]) => {
  const answer = run(FITTING_CHANGE, [log, seam, ...more] as never, inches);
  return isRefused(answer) ? answer.refusal : answer;
};

// Independent: SEAM_CHANGE adds up the signed amounts of a log's columns.
test("a log with signed amounts comes to what SEAM_CHANGE makes of its columns", () => {
  const rows: Row[] = [["bodice", "waist", -0.5], ["bodice", "side", -0.25], ["Bodice", " waist", 0.25]]; // biome-ignore format: rows
  const columns = [0, 1, 2].map((i) => rows.map((row) => row[i]!));
  expect(ask(logOf(...rows), "bodice waist")).toBe(
    run(SEAM_CHANGE, [...columns, "bodice", "waist"] as never, inches),
  );
});

test("an amount for each side counts twice, once, and the Working shows it", () => {
  const log = logOf(["bodice", "waist", 0.25, "out", null, "each side"], ["bodice", "waist", 0.5, "in"]);
  expect(ask(log, "bodice waist")).toBe(0);
  expect(
    ask(logOf(["bodice", "waist", 0.25, "out", null, "each side"]), "bodice waist", null, null, "each side"),
  ).toBe(0.25);
  const { steps } = explain(FITTING_CHANGE, [log, "bodice waist"] as never, inches);
  expect(steps.find(({ name }) => name === "net")).toMatchObject({
    rule: "all_round + 2 * each_side",
    value: 0,
  });
  expect(steps.find(({ name }) => name === "each_side")?.value).toBe(0.25);
});

describe("a change is carried along the list of seams", () => {
  const seams = seamsOf(
    ["bodice", "waist", "skirt", "waist"],
    ["skirt", "waist", "peplum", "top", "eased", 1],
    ["skirt", "hem", "flounce", "top", "gathered", null, 2],
    ["front + back", "lower", "band", "upper"],
  );

  test("through several seams in a row, each once, but not through gathers", () => {
    const log = logOf(["bodice", "waist", 0.5, "out"]);
    for (const edge of ["bodice waist", "skirt waist", "peplum top"]) expect(ask(log, edge, seams)).toBe(0.5);
    expect(ask(logOf(["skirt", "hem", 2, "out"]), "flounce top", seams)).toBe(0);
    const { steps } = explain(FITTING_CHANGE, [log, "peplum top", seams] as never, inches);
    expect(steps.find(({ name }) => name === "carried")?.rule).toContain(
      '"bodice waist", "skirt waist", "peplum top"',
    );
  });

  test("an edge's own entries count before those of its neighbours", () => {
    const log = logOf(["bodice", "waist", 0.5, "out"], ["skirt", "waist", 0.25, "in"]);
    expect(ask(log, "skirt waist", seams)).toBe(-0.25);
    expect(ask(log, "peplum top", seams)).toBe(-0.25);
  });

  test("neighbours that disagree are said, never added up; those that agree count once", () => {
    const log = (peplum: number) => logOf(["bodice", "waist", 0.5, "out"], ["peplum", "top", peplum, "out"]);
    expect(ask(log(0.5), "skirt waist", seams)).toBe(0.5);
    const eachSide = logOf(
      ["bodice", "waist", 0.5, "out"],
      ["peplum", "top", 0.25, "out", null, "each side"],
    );
    expect(ask(eachSide, "skirt waist", seams)).toBe(0.5);
    expect(ask(log(0.25), "skirt waist", seams)).toBe(
      'the edges sewn to "skirt waist" disagree, "bodice waist" let out 1/2 in and "peplum top" let out 1/4 in: write in the fitting log by how much "skirt waist" itself was altered',
    );
  });

  test("edges in succession add up; what they are sewn to is not shared out among them without a word", () => {
    const log = logOf(["front", "lower", 0.25, "out", null, "each side"], ["back", "lower", 0.25, "in"]);
    expect(ask(log, "band upper", seams)).toBe(0.25);
    expect(ask(logOf(["front", "lower", 0.5, "out"]), "band upper", seams)).toBe(0.5);
    const band = logOf(["band", "upper", 0.5, "out"]);
    expect(ask(band, "front lower", seams)).toBe(0);
    expect(toLookAt(FITTING_CHANGE, [band, "front lower", seams] as never, inches).join()).toMatch(
      /"band upper" was altered, and nothing says how much of it falls to "front lower", one of 2 edges/,
    );
  });

  test("an edge in succession whose own neighbours disagree is said too", () => {
    const more = seamsOf(
      ["front + back", "lower", "band", "upper"],
      ["front", "lower", "lining", "lower"],
      ["front", "lower", "facing", "lower"],
    );
    const log = logOf(
      ["lining", "lower", 0.5, "out"],
      ["facing", "lower", 0.25, "out"],
      ["back", "lower", 1, "out"],
    );
    expect(ask(log, "band upper", more)).toMatch(/^the edges sewn to "front lower" disagree/);
    const alike = logOf(
      ["lining", "lower", 0.5, "out"],
      ["facing", "lower", 0.5, "out"],
      ["back", "lower", 1, "out"],
    );
    expect(ask(alike, "band upper", more)).toBe(1.5);
  });

  test("seams in a circle are gone through once", () => {
    const round = seamsOf(["a", "top", "b", "top"], ["b", "top", "c", "top"], ["c", "top", "a", "top"]);
    for (const edge of ["a top", "b top", "c top"])
      expect(ask(logOf(["a", "top", 0.5]), edge, round)).toBe(0.5);
  });
});

test("a list in which every edge is sewn to every other is refused in good time", () => {
  const edges = Array.from({ length: 14 }, (_, i) => `piece${i}`);
  const all = seamsOf(...edges.flatMap((a, i) => edges.slice(i + 1).map((b) => [a, "top", b, "top"])));
  expect(ask(logOf(["other", "top", 1]), "piece0 top", all)).toMatch(
    /^the list of seams connects its edges in too many circles/,
  );
});

test("a seam altered at one end is asked for by its end; an entry without an end counts for both", () => {
  const log = logOf(["bodice", "side", 0.5, "out", "bottom"], ["bodice", "side", 0.25, "in"]);
  expect(ask(log, "bodice side", null, "bottom")).toBe(0.25);
  expect(ask(log, "bodice side", null, "top")).toBe(-0.25);
  expect(ask(log, "bodice side")).toBe(
    'row 1 of the fitting log alters "bodice side" at the bottom only: ask for its top or its bottom',
  );
});

test("an entry that was carried into a version counts no longer, and its seam stays known", () => {
  const log = logOf(["bodice", "waist", 0.5, "out", null, null, "2"], ["bodice", "waist", 0.25, "in"]);
  expect(ask(log, "bodice waist")).toBe(-0.25);
  expect(ask(logOf(["bodice", "waist", 0.5, "out", null, null, 2]), "bodice waist")).toBe(0);
});

test.each([
  ["a seam that nobody knows", [["bodice", "waist", 0.5]], "bodice wrist", 'neither the fitting log nor the list of seams knows "bodice wrist"; is "bodice waist" meant?'],
  ["a misspelt entry", [["bodise", "waist", 0.5]], "bodice waist", 'row 1 of the fitting log names "bodise waist", and the list of seams has no such edge; is "bodice waist" meant?'],
  ["an amount without a seam", [["bodice", null, 0.5]], "bodice waist", "row 1 of the fitting log names no seam, although it has an amount: write what was altered, or clear the row"],
  ["a seam without an amount", [["bodice", "waist", null]], "bodice waist", "row 1 of the fitting log names the bodice's waist and has no amount: write how much it was let out or taken in, or clear the row"],
  ["a minus that says in", [["bodice", "waist", -0.5, "in"]], "bodice waist", "row 1 of the fitting log has -1/2 in and says in: write 1/2 in with in or out, or leave in or out blank"],
] as const)("%s is refused in a sentence, never a 0", (_, rows, seam, sentence) => {
  expect(ask(logOf(...rows), seam, seamsOf(["bodice", "waist", "skirt", "waist"]))).toBe(sentence);
}); // biome-ignore format: a table

test("a name misspelt in the list of seams is blamed on its row there, also by the log and by what asks for another of its names", () => {
  const log = logOf(["bodice", "waist", 0.5]);
  const asked = (side: readonly [string, string], of: string) => {
    const seams = seamsOf(["bodice", "side", "bodice", "side"], [...side, "skirt", "waist"], ["skirt", "side", "skirt", "side"]);
    const points: unknown[] = [];
    const verdict = run(LOG_VERDICT, [log, seams] as never, { ...inches, points: (at) => points.push(at) });
    const change = run(FITTING_CHANGE, [log, of, seams] as never, inches);
    return { verdict, change, points };
  };
  // The list has seven columns: its second row begins at cell 7.
  const says = (name: string) => `row 2 of the list of seams names "${name}"; is "bodice waist" meant?`;
  expect(asked(["bodise", "waist"], "skirt waist")).toEqual({
    verdict: `check: ${says("bodise waist")}`,
    change: { refusal: says("bodise waist"), at: { position: 2, cell: 7 } },
    points: [{ position: 1, cell: 7 }],
  });
  expect(asked(["bodice", "wiast"], "bodice waist").change).toMatchObject({
    refusal: says("bodice wiast"),
    at: { position: 2, cell: 8 },
  });
  expect(ask(logOf(), "bodice waist", seamsOf(["bodice", "wiast", "skirt", "waist"], ["bodice", "side", "bodice", "side"]))).toBe(
    'row 1 of the list of seams names "bodice wiast"; is "bodice waist" meant?',
  );
}); // biome-ignore format: rows

test("LOG_VERDICT points at the first entry that names no edge of the list", () => {
  const points: unknown[] = [];
  const log = logOf(["bodice", "waist", 0.5], ["bodice", "dart", 0.25]);
  const answer = run(LOG_VERDICT, [log, seamsOf(["bodice", "waist", "skirt", "waist"])] as never, {
    ...inches,
    points: (at) => points.push(at),
  });
  expect(answer).toMatch(
    /^check: row 2 of the fitting log names "bodice dart", and the list of seams has no such edge/,
  );
  expect(points).toEqual([{ position: 0, cell: 9 + 3 }]);
});

// By hand: the side seam was let out at the bottom under one name and at the top under the other.
test("an end that an edge's own entries leave alone takes the change of the edge it is sewn to", () => {
  const seams = seamsOf(["front", "side", "back", "side"]);
  const log = logOf(["front", "side", 0.5, "out", "bottom"], ["back", "side", 1, "out", "top"]);
  for (const edge of ["front side", "back side"]) {
    expect(ask(log, edge, seams, "bottom")).toBe(0.5);
    expect(ask(log, edge, seams, "top")).toBe(1);
  }
});

test("a seam that is logged under both of its names says which entries are not counted", () => {
  const seams = seamsOf(["front", "side", "back", "side"], ["front + back", "waist", "skirt", "waist"]);
  const doubts = (log: unknown, edge: string) =>
    toLookAt(FITTING_CHANGE, [log, edge, seams] as never, inches).join();
  const both = logOf(["front", "side", 0.5, "out"], ["back", "side", 0.25, "in"]);
  expect(doubts(both, "front side")).toMatch(/alters "back side" as well, which is sewn to "front side"/);
  const agreed = logOf(
    ["front", "waist", 0.25, "out", null, "each side"],
    ["back", "waist", 0.25, "out"],
    ["skirt", "waist", 0.75, "out"],
  );
  for (const edge of ["front waist", "back waist"])
    expect(doubts(agreed, edge)).toMatch(
      /alters "front waist" and "back waist" and "skirt waist", which are sewn together, by the same amount/,
    );
});

test("a change of an edge that another is gathered to is not carried, and that is said", () => {
  const seams = seamsOf(["skirt", "waist", "bodice", "waist", "gathered", null, 1.5]);
  const log = logOf(["bodice", "waist", 0.5, "out"]);
  expect(ask(log, "skirt waist", seams)).toBe(0);
  expect(toLookAt(FITTING_CHANGE, [log, "skirt waist", seams] as never, inches).join()).toMatch(
    /"bodice waist" was altered, and "skirt waist" is gathered to it, so the change is not carried/,
  );
});

describe("one change that is written down for both pieces of a seam is asked about, and counts once", () => {
  const seams = seamsOf(["bodice", "waist", "skirt", "waist"], ["skirt", "waist", "band", "lower"]);
  const log = logOf(["bodice", "waist", 0.5, "out"], ["skirt", "waist", 0.25, "out", null, "each side"]);
  const asked = (declaration: typeof FITTING_CHANGE, ...args: unknown[]) =>
    toLookAt(declaration, args as never, inches);

  test.each([
    ["bodice waist", /alters "bodice waist" and "skirt waist", which are sewn together, by the same amount/],
    ["skirt waist", /alters "skirt waist" and "bodice waist", which are sewn together, by the same amount/],
    ["band lower", /alters "skirt waist" and "bodice waist", which are sewn together, by the same amount/],
  ])("at %s", (edge, sentence) => {
    expect(ask(log, edge, seams)).toBe(0.5);
    const [said, ...more] = asked(FITTING_CHANGE, log, edge, seams);
    expect(said).toMatch(sentence);
    expect(said).toMatch(/counted once.*where these are two changes, write both under one name$/);
    expect(more).toEqual([]);
  });

  test("at a band between two pieces that were both altered", () => {
    const between = seamsOf(["bodice", "waist", "band", "upper"], ["skirt", "waist", "band", "upper"]);
    expect(ask(log, "band upper", between)).toBe(0.5);
    expect(asked(FITTING_CHANGE, log, "band upper", between)).toEqual([
      expect.stringMatching(
        /alters "bodice waist" and "skirt waist", which are both sewn to "band upper", by the same amount/,
      ),
    ]);
  });

  test("and one that is written down once is not", () => {
    const once = logOf(["bodice", "waist", 0.5, "out"], ["bodice", "waist", 0.25, "in"]);
    for (const edge of ["bodice waist", "skirt waist", "band lower"]) {
      expect(ask(once, edge, seams)).toBe(0.25);
      expect(asked(FITTING_CHANGE, once, edge, seams)).toEqual([]);
    }
  });
});
