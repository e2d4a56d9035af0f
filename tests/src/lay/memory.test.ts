import { describe, expect, it, vi } from "vitest";
import type { LayQuestion } from "../../../functions/lay.ts";
import { Memory } from "../../../src/lay/memory.ts";
import { blobs } from "./blobs.ts";
import { publishedQuestion } from "./published.ts";

const gore = (top: number, name = "gore", width = 45): LayQuestion => ({
  pieces: [
    {
      name,
      outline: [
        [0, 0],
        [30, 0],
        [30, top],
        [0, 9],
      ],
      quantity: 3,
      turns: [0, 180],
    },
  ],
  cloths: [{ name: "cloth", width, length: null }],
  gap: 0.25,
  repeat: 0,
});
const questions = [
  gore(4),
  gore(4, "gore", 54),
  { ...gore(4), gap: 0 },
  gore(4 + 1e-9),
  gore(60),
  gore(60, "skirt"),
  { ...gore(4), cloths: [{ name: "cloth 1", width: 45, length: 40 }] },
  publishedQuestion("fu"),
  blobs(4, 2, 30, 5),
  blobs(4, 2, 30, 6),
];

/** A planner that has never been asked anything. */
async function newcomer() {
  vi.resetModules();
  return (await import("../../../src/lay/desk.ts")).layDesk;
}

describe("the memory of lays", () => {
  it("never changes an answer: a question gets the same lay first or last, once or again", async () => {
    const fresh: unknown[] = [];
    for (const question of questions) fresh.push((await newcomer())(question, {}));
    const forwards = await newcomer();
    expect(questions.map((question) => forwards(question, {}))).toEqual(fresh);
    expect(questions.map((question) => forwards(structuredClone(question), {}))).toEqual(fresh);
    const backwards = await newcomer();
    expect(questions.toReversed().map((question) => backwards(question, {}))).toEqual(fresh.toReversed());
  });

  it("tells a refusal with the names of its own question", async () => {
    const desk = await newcomer();
    for (const name of ["gore", "skirt", "gore"])
      expect(desk(gore(60, name), {})).toMatchObject({
        refusal: expect.stringMatching(`^${name} is 15 wider`),
      });
  });

  it("works a question once, and again only when newer ones have taken its room", () => {
    const memory = new Memory(2);
    const asked: string[] = [];
    const ask = (name: string, question: LayQuestion) =>
      memory.answer(question, () => {
        asked.push(name);
        return { refusal: name };
      });
    ask("a", gore(4));
    expect(ask("a again", structuredClone(gore(4)))).toEqual({ refusal: "a" });
    ask("b", gore(5));
    ask("a", gore(4));
    expect(asked).toEqual(["a", "b"]);
    ask("c", gore(6));
    ask("a", gore(4));
    expect(asked).toEqual(["a", "b", "c", "a"]);
  });

  it("answers with one lay whatever the pieces and the cloth are called, and whether it was made in passing", () => {
    const memory = new Memory(2);
    const lay = { placements: [], lengths: [7], density: 1, missing: [] };
    memory.answer(gore(4), () => lay);
    const other: LayQuestion = {
      ...gore(4, "godet"),
      cloths: [{ name: "to buy", width: 45, length: null }],
      passing: true,
    };
    expect(memory.has(other)).toBe(true);
    expect(memory.answer(other, () => ({ refusal: "laid anew" }))).toBe(lay);
    const shared = { ...other, sharing: { bought: other.cloths[0]!, left: [0] } };
    expect(memory.has(shared)).toBe(false);
  });

  it("takes questions for different that differ in one turn, one pin or one name", () => {
    const memory = new Memory(10);
    const [piece] = gore(4).pieces;
    const alike: LayQuestion[] = [
      gore(4),
      gore(4, "godet"),
      { ...gore(4), pieces: [{ ...piece!, turns: [0] }] },
      { ...gore(4), pinned: [{ piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 }] },
      { ...gore(4), pinned: [{ piece: 0, copy: 0, cloth: 0, turn: 180, x: 30, y: 9 }] },
    ];
    alike.forEach((question, i) => {
      expect(memory.answer(question, () => ({ refusal: String(i) }))).toEqual({ refusal: String(i) });
    });
  });
});
