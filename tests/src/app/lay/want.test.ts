import { describe, expect, it } from "vitest";
import { questionHash } from "../../../../functions/cutting/lay-question.ts";
import type { LayOrigin, LayQuestion } from "../../../../functions/lay.ts";
import { nextWant } from "../../../../src/app/lay/want.ts";
import type { Laid } from "../../../../src/engine/records.ts";
import { answerFrom } from "../../../../src/lay/answer.ts";
import { toKeep } from "../../../../src/lay/desk.ts";

/** A collar on cloth of this width; each width is a question of its own. */
const question = (width: number, length: number | null = null, quantity = 1): LayQuestion => ({
  pieces: [{ name: "collar", outline: [[0, 0], [10, 0], [10, 9], [0, 10]], quantity, turns: [0] }],
  cloths: [{ name: "cloth", width, length }],
  gap: 0,
  repeat: 0,
}); // biome-ignore format: an outline

const PLACED = [{ piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 }];

function laid(row: number, asks: LayQuestion, origin?: LayOrigin): Laid {
  const answer = { ...answerFrom(asks, PLACED), ...(origin && { origin }) };
  return { place: { page: 0, row, column: 1 }, lays: [{ question: asks, answer }] };
}

const searched = (seconds: number, proved = false): LayOrigin => ({ by: "search", seconds, proved });
const NONE: ReadonlySet<string> = new Set();
const next = (all: readonly Laid[], row: number | null = null, over = NONE, quickOnly = false) => {
  // The lay that answers is the one that the book found for the question.
  const found = Object.fromEntries(
    all.flatMap(({ lays }) =>
      lays.flatMap(({ question, answer }) =>
        "refusal" in answer ? [] : [[questionHash(question), toKeep({ origin: { by: "quick" }, ...answer })]],
      ),
    ),
  );
  const want = nextWant(all, found, row === null ? null : { page: 0, row, column: 1 }, over, quickOnly);
  return want && [want.question.cloths[0]!.width, Number(want.seconds.toFixed(3))];
};

describe("the lay that is searched for next", () => {
  it("is that of the cell looked at, then the others in the order of the book, two seconds each", () => {
    expect(next([laid(5, question(45)), laid(2, question(54))])).toEqual([54, 2]);
    expect(next([laid(5, question(45)), laid(2, question(54))], 5)).toEqual([45, 2]);
    expect(next([laid(5, question(45), searched(2)), laid(2, question(54))], 5)).toEqual([54, 2]);
  });

  it("is searched for longer once all had their two seconds, up to a minute, and then no more", () => {
    const after = (seconds: number) =>
      next([laid(5, question(45), searched(seconds)), laid(2, question(54), searched(60))], 5);
    expect([2, 2.1, 12, 20, 45, 59.98].map(after)).toEqual([
      [45, 18],
      [45, 17.9],
      [45, 8],
      [45, 40],
      [45, 15],
      null,
    ]);
  });

  it("is none when nothing is to be gained: proved, laid by hand, all on the cloth in hand, given up", () => {
    expect(next([laid(5, question(45), searched(1, true))])).toBeNull();
    expect(next([laid(5, question(45), { by: "hand" })])).toBeNull();
    expect(next([laid(5, question(45, 30))])).toBeNull();
    expect(next([laid(5, question(45))], null, new Set([questionHash(question(45))]))).toBeNull();
  });

  it("is searched for though a lay of a larger job bounds it, which was searched for long", () => {
    const bounded = laid(5, question(45), searched(60));
    expect(nextWant([bounded], {}, null, NONE, false)).toMatchObject({ seconds: 2 });
  });

  it("is before all the large one that no quick lay was made of yet, though nothing is searched for by itself", () => {
    const waiting = (asks: LayQuestion): Laid => ({
      place: { page: 0, row: 9, column: 1 },
      lays: [{ question: asks, answer: { refusal: "being worked out", pending: { least: 3 } } }],
    });
    const pending = waiting(question(60, null, 80));
    // The quick lays of smaller questions come without a search.
    expect(next([laid(5, question(45)), waiting(question(60, null, 30))])).toEqual([45, 2]);
    expect(next([laid(5, question(45)), pending])).toEqual([60, 0]);
    expect(next([laid(5, question(45)), pending], 5, NONE, true)).toEqual([60, 0]);
    expect(next([laid(5, question(45))], 5, NONE, true)).toBeNull();
  });

  it("is not one that can not be laid", () => {
    const refused: Laid = {
      place: { page: 0, row: 9, column: 1 },
      lays: [{ question: question(60), answer: { refusal: "the collar is wider than the cloth" } }],
    };
    expect(next([refused])).toBeNull();
  });
});
