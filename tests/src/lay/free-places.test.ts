import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import { answerFrom } from "../../../src/lay/answer.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { FreePlaces } from "../../../src/lay/free-places.ts";
import { quickLay } from "../../../src/lay/quick.ts";
import { often } from "../../often.ts";
import { blobs } from "./blobs.ts";
import { publishedLay } from "./published.ts";

const laid = (question: LayQuestion): Lay => {
  const lay = quickLay(question);
  if ("refusal" in lay) throw new Error(lay.refusal);
  return lay;
};

const apron: LayQuestion = {
  pieces: [
    {
      name: "apron",
      outline: [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      quantity: 2,
      turns: [0, 180],
      match: [2, 0],
    },
  ],
  cloths: [{ name: "cloth", width: 30, length: null }],
  gap: 0,
  repeat: 0,
};
const at = (copy: number, x: number, y: number): Placement => ({
  piece: 0,
  copy,
  cloth: 0,
  turn: 0,
  x,
  y,
});

describe("a piece moved by hand", () => {
  it("stays where it is put when nothing is there", () => {
    const wanted = at(1, 25.5, 7.25);
    expect(new FreePlaces(apron).nearest([at(0, 0, 0), at(1, 10, 0)], wanted)).toEqual(wanted);
  });

  it("goes to the nearest side of the piece it is put on", () => {
    const hand = new FreePlaces(apron);
    expect(hand.nearest([at(0, 20, 10)], at(1, 28, 11))).toEqual(at(1, 30, 11));
    expect(hand.nearest([at(0, 20, 10)], at(1, 21, 3))).toEqual(at(1, 21, 0));
  });

  it("comes back onto the cloth when it is put beyond a selvedge or the beginning", () => {
    expect(new FreePlaces(apron).nearest([], at(0, -8, 28))).toEqual(at(0, 0, 20));
  });

  it("keeps the gap for the scissors", () => {
    const question = { ...apron, gap: 1 };
    const there = new FreePlaces(question).nearest([at(0, 20, 10)], at(1, 28, 11))!;
    expect(there.x).toBeCloseTo(31, 1);
    expect(checkLay(question, answerFrom(question, [at(0, 20, 10), there]), 1e-6)).toEqual([]);
  });

  it("keeps to the repeat of the cloth", () => {
    const question = { ...apron, repeat: 7 };
    expect(new FreePlaces(question).nearest([at(0, 20, 10)], at(1, 28, 11))!.x).toBe(20 + 14);
  });

  it("finds no place on a cloth that is full", () => {
    const question = { ...apron, cloths: [{ name: "rest", width: 12, length: 19 }] };
    expect(new FreePlaces(question).nearest([at(0, 0, 0)], at(1, 5, 0))).toBeNull();
  });

  it("never overlaps, wherever it is put, and no nearer place is free along the way (seed 20262)", () => {
    const published = publishedLay("albano");
    const made = blobs(6, 2, 90, 3);
    const tables = [
      { question: published.question, lay: published.lay },
      { question: made, lay: laid(made) },
      { question: { ...made, gap: 0.5 }, lay: laid({ ...made, gap: 0.5 }) },
    ].map((one) => ({ ...one, hand: new FreePlaces(one.question) }));
    const share = fc.double({ min: -0.2, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.nat(),
        fc.boolean(),
        share,
        share,
        (table, n, turn, u, v) => {
          const { question, lay, hand } = table;
          const old = lay.placements[n % lay.placements.length]!;
          const wanted = {
            ...old,
            turn: turn ? old.turn : (old.turn + 180) % 360,
            x: u * lay.lengths[0]!,
            y: v * question.cloths[0]!.width,
          };
          const there = hand.nearest(lay.placements, wanted)!;
          const placements = lay.placements.map((p) => (p === old ? there : p));
          // The published lay's own faults, if any, are not the hand's.
          const before = checkLay(question, answerFrom(question, lay.placements), 1e-4);
          expect(checkLay(question, answerFrom(question, placements), 1e-4)).toEqual(before);
          expect(hand.nearest(placements, there)).toEqual(there);
        },
      ),
      { seed: 20262, numRuns: often(120) },
    );
  });
});
