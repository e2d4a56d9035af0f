import { describe, expect, it, vi } from "vitest";
import { questionHash } from "../../../functions/cutting/lay-question.ts";
import type { Lay, LayOrigin, LayQuestion } from "../../../functions/lay.ts";
import type { Book } from "../../../src/book/shape.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { isFound, toKeep } from "../../../src/lay/desk.ts";
import { quickLay } from "../../../src/lay/plan.ts";
import { Search } from "../../../src/lay/search.ts";
import { publishedLay } from "./published.ts";

const { question, lay: best } = publishedLay("fu");
const hash = questionHash(question);
const quick = quickLay(question) as Lay;

/** What a desk answers that has never been asked anything: it knows of no lay but those kept here. */
async function answer(lays: Book["lays"], q: LayQuestion = question): Promise<Lay> {
  vi.resetModules();
  return (await import("../../../src/lay/desk.ts")).layDesk(q, lays) as Lay;
}

describe("the desk that answers lay questions", () => {
  it("answers with the quick lay while the book keeps none", async () => {
    expect(await answer({})).toEqual(quick);
    expect(isFound(question, {})).toBe(false);
  });

  it("answers with the lay the book keeps, after reading it from a file too", async () => {
    const lays = JSON.parse(JSON.stringify({ [hash]: toKeep(best) }));
    expect((await answer(lays)).lengths[0]).toBeCloseTo(best.lengths[0]!, 9);
    expect((await answer(lays)).lengths[0]).toBeLessThan(quick.lengths[0]!);
    expect(isFound(question, lays)).toBe(true);
  });

  it("says how the lay was found, after reading it from a file too", async () => {
    const from = async (origin: LayOrigin) =>
      (await answer(JSON.parse(JSON.stringify({ [hash]: toKeep({ ...best, origin }) })))).origin;
    expect(await from({ by: "hand" })).toEqual({ by: "hand" });
    expect(await from({ by: "search", seconds: 20, proved: true })).toEqual({
      by: "search",
      seconds: 20,
      proved: true,
    });
    const { origin: _, ...old } = toKeep(best);
    expect((await answer({ [hash]: old })).origin).toEqual({ by: "search", seconds: 0 });
    expect((await answer({})).origin).toBeUndefined();
  });

  it("goes back to the quick lay when the question is another", async () => {
    const wider = { ...question, cloths: [{ ...question.cloths[0]!, width: 39 }] };
    expect(await answer({ [hash]: toKeep(best) }, wider)).toEqual(quickLay(wider));
  });

  it("trusts no figure of a kept lay, only its places, and only when they pass the checker", async () => {
    const boast = { ...toKeep(best), length: 1, density: 1 };
    expect((await answer({ [hash]: boast })).lengths[0]).toBeCloseTo(best.lengths[0]!, 9);
    const heap = { ...toKeep(best), placements: best.placements.map((p) => ({ ...p, x: 0, y: 0 })) };
    expect(await answer({ [hash]: heap })).toEqual(quick);
    const strange = { ...toKeep(best), placements: best.placements.map((p) => ({ ...p, piece: 99 })) };
    expect(await answer({ [hash]: strange })).toEqual(quick);
    const torn = { ...toKeep(best), placements: best.placements.slice(1) };
    expect(await answer({ [hash]: torn })).toEqual(quick);
    expect(isFound(question, { [hash]: torn })).toBe(false);
  });

  it("keeps lays of several cloths in hand, which the checker then passes", async () => {
    const hand: LayQuestion = {
      ...question,
      cloths: [
        { name: "green", width: 38, length: 20 },
        { name: "grey", width: 30, length: 22 },
      ],
    };
    const search = new Search(hand, { seed: 1, rounds: 300 });
    search.run({ rounds: 300 });
    const found = search.best!;
    const lays = { [questionHash(hand)]: toKeep(found) };
    expect(await answer(lays, hand)).toEqual({ ...found, origin: { by: "search", seconds: 0 } });
    expect(checkLay(hand, await answer(lays, hand))).toEqual([]);
  });

  it("answers for a piece of cloth in hand with a lay found for such cloth without an end, if it is long enough", async () => {
    const kept = { [hash]: toKeep(best) };
    const inHand = (length: number) => ({ ...question, cloths: [{ ...question.cloths[0]!, length }] });
    const enough = inHand(best.lengths[0]! + 1e-6);
    expect((await answer(kept, enough)).placements).toEqual(best.placements);
    expect(checkLay(enough, await answer(kept, enough))).toEqual([]);
    const short = inHand(best.lengths[0]! - 0.5);
    expect(await answer(kept, short)).toEqual(quickLay(short));
  });
});
