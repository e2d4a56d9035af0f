import { expect, test } from "vitest";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import type { Book } from "../../../src/book/shape.ts";
import type { EqualLays } from "../../../src/engine/equal-lays.ts";
import { type Answer, answerAtOnce } from "../../../src/engine/question.ts";
import { numberOf } from "../../../src/engine/question-engine.ts";
import type { OpenSpan, Target } from "../../../src/engine/target.ts";
import { cell, watch } from "./ask.ts";
import { bookOf } from "./whatif-books.ts";

/** One strip of cloth as long as the depth. */
const strip = (): Book =>
  bookOf({ depth: "9 in", piece: "=RECTANGLE(20;depth)", cloth: "=YARDAGE(piece;1;54)", left: "=100-cloth" });

/** Lays that waste `waste` of the length until they are searched for; a search wastes `left` of it. */
function wasteful(waste: (depth: number) => number, left: (depth: number) => number = () => 0) {
  const searched = new Map<string, number>();
  const asked = new Map<string, LayQuestion>();
  let level = 0;
  const keyOf = ({ pieces }: LayQuestion) => JSON.stringify(pieces[0]!.outline);
  const lay = (question: LayQuestion): Lay => {
    const depth = Math.max(...question.pieces[0]!.outline.map(([along]) => along));
    const seconds = searched.get(keyOf(question)) ?? 0;
    const share = seconds > 0 ? left(depth) : waste(depth);
    return {
      placements: [],
      lengths: [depth * (1 + share)],
      density: 0.9,
      missing: [],
      origin: seconds > 0 ? { by: "search", seconds } : { by: "quick" },
    } as unknown as Lay;
  };
  const enlist = (question: LayQuestion) => {
    asked.set(keyOf(question), question);
    return lay(question);
  };
  const lays: EqualLays = {
    get lays() {
      return [...asked.values()].map(lay);
    },
    desk: (question) => {
      asked.set(keyOf(question), question);
      if (level > 0) searched.set(keyOf(question), level);
      return lay(question);
    },
    enlist,
    peek: lay,
    agrees: () => false,
    *round(seconds) {
      level = seconds;
      for (const key of asked.keys()) {
        searched.set(key, seconds);
        yield undefined;
      }
    },
  };
  return { lays, count: () => searched.size };
}

function solved(
  waste: (depth: number) => number,
  aim: Target,
  { rounds = [4], least = false, make = "cloth", span = { from: 4, to: 60, step: 0.5 } as OpenSpan } = {},
  left?: (depth: number) => number,
): Answer & { searched: number } {
  const book = strip();
  const made: ReturnType<typeof wasteful>[] = [];
  const answer = answerAtOnce(
    {
      is: "solve",
      book,
      varied: [cell(book, "depth")],
      spans: [span],
      make: watch(book, make),
      aim,
      least,
      rounds,
    },
    () => {
      made.push(wasteful(waste, left));
      return made.at(-1)!.lays;
    },
  );
  return { ...answer, searched: made.reduce((sum, { count }) => sum + count(), 0) };
}

const found = ({ solution }: Answer) => solution!.found?.figures[0];

test("a quick lay says how unsure the answer is and which other figures may do", () => {
  const { solution, laid } = solved(() => 0.05, { is: "atmost", value: 42 }, { rounds: [] });
  expect(solution!.found!.figures).toEqual([40]);
  expect(laid).toEqual({ by: "quick" });
  expect(solution!.sureness).toBe(
    "it rests on quick lays, sure to some 11 %: after a longer search depth 44 1/2 may do too",
  );
});

test("the lays at the answer and near it are searched for, and a deeper strip is found", () => {
  const answer = solved(() => 0.05, { is: "atmost", value: 42 });
  expect(found(answer)).toBe(42);
  expect(answer.solution!.sentence).toBe(
    "depth 42 makes cloth 42; no larger step up to depth 60 keeps it at most 42",
  );
  expect(answer.solution!.sureness).toBe(
    "each lay at and near it was searched for 4 s, sure to some 3 %: after a longer search depth 43 may do too",
  );
  expect(answer.laid).toEqual({ by: "search", seconds: 4 });
  // Of 113 steps only those near the answer are searched for.
  expect(answer.searched).toBeLessThan(20);
});

test("no figure is given whose searched lay does not keep the target, however far the answer moves", () => {
  const answer = solved(() => 0.08, { is: "atleast", value: 40 }, { least: true });
  expect(found(answer)).toBe(40);
  const quick = solved(() => 0.08, { is: "atleast", value: 40 }, { least: true, rounds: [] });
  expect(found(quick)).toBeLessThan(40);
  const rest = solved(() => 0.08, { is: "atmost", value: 60 }, { make: "left", least: true });
  expect(found(rest)).toBe(40);
});

test("every step shown beside the answer had the same effort", () => {
  const { solution } = solved(() => 0.05, { is: "atmost", value: 42 });
  for (const row of solution!.rows) expect(numberOf(row.readings[0])).toBeCloseTo(row.figures[0]!, 9);
  expect(solution!.rows.length).toBeGreaterThan(2);
});

test("a lucky quick lay is no answer once its neighbours are searched for as long", () => {
  // The quick lay at 44 in happens to be the shortest there is; its neighbours waste a tenth.
  const lucky = (depth: number) => (depth === 44 ? 0 : 0.1);
  const span = { from: 42, to: 46, step: 1 };
  expect(found(solved(lucky, { is: "lowest" }, { span, rounds: [] }))).toBe(44);
  // The search is as good at 43 in as at 44 in.
  expect(found(solved(lucky, { is: "lowest" }, { span }))).toBe(42);
});

test("an exact length between two laid steps is not made up", () => {
  const { solution } = solved(() => 0, { is: "equal", value: 42.25 }, { rounds: [] });
  expect(solution!.found).toBeNull();
  expect(solution!.sentence).toContain("nearest is depth 42 1/2");
});

test("which measurement matters is unsure where a longer search may change as much", () => {
  const book = bookOf({
    depth: "40 in",
    hem: "2 in",
    piece: "=RECTANGLE(20;depth)",
    cloth: "=YARDAGE(piece;1;54)+200*(hem-2)",
  });
  const effects = (rounds: readonly number[]) =>
    answerAtOnce(
      { is: "sensitivity", book, watched: watch(book, "cloth"), rounds },
      () => wasteful((depth) => (depth > 40 ? 0.06 : 0.05)).lays,
    ).effects!.map(({ measurement, unsure }) => [measurement.label, unsure]);
  expect(effects([])).toEqual([
    ["hem", false],
    ["depth", true],
  ]);
});
