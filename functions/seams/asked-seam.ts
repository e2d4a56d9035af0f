/** Which seam of the list a call asks about. */
import type { ListRow, Take, Takes } from "../define.ts";
import { isMeant, nearestWord } from "../nearest-word.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { joinedByAnd } from "../verdict.ts";
import { PIECE_LIST } from "./piece-list.ts";
import {
  type NamedEdge,
  SEAM_FIELDS,
  SEAM_LIST,
  type Seam,
  seamsOf,
  sideKey,
  sideName,
  sideOf,
} from "./seam-list.ts";

export const SEAMS = {
  kind: "block",
  about: "the list of seams with its headings: piece, edge, sewn to, its edge, how, wanted difference",
  list: SEAM_LIST,
  reads: SEAM_FIELDS,
} as const satisfies Take;

export const PIECES: { readonly kind: "block"; readonly about: string; readonly list: typeof PIECE_LIST } = {
  kind: "block",
  about: "the list of pieces with its headings: piece, outline (without allowances), how many, on the fold",
  list: PIECE_LIST,
};

/** The arguments by which a function finds a seam: the cells of its row. */
export const SEAM_ASKED = {
  seams: SEAMS,
  pieces: PIECES,
  piece: { kind: "text", about: "the piece of one side, as the list of seams has it" },
  edge: { kind: "text", about: "its edge" },
  sewn_to: {
    kind: "text",
    about: "the piece of the other side; may be left out where the edge has one seam",
    otherwise: null,
  },
  its_edge: { kind: "text", about: "the edge of that piece", otherwise: null },
} as const satisfies Takes;

interface Asked {
  readonly seams: readonly ListRow[];
  readonly piece: string;
  readonly edge: string;
  readonly sewn_to: string | null;
  readonly its_edge: string | null;
}

interface Found {
  readonly seam: Seam;
  readonly all: readonly Seam[];
  /** Which side of the seam `piece` and `edge` name. */
  readonly asked: 0 | 1;
}

/** The seam that is asked about, and the whole list. */
export function askedSeam(given: Asked): Found {
  const all = seamsOf(given.seams);
  const mine = sideOf(given.piece, given.edge, "piece");
  const key = sideKey(mine);
  const has = (side: readonly NamedEdge[]) => sideKey(side) === key;
  const found = all.filter(({ sides }) => sides.some(has));
  if (found.length === 0) {
    const names = all.flatMap(({ sides }) => sides.map(sideName));
    const near = nearestWord(sideName(mine), names);
    throw new Refusal(phrase`no row of the list of seams names "${sideName(mine)}"${isMeant(near)}`);
  }
  if (given.sewn_to === null || given.its_edge === null) {
    if (found.length > 1)
      throw new Refusal(
        phrase`"${sideName(mine)}" is in ${found.length} rows of the list of seams: give the piece and edge that it is sewn to as well`,
      );
    return { seam: found[0]!, all, asked: has(found[0]!.sides[0]) ? 0 : 1 };
  }
  const other = sideKey(sideOf(given.sewn_to, given.its_edge, "sewn_to"));
  const seam = found.find(
    ({ sides: [a, b] }) => (has(a) && sideKey(b) === other) || (has(b) && sideKey(a) === other),
  );
  if (!seam)
    throw new Refusal(
      phrase`the list of seams sews "${sideName(mine)}" to ${joinedByAnd(found.map(({ sides: [a, b] }) => `"${sideName(has(a) ? b : a)}"`))}, not to "${other}"`,
    );
  return { seam, all, asked: has(seam.sides[0]) ? 0 : 1 };
}

interface ListFault {
  readonly sentence: string;
  /** The first row that it is about. */
  readonly seam: Seam;
}

/** What is wrong with the list at this seam, in a sentence, the same for every seam that it is about. Returns null when nothing is wrong. */
export function listFault(seam: Seam, all: readonly Seam[]): ListFault | null {
  const keyOf = ({ sides: [a, b] }: Seam) => [sideKey(a), sideKey(b)].toSorted().join(" | ");
  const twin = all.find((one) => one.number !== seam.number && keyOf(one) === keyOf(seam));
  if (twin) {
    const [first, second] = [twin, seam].toSorted((a, b) => a.number - b.number) as [Seam, Seam];
    return {
      seam: first,
      sentence: written`rows ${first.number} and ${second.number} of the list of seams are the same seam, ${sideName(first.sides[0])} to ${sideName(first.sides[1])}: delete one`,
    };
  }
  const found = circle(seam, all);
  const [lowest] = found?.rows ?? [];
  // All rows of a circle name it from its first row on, in the same words.
  const first = all.find(({ number }) => number === lowest);
  const same = first && first !== seam ? circle(first, all) : found;
  return same?.rows.includes(seam.number)
    ? { seam: first!, sentence: same.sentence }
    : found && { seam, sentence: found.sentence };
}

/** A way from one side of the seam to its other side through other seams: the rows of the circle in order, and a sentence. */
function circle(
  seam: Seam,
  all: readonly Seam[],
): { readonly rows: readonly number[]; readonly sentence: string } | null {
  const [from, to] = seam.sides.map(sideKey) as [string, string];
  if (from === to) return null;
  const came = new Map<string, { readonly key: string; readonly row: number } | null>([[from, null]]);
  const queue = [from];
  for (let key = queue.shift(); key !== undefined; key = queue.shift()) {
    if (key === to) {
      const rows = [seam.number];
      const names: string[] = [];
      for (let at: string | undefined = to; at !== undefined; ) {
        names.push(at);
        const step: { readonly key: string; readonly row: number } | null = came.get(at) ?? null;
        if (step) rows.push(step.row);
        at = step?.key;
      }
      const inOrder = rows.toSorted((a, b) => a - b);
      return {
        rows: inOrder,
        sentence: written`rows ${inOrder.join(", ")} of the list of seams go round in a circle, ${names.toReversed().reduce((before, name) => written`${before} to ${name}`)} and back: one of these seams is too many`,
      };
    }
    for (const one of all) {
      if (one.number === seam.number) continue;
      const [a, b] = one.sides.map(sideKey) as [string, string];
      const next = a === key ? b : b === key ? a : null;
      if (next === null || came.has(next)) continue;
      came.set(next, { key, row: one.number });
      queue.push(next);
    }
  }
  return null;
}
