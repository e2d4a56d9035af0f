import { describe, expect, it } from "vitest";
import type { LayQuestion, Placement } from "../../../../functions/lay.ts";
import {
  copyKey,
  copyName,
  neighbour,
  replaced,
  stepped,
  turnedRound,
} from "../../../../src/app/lay/arrange.ts";
import { answerFrom } from "../../../../src/lay/answer.ts";
import { checkLay } from "../../../../src/lay/check.ts";
import { FreePlaces } from "../../../../src/lay/free-places.ts";
import { quickLay } from "../../../../src/lay/quick.ts";
import { blobs } from "../../lay/blobs.ts";

const question: LayQuestion = {
  pieces: [
    {
      name: "gore",
      outline: [
        [0, 0],
        [20, 5],
        [20, 10],
        [0, 10],
      ],
      quantity: 2,
      turns: [0, 180],
    },
    {
      name: "belt",
      outline: [
        [0, 0],
        [30, 0],
        [30, 4],
        [0, 4],
      ],
      quantity: 1,
      turns: [0],
    },
  ],
  cloths: [{ name: "cloth", width: 30, length: null }],
  gap: 0,
  repeat: 0,
};
const at = (piece: number, copy: number, x: number, y: number): Placement => ({
  piece,
  copy,
  cloth: 0,
  turn: 0,
  x,
  y,
});
const hand = new FreePlaces(question);
const lay = [at(0, 0, 0, 0), at(0, 1, 20, 0), at(1, 0, 0, 26)];

describe("laying by hand", () => {
  it("calls the copies of a piece by number, a single one by its name", () => {
    expect(lay.map((one) => copyName(question, one))).toEqual(["gore 1", "gore 2", "belt"]);
  });

  it("a step goes as far as it is told where nothing is in the way", () => {
    expect(stepped(hand, question, lay, lay[0]!, [0, 0.25])).toEqual(at(0, 0, 0, 0.25));
  });

  it("a step into another piece passes over it", () => {
    const there = stepped(hand, question, lay, lay[0]!, [0.25, 0])!;
    expect(there.x).toBeGreaterThan(0.25);
    expect(checkLay(question, answerFrom(question, replaced(lay, there)), 1e-6)).toEqual([]);
  });

  it("a step off the cloth is no step", () => {
    expect(stepped(hand, question, lay, lay[0]!, [-0.25, 0])).toBeNull();
    expect(stepped(hand, question, [lay[2]!], lay[2]!, [0, 1])).toBeNull();
  });

  it("every step and turn on a crowded cloth leaves a lay without fault", () => {
    const crowd = blobs(5, 2, 40, 9);
    const crowded = new FreePlaces(crowd);
    const first = quickLay(crowd);
    if ("refusal" in first) throw new Error(first.refusal);
    let placements = first.placements;
    for (let i = 0; i < placements.length; i += 1)
      for (const way of [[2, 0], [0, 2], [-2, 0], [0, -2], null] as const) {
        const one = placements[i]!;
        const there = way
          ? stepped(crowded, crowd, placements, one, way)
          : turnedRound(crowded, crowd, placements, one);
        if (there) placements = replaced(placements, there);
        expect(checkLay(crowd, answerFrom(crowd, placements), 1e-6)).toEqual([]);
      }
  });

  it("a turn keeps the middle where there is room, and a belt of one turn is not turned", () => {
    expect(turnedRound(hand, question, [lay[0]!], lay[0]!)).toEqual({ ...at(0, 0, 20, 10), turn: 180 });
    expect(turnedRound(hand, question, lay, lay[2]!)).toBeNull();
  });

  it("goes from piece to piece along the cloth and round again", () => {
    const keys = [null, "0 0", "1 0", "0 1"].map((key) => neighbour(question, lay, key, 1));
    expect(keys).toEqual(["0 0", "1 0", "0 1", "0 0"]);
    expect(neighbour(question, lay, "0 0", -1)).toBe(copyKey(lay[1]!));
    expect(neighbour(question, [], null, 1)).toBeNull();
  });
});
