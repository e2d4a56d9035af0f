/**
 * The steps of a bodice foundation, point by point. The front follows the French lining draft of C. C. Ingalls,
 * Text-Book on Domestic Art (San Francisco 1911), whose numbered dots are named beside the steps; the back follows
 * the back of lesson 142 of I. Rosenfeld, The Practical Designer (New York 1911), and the first
 * foundation lines of his volume on underwear (1918), whose points are letters.
 */

import { isAbove, isBelow } from "../compared-figures.ts";
import type { CallContext } from "../define.ts";
import { pointAhead } from "../geometry/constant-curvature.ts";
import {
  distance,
  type Edge,
  line,
  type Point,
  pointBetween,
  QUARTER_CIRCLE,
  toward,
} from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, type Mark, mark, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { armholeCurve, neckline } from "./bodice-curves.ts";

export interface BodiceMeasures {
  readonly bust: number;
  readonly waist: number;
  readonly neck: number;
  readonly back_length: number;
  readonly back_depth: number;
  readonly back_width: number;
  readonly front_length: number;
  readonly front_depth: number;
  readonly chest: number;
  readonly shoulder: number;
  readonly dart_height: number;
  readonly bust_ease: number;
  readonly waist_ease: number;
  readonly darts: number;
}

type Notes = Pick<CallContext, "step" | "measure" | "cm">;

/** What front and back have in common. */
interface Frame {
  readonly inch: number;
  readonly breadth: number;
  /** Half of the width across the chest, or of the back. */
  readonly across: number;
  /** From the centre to the side, at the armhole's depth. */
  readonly width: number;
  readonly taken: number;
  readonly underarm: number;
  /** Length of the sewn waist of this quarter. */
  readonly sewn: number;
}

function frame(given: BodiceMeasures, part: "front" | "back", { step, measure, cm }: Notes): Frame {
  const { bust, waist, neck, back_length, back_depth, back_width, chest, bust_ease, waist_ease } = given;
  const inch = measure("inch", "one inch, in which the draft gives its fixed distances", cm(2.54));
  const half_bust = step("half_bust", "(bust + bust_ease) / 2", (bust + bust_ease) / 2);
  const half_waist = step("half_waist", "(waist + waist_ease) / 2", (waist + waist_ease) / 2);
  const surplus = step("surplus", "half_bust - half_waist", half_bust - half_waist);
  if (isBelow(surplus, 0, half_bust))
    throw new Refusal(
      (say) =>
        phrase`waist with its ease must not be more than bust with its ease, ${say(2 * half_bust, 2 * half_waist)}, because this draft takes the difference in with darts, not ${say(2 * half_waist, 2 * half_bust)}`,
    );
  // Ingalls's 2 1/2 in (dot 7) is a fifth of a neck of 12 1/2 in, Rosenfeld's 3 in (A to J) of one of 15 in.
  const breadth = step("neck_breadth", "neck / 5", neck / 5);
  for (const [name, across] of [
    ["chest", chest],
    ["back_width", back_width],
  ] as const)
    if (isBelow(across / 2, breadth + inch))
      throw new Refusal(
        (say) =>
          phrase`${name} must be at least ${say(2 * (breadth + inch), across)} for a neck of ${say(neck)}, not ${say(across, 2 * (breadth + inch))}`,
      );
  // Ingalls's dot 11 lies at the back of the arm; the side seam is laid midway from the front of the arm to it.
  const arm = step(
    "arm_breadth",
    "half_bust - back_width / 2 - chest / 2",
    half_bust - (back_width + chest) / 2,
  );
  if (isBelow(arm, 1.5 * inch))
    throw new Refusal(
      (say) =>
        phrase`bust must exceed chest and back_width together by at least ${say(3 * inch)}, the breadth of both armholes, and be ${say(back_width + chest + 3 * inch, 2 * half_bust)} or more with its ease, not ${say(2 * half_bust, back_width + chest + 3 * inch)}`,
    );
  const front = step("front_width", "chest / 2 + arm_breadth / 2", (chest + arm) / 2);
  const back = step("back_quarter", "half_bust - front_width", half_bust - front);
  const width = part === "front" ? front : back;
  const taken = step("taken_in", "MIN(0.75 * inch; surplus / 8)", Math.min(0.75 * inch, surplus / 8));
  const underarm = step("underarm", "back_length - back_depth", back_length - back_depth);
  if (isBelow(underarm, 2 * inch))
    throw new Refusal(
      (say) =>
        phrase`back_length must be at least ${say(back_depth + 2 * inch, back_length)} for an armhole ${say(back_depth)} deep, not ${say(back_length, back_depth + 2 * inch)}`,
    );
  const share = part === "front" ? "front_width" : "back_quarter";
  const sewn = step("sewn_waist", `half_waist * ${share} / half_bust`, (half_waist * width) / half_bust);
  return { inch, breadth, across: (part === "front" ? chest : back_width) / 2, width, taken, underarm, sewn };
}

/** The front half, centre front at the left: 1 shoulder, 2 armhole, 3 side, 4 waist, 5 centre front, 6 neckline. */
export function bodiceFront(given: BodiceMeasures, notes: Notes): Piece {
  const { step } = notes;
  const { front_depth, front_length, shoulder, dart_height, darts, chest } = given;
  const base = frame(given, "front", notes);
  const { inch, breadth, across, width, taken, underarm } = base;
  const neck = step("neck_depth", "neck / 5 + inch / 4", given.neck / 5 + inch / 4); // dot 1
  const low = step("bust_level", "neck_depth + front_depth", neck + front_depth); // dots 2, 10 and 11
  const waist = step("waist_level", "neck_depth + front_length", neck + front_length); // dots 3 and 5
  const slope = step("shoulder_drop", "neck_depth - inch", neck - inch); // dot 9
  step("across_chest", "chest / 2", chest / 2); // dots 8, 9 and 10
  const side = step("side_level", "bust_level + underarm", low + underarm); // dot 12
  if (isBelow(front_length - front_depth, 2 * inch))
    throw new Refusal(
      (say) =>
        phrase`front_length must be at least ${say(front_depth + 2 * inch, front_length)} for a front_depth of ${say(front_depth)}, not ${say(front_length, front_depth + 2 * inch)}`,
    );
  if (isAbove(dart_height, front_length - inch))
    throw new Refusal(
      (say) =>
        phrase`dart_height must be at most ${say(front_length - inch, dart_height)}, an inch less than front_length, not ${say(dart_height, front_length - inch)}`,
    );
  const top: Point = [breadth, 0];
  const tip = pointAhead(top, toward(top, [across, slope]), shoulder);
  const run: Edge = [line([width - taken, side], [taken, waist])];
  const length = step(
    "waist_line",
    "SQRT((front_width - 2 * taken_in)^2 + (side_level - waist_level)^2)",
    edgeLength(run),
  );
  const intake = step("dart_intake", "waist_line - sewn_waist", length - base.sewn);
  const each = step("each_dart", "dart_intake / darts", intake / darts);
  const ends = 2.5 * inch + intake + (darts - 1) * inch;
  if (isBelow(intake, 0, length) || isAbove(ends, length - inch / 2))
    throw new Refusal(
      (say) =>
        phrase`the waist line of the front, ${say(length)}, has no room for darts of ${say(Math.max(0, intake))} in all, ${say(2.5 * inch)} from centre front: check bust, waist, back_width and chest${darts > 1 ? phrase`, or ask for 1 dart` : ""}`,
    );
  // Each dart by its middle, measured from the side, where the edge begins.
  const places = Array.from({ length: darts }, (_, i) => length - 2.5 * inch - each / 2 - i * (each + inch));
  return finished({
    neck: neckline([0, neck], top, tip, QUARTER_CIRCLE, QUARTER_CIRCLE),
    centre: [line([taken, waist], [0, low]), line([0, low], [0, neck])],
    centreName: "centre front",
    top,
    tip,
    base,
    low,
    hollow: neck + front_depth / 2,
    waist: run,
    darts: places.map((at) => ({ at, intake: each, height: dart_height })),
    notches: [1 / 3],
    notes,
  });
}

/** The back half, centre back at the left, its edges in the order of the front's. */
export function bodiceBack(given: BodiceMeasures, notes: Notes): Piece {
  const { step } = notes;
  const { back_length, back_depth, shoulder } = given;
  const base = frame(given, "back", notes);
  const { inch, breadth, across, width, taken, underarm } = base;
  step("across_back", "back_width / 2", across); // I and H
  const top: Point = [breadth, -inch]; // K, an inch above the top line
  const tip = pointAhead(top, toward(top, [across, 0]), shoulder); // through I to L
  const run: Edge = [line([width - taken, back_length], [taken, back_length])];
  const length = step("waist_line", "back_quarter - 2 * taken_in", edgeLength(run));
  const intake = step("dart_intake", "waist_line - sewn_waist", length - base.sewn);
  if (intake < -1e-9 * length)
    throw new Refusal(
      phrase`back_width leaves too little of the waist for the back: check bust, waist, back_width and chest`,
    );
  const height = step("dart_height_behind", "underarm - inch", underarm - inch);
  return finished({
    neck: neckline([0, 0], top, tip, 0.95, 0.5),
    centre: [line([taken, back_length], [0, back_depth]), line([0, back_depth], [0, 0])],
    centreName: "centre back",
    top,
    tip,
    base,
    low: back_depth,
    hollow: back_depth / 2,
    waist: run,
    darts: intake > 1e-6 * length ? [{ at: length / 2, intake, height }] : [],
    notches: [0.36, 0.4],
    notes,
  });
}

interface Half {
  readonly neck: Edge;
  readonly centre: Edge;
  readonly centreName: string;
  readonly top: Point;
  readonly tip: Point;
  readonly base: Frame;
  /** The level of the armhole's lowest point, and that at which it runs straight down. */
  readonly low: number;
  readonly hollow: number;
  readonly waist: Edge;
  readonly darts: readonly { readonly at: number; readonly intake: number; readonly height: number }[];
  /** Shares of the armhole from the side at which it is notched. */
  readonly notches: readonly number[];
  readonly notes: Notes;
}

function finished(half: Half): Piece {
  const { neck, centre, centreName, top, tip, base, low, hollow, waist, darts, notes } = half;
  const { across, width, taken, underarm } = base;
  const { measure, cm } = notes;
  if (isAbove(tip[1], hollow - 0.1 * base.inch))
    throw new Refusal(
      (say) =>
        phrase`shoulder must be less for its end to lie above the armhole's hollow, not ${say(distance(top, tip))}`,
    );
  const side = line([width, low], [width - taken, low + underarm]);
  const down = toward(side.from, side.to);
  const armhole = armholeCurve(top, tip, [across, hollow], side.from, down);
  const edges: Edge[] = [[line(top, tip)], armhole, [side], waist, centre, neck];
  const names = ["shoulder", "armhole", "side", "waist", centreName, "neckline"];
  const piece = pieceOf(edges, names);
  measure("armhole", "along the armhole, from the shoulder to the side", edgeLength(armhole));
  measure("neckline", () => phrase`along the neckline, from ${centreName} to the shoulder`, edgeLength(neck));
  measure("side", "along the side seam, the same on front and back", edgeLength(edges[2]!));
  const marks: Mark[] = darts.flatMap(({ at, intake, height }) => {
    const [from, to] = [waist[0]!.from, waist[0]!.to];
    const place = (off: number) => pointBetween(from, to, off / distance(from, to));
    const [ux, uy] = toward(from, to);
    const point = pointAhead(place(at), [-uy, ux], height);
    return [
      mark([line(place(at - intake / 2), point)], "dart"),
      mark([line(point, place(at + intake / 2))], "dart"),
      mark([line(place(at), point)], "fold"),
    ];
  });
  const long = edgeLength(armhole);
  return {
    ...piece,
    marks: [
      ...marks,
      mark([line([0, low], [width, low])], "guide"),
      ...half.notches.map((share) => notchOn(piece, 2, long * (1 - share), cm(0.5))),
    ],
  };
}
