/**
 * The steps of a breeches foundation, point by point. The front follows lessons 411 and 427 of I. Rosenfeld, The Practical
 * Designer, underwear (New York 1918), whose letters stand beside the steps. The seat of the back slopes by G. F. Hertzer's
 * 15 degrees (Garment Cutting in the Twentieth Century, Tiffin 1892). The back has the side seam of the front,
 * moved out, and its inside leg seam is made equal by lowering its fork.
 */

import { isBelow } from "../compared-figures.ts";
import type { CallContext } from "../define.ts";
import { pointAhead } from "../geometry/constant-curvature.ts";
import { reaching } from "../geometry/increasing-root.ts";
import { IDENTITY, moveEdge } from "../geometry/isometry.ts";
import {
  type Curve,
  degrees,
  distance,
  type Edge,
  line,
  type Point,
  radians,
  toward,
} from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, mark, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

export interface BreechesMeasures {
  readonly part: "front" | "back";
  readonly waist: number;
  readonly seat: number;
  readonly rise: number;
  readonly knee_length: number;
  readonly side_length: number;
  readonly knee: number;
  readonly small: number;
  readonly seat_ease: number;
  readonly fullness: number;
  readonly seat_raise: number;
  readonly slope: number;
}

/** One piece of the pair; the side seam lies at the left, x = 0 at the hip of the front, y = 0 at the waist. */
export function breeches(given: BreechesMeasures, { step, measure, cm }: CallContext): Piece {
  const { waist, seat, rise, knee_length, side_length, knee, small, seat_ease, fullness, seat_raise } = given;
  const inch = measure("inch", "one inch, in which the draft gives its fixed distances", cm(2.54));
  const quarter = step("quarter_seat", "seat / 4", seat / 4); // B to H
  const fork = step("front_fork", "seat / 12", seat / 12); // H to I, and H up to J
  const hip = step("seat_level", "rise - front_fork", rise - fork); // J
  if (isBelow(hip, 2 * inch))
    throw new Refusal(
      (say) =>
        phrase`rise must be at least ${say(fork + 2 * inch, rise)} for a seat of ${say(seat)}, not ${say(rise, fork + 2 * inch)}`,
    );
  for (const [name, longer, from, shorter] of [
    ["knee_length", knee_length, "rise", rise],
    ["side_length", side_length, "knee_length", knee_length],
  ] as const) {
    const least = shorter + (from === "rise" ? 3 : 0.5) * inch;
    if (isBelow(longer, least))
      throw new Refusal(
        (say) =>
          phrase`${name} must be at least ${say(least, longer)} for a ${from} of ${say(shorter, longer)}, not ${say(longer, least)}`,
      );
  }
  // M to N: half an inch in the draft, whose fork is 3 5/8 in, and in proportion for a larger one.
  const hollow = step(
    "front_hollow",
    "MAX(inch / 2; front_fork * 4 / 29)",
    Math.max(inch / 2, (fork * 4) / 29),
  );
  const moved = step("side_moved", "seat_ease / 2", seat_ease / 2);
  const middle = step("leg_middle", "(quarter_seat + front_fork) / 2", (quarter + fork) / 2); // S
  const knee_front = step("knee_front", "(knee - side_moved) / 2", (knee - moved) / 2); // 1 to 2
  const small_front = step("small_front", "(small - side_moved) / 2", (small - moved) / 2); // 5 to 6
  if (isBelow(small_front, inch) || isBelow(knee_front, inch))
    throw new Refusal(
      (say) =>
        phrase`knee and small must both be at least ${say(2 * inch + moved)} with a seat_ease of ${say(seat_ease)}, not ${say(Math.min(knee, small), 2 * inch + moved)}`,
    );
  step("knee_back", "knee - knee_front", knee - knee_front);
  step("small_back", "small - small_front", small - small_front);

  // The tops: X of the front is lowered, the side raised by half an inch; the back rises along its sloping seat seam.
  const centre: Point = [quarter, inch / 2];
  const fall = Math.tan(radians(given.slope));
  const seat_slope = step(
    "seat_slope",
    "(seat_level + seat_raise) * TAN(RADIANS(slope))",
    (hip + seat_raise) * fall,
  );
  const behind: Point = [quarter - seat_slope, -seat_raise];
  const half = step("half_top", "(waist + fullness) / 2", (waist + fullness) / 2);
  const tops = (x: number) => {
    const [one, two]: Point[] = [[x, -inch / 2], [x - moved, -inch / 2]]; // biome-ignore format: two points
    return distance(one!, centre) + distance(two!, behind);
  };
  const far = behind[0] + moved;
  if (isBelow(half, tops(far)))
    throw new Refusal(
      (say) =>
        phrase`waist must be at least ${say(2 * tops(far) - fullness, waist)} with this seat, slope and fullness, not ${say(waist, 2 * tops(far) - fullness)}`,
    );
  const side = measure(
    "side_in",
    "how far the side comes in at the waist, so that front and back together are half of the waist with its fullness",
    -reaching((x) => tops(-x), half, -far, 4 * half),
  );
  if (isBelow(side, -0.5 * quarter))
    throw new Refusal(
      (say) =>
        phrase`waist with its fullness must be nearer to seat ${say(seat, 2 * half)} for the side seam to run straight enough, not ${say(2 * half, seat)}`,
    );

  const sideTop: Point = [side, -inch / 2];
  const hipSide: Point = [0, hip];
  const kneeSide: Point = [middle - knee_front / 2, knee_length];
  const lowSide: Point = [middle - small_front / 2, side_length];
  const kneeIn: Point = [middle + knee_front / 2, knee_length];
  const lowIn: Point = [middle + small_front / 2, side_length];
  const down = toward(kneeSide, lowSide);
  const along = toward(kneeIn, lowIn);
  const sideSeam: Edge = [
    curve(sideTop, toward(sideTop, hipSide), hipSide, [0, 1]),
    line(hipSide, [0, rise]),
    curve([0, rise], [0, 1], kneeSide, down),
    line(kneeSide, lowSide),
  ];
  const insideFrom = (from: Point, leaving: Point): Edge => [
    curve(from, leaving, kneeIn, along),
    line(kneeIn, lowIn),
  ];
  const front = insideFrom([quarter + fork, rise], [-Math.sin(FRONT_LEAN), Math.cos(FRONT_LEAN)]);
  const out = step("back_fork", "front_fork + seat / 12", fork + seat / 12);
  const back_x = quarter + out;
  const leg = step("thigh", "knee_length - rise", knee_length - rise);
  // At the back fork both seams lean alike, square to one another, so that the crotch is smooth when sewn: as the seat
  // seam does, or so far, up to 30 degrees, that the inside leg runs straight to the knee without a bulge at the thigh.
  const fork_lean = step(
    "fork_lean",
    "MAX(slope; MIN(30; DEGREES(ATAN((quarter_seat + back_fork - leg_middle - knee_front / 2) / thigh))))",
    Math.max(given.slope, Math.min(30, degrees(Math.atan((back_x - kneeIn[0]) / leg)))),
  );
  const lean: Point = [-Math.sin(radians(fork_lean)), Math.cos(radians(fork_lean))];
  // Lower fork, shorter seam: found where both inside seams are equal.
  const drop = measure(
    "fork_lowered",
    "how far the fork of the back is lowered, so that the inside seams of front and back are equal",
    reaching((y) => -edgeLength(insideFrom([back_x, rise + y], lean)), -edgeLength(front), 0, 0.75 * leg),
  );
  const inside = given.part === "front" ? front : insideFrom([back_x, rise + drop], lean);
  if (Math.abs(edgeLength(inside) - edgeLength(front)) > 1e-9 * edgeLength(front))
    throw new Refusal(
      (say) =>
        phrase`knee_length must be more for the inside seams of front and back to be equal, not ${say(knee_length)}`,
    );
  return assembled({
    given,
    centre,
    behind,
    hip,
    quarter,
    fork,
    moved,
    hollow,
    inside,
    level: [lean[1], -lean[0]],
    sideSeam,
    measure,
    size: cm(0.5),
  });
}

interface Found {
  readonly given: BreechesMeasures;
  readonly centre: Point;
  readonly behind: Point;
  readonly hip: number;
  readonly quarter: number;
  readonly fork: number;
  readonly hollow: number;
  readonly moved: number;
  readonly inside: Edge;
  /** The direction in which the seat seam reaches the fork. */
  readonly level: Point;
  readonly sideSeam: Edge;
  readonly measure: CallContext["measure"];
  readonly size: number;
}

function assembled(found: Found): Piece {
  const { given, centre, behind, hip, quarter, fork, moved, inside, measure } = found;
  const front = given.part === "front";
  const side = front ? found.sideSeam : moveEdge({ ...IDENTITY, e: -moved }, found.sideSeam);
  const top = side[0]!.from;
  const low = side.at(-1)!.to;
  const seat: Point = [quarter, hip];
  const crotch = inside[0]!.from;
  const peak = front ? centre : behind;
  const seam: Edge = [
    line(peak, seat),
    front ? frontHollow(seat, crotch, found.hollow) : curve(seat, toward(peak, seat), crotch, found.level),
  ];
  const lower: Edge = [line(inside.at(-1)!.to, low)];
  const edges = [[line(top, peak)], seam, inside, lower, reverseEdge(side)];
  const names = ["waist", front ? "centre front" : "seat seam", "inside leg", "lower edge", "side"];
  const piece = pieceOf(edges, names);
  measure(
    "top",
    "along the top of this piece, its share of the waist with the fullness",
    edgeLength(edges[0]!),
  );
  measure("crotch_seam", () => phrase`along the ${names[1]!}, from the waist to the fork`, edgeLength(seam));
  measure("inside_leg", "along the inside leg, the same on front and back", edgeLength(inside));
  measure("side", "along the side seam, the same on front and back", edgeLength(side));
  const left = front ? 0 : -moved;
  const knee = edgeLength(inside.slice(0, 1));
  return {
    ...piece,
    marks: [
      mark([line([left, hip], seat)], "guide"),
      mark([line([left, given.rise], [front ? quarter + fork : quarter, given.rise])], "guide"),
      notchOn(piece, 3, knee, found.size),
      notchOn(piece, 5, edgeLength(side.slice(3)), found.size),
    ],
  };
}

/** How far the front's fork leans, so that its hollow is not too tight to take an allowance. */
const FRONT_LEAN = radians(20);

/**
 * The hollow of the front, from J straight down to the fork I: half-way its curve passes `hollow` from the
 * straight line between them, through N of the draft.
 */
function frontHollow(from: Point, to: Point, hollow: number): Curve {
  const fork = to[0] - from[0];
  const [cos, sin] = [Math.cos(FRONT_LEAN), Math.sin(FRONT_LEAN)];
  const low = 0.31 * fork;
  // Half-way a cubic lies 3/8 of both handles from its chord; each counts by its part square to the chord, which falls at 45 degrees.
  const high = (8 / 3) * hollow * Math.SQRT2 - low * (cos - sin);
  return {
    kind: "curve",
    from,
    c1: [from[0], from[1] + Math.min(high, 0.6 * fork)],
    c2: [to[0] - low * cos, to[1] - low * sin],
    to,
  };
}

/** A curve between two points with its directions at both, unit vectors; its handles reach a third of the way. */
function curve(from: Point, leaving: Point, to: Point, arriving: Point): Curve {
  const reach = distance(from, to) / 3;
  return {
    kind: "curve",
    from,
    c1: pointAhead(from, leaving, reach),
    c2: pointAhead(to, arriving, -reach),
    to,
  };
}
