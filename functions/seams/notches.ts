/**
 * The notches that the list of seams asks for, on each edge of a piece. Places are taken along the seam from
 * one end of it: of an edge that runs on over a fold from its outer end, to the fold and beyond it.
 */

import { isAbove } from "../compared-figures.ts";
import { comparedName } from "../compared-name.ts";
import type { ListRow } from "../define.ts";
import { readMarks } from "../marks-text.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal, refusingAt } from "../refusal.ts";
import type { Unit } from "../units.ts";
import { type Eased, matchBack, matchPlace } from "./match-place.ts";
import type { GarmentEdge } from "./piece-list.ts";
import { cellOfSeams, type Seam, seamsOf, sideName } from "./seam-list.ts";
import { measuredSeam, type SeamSide } from "./seam-sides.ts";

export interface Notch {
  /** Counted from 1. */
  readonly edge: number;
  /** Along the drawn edge, from its beginning. */
  readonly at: number;
  readonly double: boolean;
}

interface Placed {
  readonly edge: GarmentEdge;
  /** Along the drawn edge, from its beginning. */
  readonly at: number;
  readonly double: boolean;
}

interface Reader {
  readonly unit: Unit;
  readonly decimal: "point" | "comma";
}

/** All notches of the piece with this name, from every seam of the list that names it and does not say "none". */
export function notchesOf(
  name: string,
  seamRows: readonly ListRow[],
  pieceRows: readonly ListRow[],
  reader: Reader,
): readonly Notch[] {
  const key = comparedName(name);
  const seams = seamsOf(seamRows).filter(
    (seam) => seam.notch !== "none" && seam.sides.flat().some(({ piece }) => piece === key),
  );
  const placed = seams.flatMap((seam) =>
    refusingAt(cellOfSeams(seam.places, "piece"), () => notchesAt(seam, pieceRows, reader)),
  );
  const found: Notch[] = [];
  for (const { edge, at, double } of placed) {
    if (edge.piece.name !== key) continue;
    const hair = 1e-9 * edge.length;
    if (found.some((one) => one.edge === edge.number && Math.abs(one.at - at) <= hair)) continue;
    found.push({ edge: edge.number, at, double });
  }
  return found;
}

/** The notches of one seam on all its edges. */
function notchesAt(seam: Seam, pieceRows: readonly ListRow[], reader: Reader): Placed[] {
  const where = written`row ${seam.number} of the list of seams`;
  const { sides } = measuredSeam(seam, pieceRows);
  const [first, second] = sides;
  const eased: Eased = {
    first: first.length,
    second: second.length,
    from: seam.easeFrom ?? 0,
    to: seam.easeTo ?? first.length,
  };
  refuseEase(eased, where);
  const single = (side: SeamSide) => side.parts.length === 1 && side.parts[0]!.times === 1;
  if (single(first) && single(second)) return pairNotches(seam, sides, eased, where, reader);
  const hub = single(first) ? 0 : single(second) ? 1 : null;
  if (hub === null)
    throw new Refusal(
      phrase`${where} has several edges on both sides, ${sideName(seam.sides[0])} to ${sideName(seam.sides[1])}: notches are placed where one side is a single edge; write none in its column "notch"`,
    );
  return successionNotches(seam, sides, hub, eased, where);
}

function refuseEase({ first, second, from, to }: Eased, where: string): void {
  if (to > first * (1 + 1e-9) || from >= to)
    throw new Refusal(
      (say) =>
        phrase`${where} is eased from ${say(from, to)} to ${say(to, from, first)}: write places along its first edge, which is ${say(first, to)} long, the first before the second`,
    );
  if (isAbove(first - second, to - from, first, to))
    throw new Refusal(
      (say) =>
        phrase`${where} has ${say(first - second, to - from)} to ease in between ${say(from)} and ${say(to)}: leave more of the edge for it`,
    );
}

/** One edge sewn to one edge: the places of the row along the first, and where they meet the second. */
function pairNotches(
  seam: Seam,
  sides: readonly [SeamSide, SeamSide],
  eased: Eased,
  where: string,
  reader: Reader,
): Placed[] {
  const [first, second] = [sides[0].parts[0]!, sides[1].parts[0]!];
  const drawn = first.overFold ? first.length / 2 : first.length;
  const given =
    seam.notches === null
      ? [drawn / 2]
      : readMarks(seam.notches, () => phrase`${where}, notches at,`, reader);
  for (const at of given)
    if (at < 0 || at > drawn * (1 + 1e-9))
      throw new Refusal(
        (say) =>
          phrase`${where} has a notch at ${say(at, drawn)}: it must lie on ${first.text}, from 0 to ${say(drawn, at)}`,
      );
  const double = isDouble(seam, [first, second]);
  const outerFirst = first.overFold ? outerEnd(first) : "begin";
  const alongSeam = given.flatMap((at) => {
    const from = outerFirst === "begin" ? at : drawn - at;
    return first.overFold ? [from, first.length - from] : [from];
  });
  const met = alongSeam.map((at) => matchPlace(eased, at));
  return [
    ...given.map((at) => ({ edge: first, at, double })),
    ...met.map((at) => ({ edge: second, at: drawnPlace(second, at, turned), double })),
  ];

  /** Whether the second edge begins at the other end of the seam than the first. */
  function turned(): boolean {
    const same = met.every((at) =>
      met.some((one) => Math.abs(one - (second.length - at)) <= 1e-6 * second.length),
    );
    return !same && endsMeet(seam, first, second, where) === "opposite";
  }
}

/** A place along the seam as a place along a drawn edge. */
function drawnPlace(edge: GarmentEdge, at: number, turned: () => boolean): number {
  if (!edge.overFold) return turned() ? edge.length - at : at;
  const half = edge.length / 2;
  const fromOuter = Math.min(at, edge.length - at);
  return outerEnd(edge) === "begin" ? fromOuter : half - fromOuter;
}

/** One edge sewn to several in succession: the joins, and the middle of each. */
function successionNotches(
  seam: Seam,
  sides: readonly [SeamSide, SeamSide],
  hub: 0 | 1,
  eased: Eased,
  where: string,
): Placed[] {
  const one = sides[hub].parts[0]!;
  const { parts } = sides[hub === 0 ? 1 : 0];
  if (parts.some(({ times }) => times > 1))
    throw new Refusal(
      phrase`${where} does not say in which order its edges follow one another: write each as often as it comes, such as "front + back + front", or none in its column "notch"`,
    );
  if (seam.notches !== null)
    throw new Refusal(
      phrase`${where} has places of notches beside several edges in succession: leave them blank, and the joins and the middle of each edge are notched`,
    );
  const placed: Placed[] = [];
  const mirrored = parts.every((part, i) => Math.abs(part.length - parts.at(-1 - i)!.length) <= 1e-6);
  if (one.overFold && !mirrored)
    throw new Refusal(
      phrase`${where} sews edges to ${one.text}, which lies on the fold, and they are not the same from both ends: write them from one end to the other, such as "back + front + back", or cut the ${one.piece.name} whole`,
    );
  const opposite = !mirrored && (seam.ends ?? endOfFirst(one, parts, where)) === "opposite";
  // What is eased lies along the first edge from its own beginning, so there the seam is turned before it is matched.
  const turned = () => opposite && hub === 1;
  const onHub = (at: number) =>
    hub === 1 ? matchPlace(eased, at) : matchBack(eased, opposite ? eased.second - at : at);
  let done = 0;
  parts.forEach((part, i) => {
    const double = isDouble(seam, [part]);
    const middle = { edge: one, at: drawnPlace(one, onHub(done + part.length / 2), turned), double };
    placed.push(middle, {
      edge: part,
      at: part.overFold ? drawnPlace(part, part.length / 2, turned) : part.length / 2,
      double,
    });
    done += part.length;
    if (i < parts.length - 1)
      placed.push({ edge: one, at: drawnPlace(one, onHub(done), turned), double: false });
  });
  return placed;
}

/**
 * Whether the first of several edges in succession lies at the beginning of the edge that they are sewn to. The edges
 * beside that edge decide: one of them has the name of an edge beside the first or the last of the several edges, or the word
 * front or back of their pieces.
 */
function endOfFirst(one: GarmentEdge, parts: readonly GarmentEdge[], where: string): "same" | "opposite" {
  const [before, after] = neighbours(one);
  const [first, last] = [parts[0]!, parts.at(-1)!];
  const alike = (name: string, part: GarmentEdge, other: GarmentEdge) =>
    name !== "" &&
    ((neighbours(part).includes(name) && !neighbours(other).includes(name)) ||
      (facing(name) !== null &&
        facing(name) === facing(part.piece.name) &&
        facing(name) !== facing(other.piece.name)));
  const same = alike(before, first, last) || alike(after, last, first);
  const opposite = alike(before, last, first) || alike(after, first, last);
  if (same !== opposite) return same ? "same" : "opposite";
  throw new Refusal(
    phrase`${where} does not say from which end of ${one.text} its edges follow one another: write same in its column "ends" where ${first.text} lies at the beginning of it, opposite where it lies at the end`,
  );
}

/** Front or back, where a name has one of these words. */
function facing(name: string): "front" | "back" | null {
  const [front, back] = [/\bfront\b/.test(name), /\bback\b/.test(name)];
  return front === back ? null : front ? "front" : "back";
}

/** Double notches mark what belongs to the back, single ones everything else (common practice). */
function isDouble({ notch }: Seam, edges: readonly GarmentEdge[]): boolean {
  if (notch !== null) return notch === "double";
  const words = edges.map(({ text }) => text);
  return words.every((text) => /\bback\b/.test(text) && !/\bfront\b/.test(text));
}

/** The names of the edges before and after an edge of an outline. */
function neighbours({ outline, number }: GarmentEdge): readonly [string, string] {
  const count = outline.edges.length;
  const name = (i: number) => comparedName(outline.names[(i + count) % count]!);
  return [name(number - 2), name(number)];
}

/** Whether both edges begin at the same end of the seam. The names of the neighbouring edges decide, or else which end is the upper one. */
function endsMeet(seam: Seam, first: GarmentEdge, second: GarmentEdge, where: string): "same" | "opposite" {
  if (seam.ends !== null) return seam.ends;
  if (first.piece.name === second.piece.name && first.number === second.number) return "same";
  const [[before, after], [begin, end]] = [neighbours(first), neighbours(second)];
  const alike = (a: string, b: string) => a !== "" && a === b;
  const [same, opposite] = [
    alike(before, begin) || alike(after, end),
    alike(before, end) || alike(after, begin),
  ];
  if (same !== opposite) return same ? "same" : "opposite";
  const [one, other] = [downward(first), downward(second)];
  if (one !== 0 && other !== 0) return one === other ? "same" : "opposite";
  throw new Refusal(
    phrase`${where} does not say how ${first.text} and ${second.text} lie to each other: write same in its column "ends" where both begin at the same end of the seam, opposite where they don't`,
  );
}

/** 1 where an edge is drawn downwards, −1 upwards, 0 where it runs too much across to say. */
function downward({ outline, number }: GarmentEdge): -1 | 0 | 1 {
  const edge = outline.edges[number - 1]!;
  const [from, to] = [edge[0]!.from, edge.at(-1)!.to];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return Math.abs(dy) < Math.abs(dx) ? 0 : dy > 0 ? 1 : -1;
}

/** Which end of an edge that meets the fold lies away from it. */
function outerEnd({ foldAtBegin }: GarmentEdge): "begin" | "end" {
  return foldAtBegin ? "end" : "begin";
}
