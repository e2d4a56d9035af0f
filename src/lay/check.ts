/**
 * The independent checker of a lay. It shares no code with the planners: it turns and moves the
 * original outlines itself, and fault.ts measures, from
 * exact predicates, how deep a fault is. Every lay that is shown has passed it.
 *
 * Tolerance: faults of less than `tolerance` × the widest cloth's width are let pass. The usual
 * 1e-4 is 0.15 mm on a cloth of 1.5 m, a tenth of a chalk line, and is what the published
 * benchmark lays use for the strip's edge. Touching is allowed.
 */

import { pointInside } from "../../functions/geometry/point-in-polygon.ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { outlineDistance, outsideBy, overlapBy } from "./fault.ts";
import { plain, sayLengths } from "./lengths.ts";

interface Laid {
  readonly placement: Placement;
  readonly label: string;
  readonly points: readonly Point[];
  /** A point well inside the outline. */
  readonly heart: Point;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Faults of the lay as sentences; none when it is good. */
export function checkLay(question: LayQuestion, lay: Lay, tolerance = 1e-4): string[] {
  const slack = tolerance * Math.max(...question.cloths.map((cloth) => cloth.width));
  const faults = checkCopies(question, lay);
  const laid: Laid[] = [];
  for (const placement of lay.placements) {
    const fault = checkPlacement(question, placement);
    if (fault) faults.push(fault);
    else laid.push(layDown(question, placement));
  }
  for (const one of laid) faults.push(...checkInside(question, one, slack));
  faults.push(...checkPairs(question, laid, slack));
  faults.push(...checkRepeat(question, laid, slack));
  faults.push(...checkPins(question, lay, slack));
  faults.push(...checkFigures(question, lay, laid, slack));
  return faults;
}

/** Each copy is there once, or counted as missing. */
function checkCopies(question: LayQuestion, lay: Lay): string[] {
  const faults: string[] = [];
  const seen = new Map<string, number>();
  const placed = question.pieces.map(() => 0);
  for (const { piece, copy } of lay.placements) {
    const key = `${piece} ${copy}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
    if (seen.get(key) === 2)
      faults.push(phrase`${question.pieces[piece]?.name ?? ""} ${copy + 1} lies there twice`);
    if (placed[piece] !== undefined) placed[piece]++;
  }
  const missing = question.pieces.map(() => 0);
  for (const [piece, count] of lay.missing) {
    if (missing[piece] === undefined || !(Number.isInteger(count) && count > 0))
      faults.push(`the list of missing copies holds piece ${piece}, ${count} times`);
    else missing[piece] += count;
  }
  question.pieces.forEach(({ name, quantity }, i) => {
    if (placed[i]! + missing[i]! !== quantity)
      faults.push(
        phrase`of ${quantity} × ${name} ${placed[i]!} lie there and ${missing[i]!} are said to be missing`,
      );
  });
  return faults;
}

function checkPlacement(question: LayQuestion, { piece, copy, cloth, turn, x, y }: Placement): string | null {
  const what = question.pieces[piece];
  if (!what) return `there is no piece ${piece}`;
  if (!Number.isInteger(copy) || copy < 0 || copy >= what.quantity)
    return phrase`${what.name} has no copy ${copy + 1}`;
  if (!question.cloths[cloth]) return phrase`${what.name} ${copy + 1} lies on a cloth that is not there`;
  if (![turn, x, y].every(Number.isFinite)) return phrase`${what.name} ${copy + 1} has no place`;
  const same = (a: number, b: number) => Math.abs(((((a - b) % 360) + 540) % 360) - 180) < 1e-9;
  if (!what.turns.some((allowed) => same(allowed, turn)))
    return phrase`${what.name} ${copy + 1} is turned by ${turn}°, which its grain does not allow`;
  return null;
}

function layDown(question: LayQuestion, placement: Placement): Laid {
  const piece = question.pieces[placement.piece]!;
  const points = place(piece.outline, placement);
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return {
    placement,
    label: `${piece.name} ${placement.copy + 1}`,
    points,
    heart: pointInside(points),
    left: Math.min(...xs),
    right: Math.max(...xs),
    low: Math.min(...ys),
    high: Math.max(...ys),
  };
}

/** Points turned about (0, 0), quarter turns exactly, and moved. */
function place(points: readonly Point[], { turn, x, y }: Placement): Point[] {
  const quarters = turn / 90;
  let c = Math.cos((turn * Math.PI) / 180);
  let s = Math.sin((turn * Math.PI) / 180);
  if (Number.isInteger(quarters)) {
    c = Math.round(c);
    s = Math.round(s);
  }
  return points.map(([px, py]) => [x + px * c - py * s, y + px * s + py * c] as const);
}

function checkInside(question: LayQuestion, one: Laid, slack: number): string[] {
  const cloth = question.cloths[one.placement.cloth]!;
  const faults: string[] = [];
  const say = sayLengths(question);
  const { label } = one;
  const out = (by: number, sentence: (by: string) => string) => {
    if (by > slack) faults.push(sentence(say(by, 0)));
  };
  out(-one.left, (by) => phrase`${label} lies ${by} outside ${cloth.name} at its beginning`);
  out(-one.low, (by) => phrase`${label} lies ${by} outside ${cloth.name} at its lower selvedge`);
  out(
    one.high - cloth.width,
    (by) => phrase`${label} lies ${by} outside ${cloth.name} at its upper selvedge`,
  );
  if (cloth.length !== null)
    out(one.right - cloth.length, (by) => phrase`${label} lies ${by} outside ${cloth.name} at its end`);
  if (cloth.outline) {
    out(
      outsideBy(one.points, cloth.outline),
      (by) => phrase`${label} lies ${by} outside the outline of ${cloth.name}`,
    );
  }
  for (const flaw of cloth.flaws ?? []) {
    out(
      overlapBy(one.points, one.heart, flaw, pointInside(flaw), slack),
      (by) => phrase`${label} lies ${by} over a flaw in ${cloth.name}`,
    );
  }
  return faults;
}

function checkPairs(question: LayQuestion, laid: readonly Laid[], slack: number): string[] {
  const faults: string[] = [];
  const say = sayLengths(question);
  const reach = question.gap - slack;
  const order = [...laid].sort((a, b) => a.left - b.left);
  order.forEach((a, i) => {
    for (let j = i + 1; j < order.length; j++) {
      const b = order[j]!;
      if (b.left - a.right > Math.max(reach, 0)) break;
      if (a.placement.cloth !== b.placement.cloth) continue;
      if (b.low - a.high > Math.max(reach, 0) || a.low - b.high > Math.max(reach, 0)) continue;
      const depth = overlapBy(a.points, a.heart, b.points, b.heart, slack);
      if (depth > slack) faults.push(phrase`${a.label} overlaps ${b.label} by about ${say(depth, 0)}`);
      else if (reach > 0) {
        const apart = outlineDistance(a.points, b.points, reach);
        if (apart < reach)
          faults.push(
            phrase`${a.label} and ${b.label} are ${say(apart, question.gap)} apart, less than ${say(question.gap, apart)}`,
          );
      }
    }
  });
  return faults;
}

/** On each cloth the match points fall on one place of the repeat. */
function checkRepeat(question: LayQuestion, laid: readonly Laid[], slack: number): string[] {
  const { repeat } = question;
  if (!(repeat > 0)) return [];
  const say = sayLengths(question);
  const first = new Map<number, { x: number; label: string }>();
  const faults: string[] = [];
  for (const one of laid) {
    const match = question.pieces[one.placement.piece]!.match;
    if (!match) continue;
    const x = place([match], one.placement)[0]![0];
    const known = first.get(one.placement.cloth);
    if (!known) {
      first.set(one.placement.cloth, { x, label: one.label });
      continue;
    }
    const steps = (x - known.x) / repeat;
    const off = Math.abs(steps - Math.round(steps)) * repeat;
    if (off > slack) faults.push(phrase`${one.label} is ${say(off, 0)} off the repeat of ${known.label}`);
  }
  return faults;
}

function checkPins(question: LayQuestion, lay: Lay, slack: number): string[] {
  return (question.pinned ?? []).flatMap((pin) => {
    const there = lay.placements.some(
      (p) =>
        p.piece === pin.piece &&
        p.copy === pin.copy &&
        p.cloth === pin.cloth &&
        (p.turn - pin.turn) % 360 === 0 &&
        Math.hypot(p.x - pin.x, p.y - pin.y) <= slack,
    );
    return there
      ? []
      : [
          phrase`${question.pieces[pin.piece]?.name ?? ""} ${pin.copy + 1} has left the place it is pinned to`,
        ];
  });
}

/** The lengths and the density are what the placed outlines say. */
function checkFigures(question: LayQuestion, lay: Lay, laid: readonly Laid[], slack: number): string[] {
  const faults: string[] = [];
  const say = sayLengths(question);
  let cloth = 0;
  question.cloths.forEach(({ name, width }, i) => {
    const length = laid.reduce(
      (most, one) => (one.placement.cloth === i ? Math.max(most, one.right) : most),
      0,
    );
    const said = lay.lengths[i];
    if (said === undefined || Math.abs(said - length) > slack)
      faults.push(
        phrase`${name} is said to be used for ${said === undefined ? "-" : say(said, length)}, the pieces take ${say(length, said ?? NaN)}`,
      );
    cloth += width * length;
  });
  const area = laid.reduce((sum, one) => sum + Math.abs(areaOf(one.points)), 0);
  const density = cloth > 0 ? area / cloth : 0;
  if (!(Math.abs(lay.density - density) <= 1e-3))
    faults.push(phrase`the density is said to be ${plain(lay.density)}, it is ${plain(density)}`);
  return faults;
}

function areaOf(points: readonly Point[]): number {
  let twice = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++)
    twice += points[j]![0] * points[i]![1] - points[i]![0] * points[j]![1];
  return twice / 2;
}
