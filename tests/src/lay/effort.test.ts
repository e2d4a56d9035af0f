import { describe, expect, it } from "vitest";
import { questionHash } from "../../../functions/cutting/lay-question.ts";
import type { Lay, LayOrigin } from "../../../functions/lay.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { answering, heard, NOTHING_HEARD, type Question } from "../../../src/engine/question.ts";
import { numberOf } from "../../../src/engine/question-engine.ts";
import type { Row } from "../../../src/engine/sweep.ts";
import { answerFrom } from "../../../src/lay/answer.ts";
import { layDesk, toKeep } from "../../../src/lay/desk.ts";
import { Effort } from "../../../src/lay/effort.ts";
import { cell, watch } from "../engine/ask.ts";
import { goredSkirt, laidPeplum } from "../engine/whatif-books.ts";

const book = laidPeplum();
const question = (one = book): Question => ({
  is: "sweep",
  rounds: [0.2],
  book: one,
  varied: [cell(one, "depth")],
  spans: [{ from: 10, to: 12, step: 0.5 }],
  watched: [watch(one, "cloth")],
});
const lengths = (rows: readonly Row[]): number[] => rows.map(({ readings }) => numberOf(readings[0])!);

/** The first answer, and the first round after it; each with how its lays were found. */
function asked(one: Question): {
  rows: readonly Row[];
  laid: (LayOrigin | null)[];
  round: readonly Row[] | null;
} {
  let answer = NOTHING_HEARD;
  let round: readonly Row[] | null = null;
  const laid: (LayOrigin | null)[] = [];
  for (const news of answering(one, () => new Effort())) {
    if (news && "round" in news) round = news.round.rows;
    else if (news) answer = heard(answer, news);
    if (news && "settled" in news) laid.push(news.laid);
  }
  return { rows: answer.rows, laid, round };
}

describe("the lays of a what-if question", () => {
  it("are quick at first and say so; then every step is searched for equally long, and none grows", () => {
    const skirt = goredSkirt();
    const { rows, laid, round } = asked({
      ...(question(skirt) as Extract<Question, { is: "sweep" }>),
      // Long enough to find a shorter lay beside other work, too.
      rounds: [0.6],
      // Longer than any piece that another test lays: a lay known of more to cut would answer at once.
      spans: [{ from: 71, to: 72, step: 0.5 }],
    });
    expect(laid).toEqual([{ by: "quick" }, { by: "search", seconds: 0.6 }]);
    const [before, after] = [lengths(rows), lengths(round!)];
    expect(after).toHaveLength(3);
    expect(Math.min(...after)).toBeLessThan(Math.min(...before));
    after.forEach((length, i) => {
      expect(length).toBeLessThanOrEqual(before[i]! + 1e-6);
    });
    expect(round!.map(({ figures }) => figures)).toEqual(rows.map(({ figures }) => figures));
  });

  it("are not those that the book keeps: no step has had another effort than its neighbours", () => {
    const engine = new Engine(book, layDesk);
    const asks = engine.laid()[0]!.lays[0]!.question;
    engine.destroy();
    const lay = layDesk(asks, {}) as Lay;
    // Laid by hand five inches farther on: the book itself answers with that.
    const far = answerFrom(
      asks,
      lay.placements.map((one) => ({ ...one, x: one.x + 5 })),
    );
    const found = { ...book, lays: { [questionHash(asks)]: toKeep({ ...far, origin: { by: "hand" } }) } };
    const kept = new Engine(found, layDesk);
    expect(kept.value(cell(found, "cloth"))).toBeCloseTo(lay.lengths[0]! + 5, 6);
    kept.destroy();
    const sweep = (one: typeof book): Question => ({
      ...(question(one) as Extract<Question, { is: "sweep" }>),
      rounds: [],
      spans: [{ from: 9, to: 10, step: 0.5 }],
    });
    const { rows } = asked(sweep(found));
    expect(lengths(rows)[0]).toBeCloseTo(lay.lengths[0]!, 6);
    expect(lengths(rows)).toEqual(lengths(asked(sweep(book)).rows));
  });

  it("are not made at all where nothing is laid", () => {
    const one = { ...question(), watched: [watch(book, "hem_edge")] } as Question;
    expect(asked(one)).toMatchObject({ laid: [null], round: null });
  });

  it("made between two steps are not searched for later", () => {
    const engine = new Engine(book, layDesk);
    const asks = engine.laid()[0]!.lays[0]!.question;
    engine.destroy();
    const effort = new Effort();
    effort.peek(asks);
    expect(effort.lays.length).toBe(0);
    const quick = effort.desk(asks) as Lay;
    expect(effort.lays.length).toBe(1);
    for (const _ of effort.round(0.1));
    const lay = effort.desk(asks) as Lay;
    expect(lay.origin).toMatchObject({ by: "search", seconds: 0.1 });
    expect(lay.lengths[0]).toBeLessThanOrEqual(quick.lengths[0]!);
    expect(effort.peek(asks)).toBe(lay);
  });
});
