/**
 * Pleat insertion, done the way a cutter does it with paper, by folding. The finished piece is the
 * folded paper. Where a fold is to show, the paper goes back beneath the piece to
 * the pleat's inner fold and forward again, and both hidden layers are cut along the piece's own
 * top and hem. Unfolded, the edges have just the shape that will meet the seam once pleated; the
 * length taken up is twice the pleat's depth, measured along each edge.
 */

import type { EdgeStrip, Takes } from "../define.ts";
import {
  compose,
  IDENTITY,
  type Isometry,
  moveEdge,
  movePoint,
  reflectionOver,
} from "../geometry/isometry.ts";
import { distance, type Edge, line, type Point, strokeLength } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgePart, placeAlong, reverseEdge } from "../pieces/edges.ts";
import { edgeLength, type Mark, mark, type Piece } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";
import { PLEAT_STYLE, type PleatStyle } from "./pleat-creases.ts";

/** The arguments that say which pleats to insert in a piece. */
export const PLEATS_TO_INSERT = {
  places: {
    kind: "length",
    about:
      "where the pleats go, along the top (edge 1) from its beginning: cells with lengths, of which a blank one is skipped, or a list such as SPACED_MARKS gives",
    from: 0,
    to: 5000,
    many: true,
    blanks: true,
    marks: true,
  },
  fold_depth: {
    kind: "length",
    about:
      "from a fold to the inner fold, at the top: one depth for all pleats or one for each; 0 for a wedge",
    from: 0,
    to: 200,
    many: true,
  },
  hem_fold_depth: {
    kind: "length",
    about: "from a fold to the inner fold, at the hem; the same as at the top when left out",
    from: 0,
    to: 300,
    many: true,
    otherwise: null,
  },
  style: PLEAT_STYLE,
  towards: {
    kind: "text",
    about: "which end of the top the folds of knife pleats point to",
    choices: ["end", "start"],
    otherwise: "end",
  },
} as const satisfies Takes;

/** Two hidden layers: a fold that shows at `at`, the inner fold beneath, towards the beginning (−1) or end (1). Pairs are of the top and the hem. */
export interface HiddenFold {
  readonly at: readonly [number, number];
  readonly depth: readonly [number, number];
  readonly side: -1 | 1;
  /** The pleat it belongs to, counted from 1. */
  readonly pleat: number;
}

export interface PleatInsertion {
  /** Along the top, from its beginning. */
  readonly places: readonly number[];
  /** One for all or one for each place. */
  readonly depths: readonly number[];
  readonly hemDepths: readonly number[] | null;
  readonly style: PleatStyle;
  readonly towards: "end" | "start";
}

export interface PleatedPiece {
  readonly piece: Piece;
  readonly takenTop: number;
  readonly takenHem: number;
}

/** The piece with its pleats unfolded; its marks are three to each turn: the fold that shows, the inner fold, the placement line. */
export function insertPleats(piece: Piece, wanted: PleatInsertion): PleatedPiece {
  if (piece.edges.length !== 4) {
    throw new Refusal(
      phrase`piece must have four edges, its top first and its hem third, to be pleated, not ${piece.edges.length}`,
    );
  }
  const [top, right, hem, left] = piece.edges as [Edge, Edge, Edge, Edge];
  const edges = [top, reverseEdge(hem)] as const;
  const lengths = [edgeLength(top), edgeLength(hem)] as const;
  const turns = hiddenFolds(wanted, lengths);
  const runs: [Edge[], Edge[]] = [[], []];
  const marks: Mark[] = [];
  let motion: Isometry = IDENTITY;
  let done: readonly [number, number] = [0, 0];
  const lay = (by: Isometry, from: readonly number[], to: readonly number[]) => {
    for (const i of [0, 1] as const) {
      const [a, b] = [from[i]!, to[i]!];
      if (Math.abs(b - a) <= 1e-12 * lengths[i]) continue;
      const part = edgePart(edges[i], Math.min(a, b), Math.max(a, b));
      runs[i].push(moveEdge(by, a < b ? part : reverseEdge(part)));
    }
  };
  const across = ([t, h]: readonly [number, number]): [Point, Point] => [
    placeAlong(edges[0], t).point,
    placeAlong(edges[1], h).point,
  ];
  for (const { at, depth, side } of turns) {
    lay(motion, done, at);
    const inner = [at[0] + side * depth[0], at[1] + side * depth[1]] as const;
    const [outer, beneath] = [across(at), across(inner)];
    const [overOuter, overInner] = [reflectionOver(...outer), reflectionOver(...beneath)];
    const drawn = (by: Isometry, [a, b]: readonly [Point, Point]): Edge => [
      line(movePoint(by, a), movePoint(by, b)),
    ];
    // The first layer goes out to the inner fold, the second comes back from it.
    const first = side < 0 ? compose(motion, overOuter) : motion;
    const second = compose(first, overInner);
    lay(first, at, inner);
    lay(second, inner, at);
    const next = side < 0 ? second : compose(second, overOuter);
    marks.push(
      mark(drawn(side < 0 ? motion : next, outer), "fold"),
      mark(drawn(second, beneath), "inner"),
      mark(drawn(side < 0 ? next : motion, outer), "placement"),
    );
    motion = next;
    done = at;
  }
  lay(motion, done, lengths);
  const carried = piece.marks.filter(() => turns.length === 0);
  const taken = ([0, 1] as const).map((i) => turns.reduce((sum, turn) => sum + 2 * turn.depth[i], 0));
  const opened: Piece = {
    edges: [runs[0].flat(), moveEdge(motion, right), reverseEdge(runs[1].flat()), left],
    names: piece.names,
    marks: [...carried, ...marks],
  };
  return { piece: opened, takenTop: taken[0]!, takenHem: taken[1]! };
}

/** The top of a pleated piece, laid straight, with the lines that its pleats are folded by. */
export function topStrip({ edges, marks }: Piece): EdgeStrip {
  const top = edges[0]!;
  const length = edgeLength(top);
  // Pleats are opened where strokes of the top meet.
  const joints: { readonly at: number; readonly point: Point }[] = [{ at: 0, point: top[0]!.from }];
  for (const stroke of top) joints.push({ at: joints.at(-1)!.at + strokeLength(stroke), point: stroke.to });
  const words = {
    fold: (number: number) => phrase`fold ${number}`,
    placement: (number: number) => phrase`placement ${number}`,
    inner: (number: number) => phrase`inner fold ${number}`,
  };
  const found = marks.flatMap(({ line: [first], role }) => {
    if (role !== "fold" && role !== "placement" && role !== "inner") return [];
    const joint = joints.find(({ point }) => distance(point, first!.from) <= 1e-6 * length);
    return joint ? [{ at: joint.at, role }] : [];
  });
  const counts = { fold: 0, placement: 0, inner: 0 };
  const places = found
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, role }) => {
      counts[role] += 1;
      return { at, role, says: words[role](counts[role]) };
    });
  return { length, marks: places };
}

/** The piece itself, unless its pleats open it so far that it lies over itself. */
export const requireSimplePleated = (piece: Piece): Piece =>
  refuseUnlessSimple(
    "places and depths open the piece so far that it would lie over itself: cut it in panels",
    piece,
  );

/** The turns of all pleats in order, each checked to stay on the piece. */
export function hiddenFolds(
  { places, depths, hemDepths, style, towards }: PleatInsertion,
  lengths: readonly [number, number],
): HiddenFold[] {
  const [top, hem] = lengths;
  const one = (list: readonly number[], name: string, i: number): number => {
    if (list.length !== 1 && list.length !== places.length) {
      throw new Refusal(
        phrase`${name} must be one value, or one for each of the ${places.length} places, not ${list.length}`,
      );
    }
    return list.length === 1 ? list[0]! : list[i]!;
  };
  const slack = 1e-9 * top;
  const turns = places.flatMap((place, i): HiddenFold[] => {
    if (place < 0 || place > top + slack) {
      throw new Refusal(
        (say) => phrase`places must lie on the top, from 0 to ${say(top, place)}, not ${say(place, top)}`,
        { argument: "places", cell: i },
      );
    }
    const across = one(depths, "fold_depth", i);
    const depth = [across, hemDepths ? one(hemDepths, "hem_fold_depth", i) : across] as const;
    if (depth[0] === 0 && depth[1] === 0) {
      throw new Refusal(
        (say) =>
          phrase`fold_depth must be above 0 at the top or at the hem, not 0 at both (place ${say(place)})`,
      );
    }
    const at = [Math.min(place, top), Math.min(place / top, 1) * hem] as const;
    const beside = (side: number) => [at[0] + side * depth[0], at[1] + side * depth[1]] as const;
    const turn = (where: readonly [number, number], side: -1 | 1): HiddenFold => ({
      at: where,
      depth,
      side,
      pleat: i + 1,
    });
    if (style === "knife") return [turn(at, towards === "end" ? -1 : 1)];
    // On the very end of the piece, its fold, only the half on the piece is opened.
    const [notFirst, notLast] = [place > slack, place < top - slack];
    if (style === "inverted") return [...(notFirst ? [turn(at, -1)] : []), ...(notLast ? [turn(at, 1)] : [])];
    return [...(notFirst ? [turn(beside(-1), 1)] : []), ...(notLast ? [turn(beside(1), -1)] : [])];
  });
  turns.sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1] || a.side - b.side);
  turns.forEach((turn, i) => {
    const before = turns[i - 1];
    for (const at of [0, 1] as const) {
      const inner = turn.at[at] + turn.side * turn.depth[at];
      const end = lengths[at];
      const hair = 1e-9 * end;
      if (Math.min(turn.at[at], inner) < -hair || Math.max(turn.at[at], inner) > end + hair) {
        throw new Refusal(
          (say) =>
            phrase`pleat ${turn.pleat} reaches past ${at === 0 ? phrase`the top` : phrase`the hem`}: at place ${say(places[turn.pleat - 1]!, turn.depth[at])} there is only room for a fold less than ${say(turn.depth[at], places[turn.pleat - 1]!)} deep`,
        );
      }
      if (before && before.at[at] > turn.at[at] + hair) {
        throw new Refusal(
          phrase`pleats ${Math.min(before.pleat, turn.pleat)} and ${Math.max(before.pleat, turn.pleat)} are too close together at ${at === 0 ? phrase`the top` : phrase`the hem`}`,
        );
      }
    }
    if (before && before.at[0] === turn.at[0] && before.at[1] === turn.at[1] && before.side === turn.side) {
      throw new Refusal(
        (say) => phrase`places must differ from one another, not ${say(places[turn.pleat - 1]!)} twice`,
        { argument: "places", cell: turn.pleat - 1 },
      );
    }
  });
  return turns;
}
