/**
 * Piecing: a piece that does not fit the cloth in stock is cut in two and joined. The least visible
 * joins are tried first: at the inner fold of a pleat, then along the straight grain as near to a
 * side as possible. Every proposal is a lay that was found, not a guess.
 */

import { isInPolygon } from "../geometry/point-in-polygon.ts";
import { boundingBox, type Point, signedArea } from "../geometry/strokes.ts";
import type { Join, JoinAnswer, JoinQuestion, LayPiece, LayQuestion, Pieced, Planner } from "../lay.ts";
import { written } from "../phrase.ts";
import { semicolonList } from "../verdict.ts";

/** The joins in words: "1 of back in two, 9 in from its left border, along the grain". */
export const joinsText = (joins: readonly Join[], say: (length: number) => string): string =>
  semicolonList(
    joins.map(({ name, copies, at, inPleat }) => {
      const where = inPleat ? written`at the inner fold of a pleat` : written`along the grain`;
      return written`${copies} of ${name} in two, ${say(at)} from its left border, ${where}`;
    }),
  );

/** The most joins before the search gives up. */
const MAX_JOINS = 3;
/** Places tried from each side to the middle. */
const PLACES = 8;
/** Lays tried to bring a join nearer to the side. */
const MAX_REFINEMENTS = 3;

/** Each place for a join takes a lay of the whole list: no joins are looked for among more pieces than this. */
export const MOST_JOINED = 60;
/** Lays tried before the search gives up. */
const MOST_LAYS = 80;

/** Whether the list has more pieces than joins are looked for among. */
export const hasTooManyToJoin = ({ pieces }: LayQuestion): boolean =>
  pieces.reduce((sum, { quantity }) => sum + quantity, 0) > MOST_JOINED;

/** The one search for joins, a lay at a time; yields the number of lays tried so far. */
export function* searchJoins(joins: JoinQuestion, plan: Planner): Generator<number, JoinAnswer, undefined> {
  const search = piecing(joins, plan);
  let tried = 0;
  while (tried < MOST_LAYS) {
    const { done, value } = search.next();
    if (done) return { pieced: value, tried };
    tried += 1;
    yield tried;
  }
  return { pieced: null, tried };
}

/** A planner of joins that searches to the end before it answers. */
export const joinsWith =
  (plan: Planner) =>
  (joins: JoinQuestion): JoinAnswer => {
    const search = searchJoins(joins, plan);
    for (;;) {
      const { done, value } = search.next();
      if (done) return value;
    }
  };

/**
 * Looks for joins that let every piece find a place on the cloth in stock. Returns null when it
 * finds no such joins. Yields after each lay that it has tried.
 */
function* piecing(
  { question, start, seam, mark }: JoinQuestion,
  plan: Planner,
): Generator<undefined, Pieced | null, undefined> {
  const how: PiecingMeans = { seam, mark, plan };
  let now: State | null = { question, lay: start, joins: [] };
  while (now && now.lay.missing.length > 0 && now.joins.length < MAX_JOINS) {
    let best: State | null = null;
    for (const cut of cutsOf(now, how)) {
      const next = layAfterCut(now, cut, how);
      yield undefined;
      if (!next || !leavesLessMissing(next, best ?? now)) continue;
      best =
        next.lay.missing.length === 0 && cut.from !== null ? yield* nearerToSide(now, cut, next, how) : next;
      if (best.lay.missing.length === 0) break;
    }
    now = best;
  }
  return now && now.joins.length > 0 && now.lay.missing.length === 0 ? now : null;
}

type State = Pieced;
type PiecingMeans = Pick<JoinQuestion, "seam" | "mark"> & { readonly plan: Planner };

/** A place to cut: a line across the outline, from border to border. */
interface Cut {
  readonly piece: number;
  readonly copies: number;
  readonly line: readonly [Point, Point];
  /** For a cut along the grain: from which selvedge-side border, and how far in; null in a pleat. */
  readonly from: { readonly border: "low" | "high"; readonly by: number; readonly step: number } | null;
}

/** Whether the first state leaves a smaller area of pieces without a place. */
function leavesLessMissing(one: State, other: State): boolean {
  const missing = ({ question, lay }: State) =>
    lay.missing.reduce((sum, [i, n]) => sum + n * Math.abs(signedArea(question.pieces[i]!.outline)), 0);
  const [a, b] = [missing(one), missing(other)];
  return a < b * (1 - 1e-9);
}

/** The cuts worth trying on the pieces that found no place, the least visible first. */
function cutsOf({ question, lay }: State, { seam, mark }: PiecingMeans): Cut[] {
  const inPleats: Cut[] = [];
  const alongGrain: Cut[] = [];
  for (const [piece, copies] of lay.missing) {
    const { outline, innerFolds = [] } = question.pieces[piece]!;
    for (const line of innerFolds) inPleats.push({ piece, copies, line, from: null });
    const { low, high } = boundingBox(outline);
    const step = (high - low) / 2 / PLACES;
    for (let k = 1; k <= PLACES; k += 1) {
      if (k * step < 2 * seam) continue;
      for (const border of ["low", "high"] as const)
        alongGrain.push(grainCut({ piece, copies }, outline, { border, by: k * step, step }, mark));
    }
  }
  return [...inPleats, ...alongGrain];
}

function grainCut(
  which: { readonly piece: number; readonly copies: number },
  outline: readonly Point[],
  from: NonNullable<Cut["from"]>,
  mark: number,
): Cut {
  const { left, right, low, high } = boundingBox(outline);
  // As drafted, x runs from the left border, which lies at the greatest y on the cloth.
  const at = from.border === "low" ? high - low - from.by : from.by;
  const y = high - (mark > 0 ? mark * Math.round(at / mark) : at);
  return { ...which, line: [[left, y], [right, y]], from }; // biome-ignore format: a line
}

/** The same join moved nearer to its side while everything still finds a place. */
function* nearerToSide(
  now: State,
  cut: Cut,
  found: State,
  how: PiecingMeans,
): Generator<undefined, State, undefined> {
  let best = found;
  let [fails, does] = [Math.max(2 * how.seam, cut.from!.by - cut.from!.step), cut.from!.by];
  for (let i = 0; i < MAX_REFINEMENTS && does > fails; i += 1) {
    const by = (fails + does) / 2;
    const nearer = grainCut(cut, now.question.pieces[cut.piece]!.outline, { ...cut.from!, by }, how.mark);
    const next = layAfterCut(now, nearer, how);
    yield undefined;
    if (next?.lay.missing.length === 0) {
      best = next;
      does = by;
    } else fails = by;
  }
  return best;
}

/** The lay after the cut; null when the cut does not make two parts that could lie on some cloth. */
function layAfterCut(now: State, cut: Cut, { seam, plan }: PiecingMeans): State | null {
  const whole = now.question.pieces[cut.piece]!;
  const parts = cutInTwo(whole, cut.line, seam);
  if (!parts?.some((part) => now.question.cloths.some((cloth) => fits(part, cloth)))) return null;
  const rest = whole.quantity - cut.copies;
  const pieces = now.question.pieces.flatMap((piece, i): LayPiece[] => {
    if (i !== cut.piece) return [piece];
    const two = parts.map((part) => ({ ...part, quantity: cut.copies }));
    return rest > 0 ? [{ ...piece, quantity: rest }, ...two] : two;
  });
  const question = { ...now.question, pieces };
  const lay = plan({ ...question, passing: true });
  if ("refusal" in lay) return null;
  const { high } = boundingBox(whole.outline);
  const at = Math.min(...cut.line.map(([, y]) => high - y));
  const join: Join = { name: whole.name, copies: cut.copies, at, inPleat: cut.from === null };
  return { question, lay, joins: [...now.joins, join] };
}

/**
 * A piece cut along a line from border to border, `seam` added to either part at the cut, where it
 * goes on as the piece does. Null when the line passes the outline more than once each way.
 */
export function cutInTwo(
  piece: LayPiece,
  [from, to]: readonly [Point, Point],
  seam: number,
): readonly [LayPiece, LayPiece] | null {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const side = ([x, y]: Point) =>
    ((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0])) / long;
  const [one, two] = ([1, -1] as const).map((sign) =>
    keptBeyond(piece.outline, (point) => sign * side(point) + seam),
  );
  if (!one || !two) return null;
  const { name, outline: _, fold: _fold, innerFolds = [], ...rest } = piece;
  const part = (outline: readonly Point[], number: number): LayPiece => {
    const folds = innerFolds.filter((ends) =>
      isInPolygon([(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2], outline),
    );
    return {
      ...rest,
      name: `${name}, part ${number}`,
      outline,
      ...(folds.length > 0 ? { innerFolds: folds } : {}),
    };
  };
  return [part(one, 1), part(two, 2)];
}

/** The part of an outline where `side` is above 0; null when that is not one part with one cut edge, or all. */
function keptBeyond(outline: readonly Point[], side: (point: Point) => number): Point[] | null {
  const kept: Point[] = [];
  let passes = 0;
  outline.forEach((point, i) => {
    const next = outline[(i + 1) % outline.length]!;
    const [here, there] = [side(point), side(next)];
    if (here > 0) kept.push(point);
    if (here > 0 === there > 0) return;
    passes += 1;
    const share = here / (here - there);
    kept.push([point[0] + (next[0] - point[0]) * share, point[1] + (next[1] - point[1]) * share]);
  });
  return passes === 2 ? kept : null;
}

/** Whether a part could lie on a cloth alone, by its own box and a quarter turn where that is allowed. */
function fits({ outline, turns }: LayPiece, cloth: LayQuestion["cloths"][number]): boolean {
  const { left, right, low, high } = boundingBox(outline);
  const slack = 1 + 1e-9;
  return turns.some((turn) => {
    if (turn % 90 !== 0) return true;
    const [long, wide] = turn % 180 === 0 ? [right - left, high - low] : [high - low, right - left];
    return wide <= cloth.width * slack && long <= (cloth.length ?? Infinity) * slack;
  });
}
