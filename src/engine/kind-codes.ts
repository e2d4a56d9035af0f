/** Kinds as small numbers, so that those of a large book take a byte each. */
import type { Kind } from "../../functions/define.ts";

/** Every kind with its weight. Of several kinds expected of one cell the one of greatest weight counts: the kind that it would be worst to miss. */
const WEIGHT: Readonly<Record<Kind, number>> = {
  piece: 9, length: 8, area: 7, money: 6, angle: 5, days: 4, count: 3, share: 2, figure: 1, text: 0, flag: 0, verdict: 0, edge: 0, block: 0,
}; // biome-ignore format: a table

const KINDS = Object.keys(WEIGHT) as Kind[];

/** The number of a kind, from 1 to 15. */
export type Code = number;

/** In the place of the number of a kind: no kind is expected. */
export const NONE: Code = 0;

const codes = new Map(KINDS.map((kind, i) => [kind, i + 1]));

export const codeOf = (kind: Kind): Code => codes.get(kind)!;

export const kindOfCode = (code: Code): Kind => KINDS[code - 1]!;

const WEIGHTS = [0, ...KINDS.map((kind) => WEIGHT[kind])];

/** 0 for a kind that is never expected of a cell. */
export const weightOf = (code: Code): number => WEIGHTS[code]!;

/** Of two kinds expected of one cell the one that counts. */
export const heavier = (a: Code, b: Code): Code => (WEIGHTS[b]! > WEIGHTS[a]! ? b : a);

export const FIGURE = codeOf("figure");
export const LENGTH = codeOf("length");
export const TEXT = codeOf("text");
export const PIECE = codeOf("piece");
export const BLOCK = codeOf("block");
