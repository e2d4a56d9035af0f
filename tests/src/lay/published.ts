/** The published benchmark sets (ESICUP, CC0) and best-known lays kept in data/, each naming its source. */
import { readFileSync } from "node:fs";
import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import { answerFrom } from "../../../src/lay/answer.ts";

interface Instance {
  stripWidth: number;
  allowedRotations: number[];
  pieces: { id: string; quantity: number; outline: [number, number][] }[];
}

interface Layout {
  length: number;
  placements: { piece: string; rotation: number; x: number; y: number }[];
}

function load<T>(path: string): T {
  return JSON.parse(readFileSync(new URL(`./data/${path}.json`, import.meta.url), "utf8")) as T;
}

export function publishedQuestion(name: string, turns?: readonly number[]): LayQuestion {
  const { stripWidth, allowedRotations, pieces } = load<Instance>(`instances/${name}`);
  return {
    pieces: pieces.map(({ id, quantity, outline }) => ({
      name: id,
      quantity,
      outline,
      turns: turns ?? allowedRotations,
    })),
    cloths: [{ name: "the cloth", width: stripWidth, length: null }],
    gap: 0,
    repeat: 0,
  };
}

/** The best-known lay of the set, as published, and its published length. */
export function publishedLay(name: string): { question: LayQuestion; lay: Lay; length: number } {
  const question = publishedQuestion(name);
  const { length, placements } = load<Layout>(`layouts/${name}`);
  const next = question.pieces.map(() => 0);
  const placed = placements.map(({ piece, rotation, x, y }): Placement => {
    const index = question.pieces.findIndex((p) => p.name === piece);
    return { piece: index, copy: next[index]!++, cloth: 0, turn: rotation, x, y };
  });
  return { question, lay: answerFrom(question, placed), length };
}
