/** The inner loop of the search as WebAssembly and its plain twin. */
import bytes from "virtual:inner-loop";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Lay, LayCloth, LayQuestion } from "../../../functions/lay.ts";
import { type Host, PlainRoom, type Room } from "../../../src/lay/inner/room.ts";
import { newRoom, SimdRoom } from "../../../src/lay/inner/simd-room.ts";
import { Search } from "../../../src/lay/search.ts";
import { blobs } from "./blobs.ts";
import { publishedQuestion } from "./published.ts";

type Make = (host: Host) => Room;

const plain: Make = (host) => new PlainRoom(host);
const simd: Make = (host) => new SimdRoom(host);

/** The lays found in so many rounds, and all that is in the memory after them. */
function searched(question: LayQuestion, make: Make, rounds: number): { lays: Lay[]; memory: Int32Array } {
  let room: Room | undefined;
  const search = new Search(question, { seed: 5, rounds }, (host) => {
    room = make(host);
    return room;
  });
  const lays: Lay[] = [];
  search.run({ rounds }, (lay) => lays.push(lay));
  const end = room!.ints.findLastIndex((one) => one !== 0);
  return { lays, memory: room!.ints.slice(0, end + 1) };
}

/** Whether two searches came to the same, to the last bit of all they keep. */
function agree(a: ReturnType<typeof searched>, b: ReturnType<typeof searched>): boolean {
  return (
    JSON.stringify(a.lays) === JSON.stringify(b.lays) &&
    a.memory.length === b.memory.length &&
    a.memory.every((one, k) => one === b.memory[k])
  );
}

const base = blobs(6, 2, 24, 11);
const triangle = (x: number, y: number): Point[] => [
  [x, y],
  [x + 4, y],
  [x + 2, y + 6],
];
const oddCloth: LayCloth = {
  name: "the remnant",
  width: 54,
  length: 160,
  outline: [
    [0, 0],
    [160, 4],
    [150, 54],
    [60, 54],
    [50, 40],
    [30, 54],
    [0, 50],
  ],
  flaws: [triangle(20, 20), triangle(90, 30)],
};
const inHand: LayCloth = { name: "the remnant", width: 40, length: 60, flaws: [triangle(10, 10)] };
const toBuy: LayCloth = { name: "the cloth", width: 54, length: null };

const questions: Record<string, [question: LayQuestion, rounds: number]> = {
  "pieces of a published set": [publishedQuestion("fu"), 80],
  "many small pieces": [publishedQuestion("shirts"), 30],
  "a gap for the scissors": [{ ...base, gap: 0.75 }, 60],
  "match points on a repeat": [
    { ...base, repeat: 4.5, pieces: base.pieces.map((piece) => ({ ...piece, match: piece.outline[0]! })) },
    60,
  ],
  "turns of 45 degrees": [{ ...base, pieces: base.pieces.map((one) => ({ ...one, turns: [45, 225] })) }, 60],
  "a pin, and an odd cloth with flaws": [
    { ...base, cloths: [oddCloth], pinned: [{ piece: 0, copy: 1, cloth: 0, turn: 180, x: 30, y: 27 }] },
    60,
  ],
  "a cloth in hand beside one to buy": [{ ...base, gap: 0.25, cloths: [inHand, toBuy] }, 60],
};

describe("the inner loop as WebAssembly comes to the same as its plain twin, to the last bit", () => {
  for (const [title, [question, rounds]] of Object.entries(questions))
    it(title, () => {
      const found = searched(question, simd, rounds);
      expect(found.lays.length).toBeGreaterThan(0);
      expect(found.memory.length).toBeGreaterThan(10_000);
      expect(agree(found, searched(question, plain, rounds))).toBe(true);
    });

  it("and does not when one of its operations is another", () => {
    const module = Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0));
    // f32x4.pmax becomes f32x4.pmin: an edge goes on behind its start.
    const [prefix, greater, smaller] = [0xfd, 0xeb, 0xea];
    let count = 0;
    for (let k = 0; k + 1 < module.length; k++)
      if (module[k] === prefix && module[k + 1] === greater) {
        module[k + 1] = smaller;
        count++;
      }
    expect(count).toBeGreaterThan(0);
    const changed: Make = (host) => new SimdRoom(host, new WebAssembly.Module(module));
    const [question, rounds] = questions["turns of 45 degrees"]!;
    expect(agree(searched(question, changed, rounds), searched(question, plain, rounds))).toBe(false);
  });
});

describe("the inner loop that a search gets", () => {
  const host: Host = { fill: () => 0, prepare: () => 0 };
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it("is WebAssembly", () => {
    expect(newRoom(host)).toBeInstanceOf(SimdRoom);
  });

  it("is the plain twin where there is no WebAssembly, it is not allowed, or it gets no memory", () => {
    vi.stubGlobal("WebAssembly", undefined);
    expect(newRoom(host)).toBeInstanceOf(PlainRoom);
    const refuse = class {
      constructor() {
        throw new RangeError("no memory");
      }
    };
    vi.stubGlobal("WebAssembly", { ...WebAssembly, Memory: refuse });
    expect(newRoom(host)).toBeInstanceOf(PlainRoom);
  });
});
