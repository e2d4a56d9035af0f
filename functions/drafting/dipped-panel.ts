/**
 * The section sewn below a pointed waist seam: the body between waist and hip rolled out flat
 * (body-cone.ts), cut along the seam above and along a hem below, and spread evenly where the hem is
 * to be fuller than the body.
 *
 * Half the section, before it is spread:
 *
 *     centre back                     centre front
 *        |------------.                              level part of the seam, then the slope
 *        |             `--.
 *        |    |    |    |  `--.
 *        |    |    |    |    | `--.                  the point
 *        |    |    |    |    |    |                  strips, each straight down the body
 *        |____|____|____|____|____|                  hem, here level
 *
 * Spreading cuts the section into strips of no width, each straight down the body, and leans every
 * strip a little more than the one before. The top ends of the strips stay together, so the seam keeps
 * its length and only bends: the level part becomes an arc of another radius, and the straight slope
 * becomes an arc too. The hem's point on a strip stays on that strip, at the same distance below the seam.
 */

import { isAbove } from "../compared-figures.ts";
import type { CallContext } from "../define.ts";
import {
  arcEnd,
  arcFrom,
  directionAcross,
  directionDown,
  pointAhead,
} from "../geometry/constant-curvature.ts";
import { curveBetween } from "../geometry/curve-between.ts";
import { type Edge, integrate, line, type Point, type Stroke } from "../geometry/strokes.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { edgeLength, type Piece, pieceOf } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";
import { developedPoint, girthAt, type WaistSeam } from "./body-cone.ts";

export interface DipMeasures {
  readonly waist: number;
  readonly hip: number;
  readonly hip_drop: number;
  readonly front_drop: number;
  readonly back_drop: number;
  readonly start: number;
  readonly depth: number;
  readonly hem: "parallel" | "level";
}

/** The strip that begins at a distance `u` along the slope, before spreading. */
interface SlopePlace {
  /** The angle of the strip from straight down, in radians. */
  readonly lean: number;
  /** How much the lean grows for each unit of length along the slope. */
  readonly leaning: number;
  /** The strip's length from seam to hem. */
  readonly length: number;
  /** How much that length grows for each unit of length along the slope. */
  readonly lengthening: number;
}

/** How many curves draw the hem below a slope that spans the angle `turn` of the rolled-out body. That number gives the hem's length to about seven digits. */
const curveCount = (turn: number): number => Math.max(8, Math.ceil(6 * Math.abs(turn)));

export class DippedSection {
  private readonly dip: DipMeasures;
  private readonly seam: WaistSeam;
  private readonly slopeStart: Point;
  private readonly slopeLean: number;
  private readonly slopeWay: Point;

  constructor(dip: DipMeasures, seam: WaistSeam) {
    this.dip = dip;
    this.seam = seam;
    const { waist, hip, hip_drop, front_drop, back_drop, depth, hem } = dip;
    const over = front_drop - back_drop;
    if (hem === "level" && depth <= over * (1 + 1e-9)) {
      throw new Refusal(
        (say) =>
          phrase`depth must be more than ${say(over, depth)} for a level hem to pass below the point in front, not ${say(depth, over)}`,
      );
    }
    girthAt(waist, hip, hip_drop, back_drop + depth, "depth");
    if (hem === "parallel") girthAt(waist, hip, hip_drop, front_drop + depth, "depth");
    this.slopeStart = developedPoint(waist, seam.angle, back_drop, seam.slope_from);
    const end = developedPoint(waist, seam.angle, front_drop, seam.slope_to);
    const [dx, dy] = [end[0] - this.slopeStart[0], end[1] - this.slopeStart[1]];
    this.slopeWay = seam.sloped > 0 ? [dx / seam.sloped, dy / seam.sloped] : [1, 0];
    this.slopeLean = Math.atan2(-dy, dx);
  }

  private place(u: number): SlopePlace {
    const { waist, back_drop, depth, hem } = this.dip;
    const { angle } = this.seam;
    const [x, y] = pointAhead(this.slopeStart, this.slopeWay, u);
    const lean = Math.atan2(angle * x, waist + angle * y);
    const girth = Math.hypot(angle * x, waist + angle * y);
    const leaning = (angle * Math.cos(this.slopeLean - lean)) / girth;
    if (hem === "parallel") return { lean, leaning, length: depth, lengthening: 0 };
    const level = angle === 0 ? y : y + (2 * girth * Math.sin(lean / 2) ** 2) / angle;
    const lengthening = Math.sin(this.slopeLean - lean);
    return { lean, leaning, length: back_drop + depth - level, lengthening };
  }

  /** Length of half the hem when the strips lean by `spread` radians more for each length of seam. */
  halfHem(spread: number): number {
    const { sloped } = this.seam;
    const levels = this.back().wide(spread) + this.front().wide(spread);
    if (sloped === 0) return levels;
    return levels + integrate((u) => Math.hypot(...this.hemSpeed(this.place(u), spread)), 0, sloped);
  }

  /** The level part of the seam at the back, and the level part in front. */
  private back(): LevelPart {
    const { angle, back_girth, level } = this.seam;
    return levelPart(angle / back_girth, level, this.dip.depth);
  }

  private front(): LevelPart {
    const { angle, front_girth, front_level } = this.seam;
    const { depth, hem, back_drop, front_drop } = this.dip;
    return levelPart(
      angle / front_girth,
      front_level,
      hem === "parallel" ? depth : back_drop + depth - front_drop,
    );
  }

  /** How far the hem goes for each unit of length along the slope: across the strip, and down it. */
  private hemSpeed({ lean, leaning, length, lengthening }: SlopePlace, spread: number): Point {
    const off = this.slopeLean - lean;
    return [Math.cos(off) + length * (leaning + spread), lengthening - Math.sin(off)];
  }

  /** The spread that makes half the hem this long; 0 when the hem just goes round the body. Refuses a shorter hem, and one that comes round to a full circle. */
  spreadFor(half: number, asked: HemRequest): number {
    // The fullness is a ratio, the hem's length is a length.
    const requestText = (say: CallContext["say"], figure: number, beside: number) =>
      asked.name === "fullness" ? numberText(figure, 4) : say(figure, beside);
    const body = this.halfHem(0);
    if (half < body * (1 - 1e-9)) {
      throw new Refusal(
        (say) =>
          phrase`${asked.name} must be at least ${requestText(say, body / asked.per, half / asked.per)}, where the section exactly goes round the body, not ${requestText(say, half / asked.per, body / asked.per)}`,
      );
    }
    const circle = this.halfHem(this.circle());
    if (isAbove(half, circle)) {
      throw new Refusal(
        (say) =>
          phrase`${asked.name} must be at most ${requestText(say, circle / asked.per, half / asked.per)}, where each half comes round to a full circle, not ${requestText(say, half / asked.per, circle / asked.per)}: cut the section in more panels`,
      );
    }
    if (half <= body * (1 + 1e-12)) return 0;
    // The hem grows by nearly its depth for each radian: the secant method, then a last step that
    // measures the hem as drawn, for its curves are good to some seven figures only.
    let spread = (half - body) / (this.dip.depth * (this.seam.length / 2));
    let [before, found, slope] = [0, body, 1];
    for (let i = 0; i < 40 && this.turn(spread) < 4 * Math.PI; i += 1) {
      const now = this.halfHem(spread);
      slope = (now - found) / (spread - before);
      [before, found] = [spread, now];
      if (!(slope > 0)) break;
      spread -= (now - half) / slope;
      if (Math.abs(now - half) <= 1e-5 * half) break;
    }
    return spread + (half - edgeLength(this.hem(spread))) / slope;
  }

  /** The angle that centre front leans from centre back, in radians. */
  turn(spread: number): number {
    return this.seam.angle / 2 + (spread * this.seam.length) / 2;
  }

  /** The spread at which half the section comes round to a full circle, which is the most that can be cut in one. */
  private circle(): number {
    return (2 * (2 * Math.PI - this.seam.angle / 2)) / this.seam.length;
  }

  /**
   * Half the section, centre back along the y axis from (0, 0). Edges: 1 the seam from centre back
   * to the point, 2 centre front, 3 the hem back again, 4 centre back.
   */
  piece(spread: number): Piece {
    const { angle, level, sloped, front_level, slope_from, slope_to } = this.seam;
    const { depth } = this.dip;
    const [back, front] = [this.back(), this.front()];
    const seam: Edge = [
      ...(level > 0 ? [arcFrom([0, 0], 0, back.bend + spread, level)] : []),
      ...(sloped > 0 ? [arcFrom(this.corner(spread), this.slopeLean + spread * level, spread, sloped)] : []),
      ...(front_level > 0
        ? [arcFrom(this.slopeEnd(spread), this.frontLean(spread), front.bend + spread, front_level)]
        : []),
    ];
    const hem = reverseEdge(this.hem(spread));
    const low: Point = [0, depth];
    const piece = pieceOf(
      [seam, [line(seam.at(-1)!.to, hem[0]!.from)], hem, [line(low, [0, 0])]],
      ["waist", "centre front", "hem", "centre back"],
    );
    // Strips that lean apart by less than a third of a circle do not meet again, nor does a slope
    // that runs well across them meet the hem.
    const off = [slope_from, slope_to].map((share) => Math.abs(this.slopeLean - share * angle));
    if (angle >= 0 && this.turn(spread) <= 2 && Math.max(...off) < 1.2) return piece;
    return refuseUnlessSimple(
      "waist, hip, depth and hem give a section that would lie over itself: cut it in more panels",
      piece,
    );
  }

  /** The place where the slope of the seam begins, and the place where it ends. */
  private corner(spread: number): Point {
    return arcEnd([0, 0], 0, this.back().bend + spread, this.seam.level);
  }

  private slopeEnd(spread: number): Point {
    const { level, sloped } = this.seam;
    return arcEnd(this.corner(spread), this.slopeLean + spread * level, spread, sloped);
  }

  /** Lean of the strip at which the level part in front begins. */
  private frontLean(spread: number): number {
    const { angle, level, sloped, slope_to } = this.seam;
    return angle * slope_to + spread * (level + sloped);
  }

  /** The hem from centre back to centre front: arcs below the level parts of the seam, curves below its slope. */
  private hem(spread: number): Edge {
    const { angle, level, sloped, front_level, reach: share } = this.seam;
    const { depth, hem } = this.dip;
    const [back, front] = [this.back(), this.front()];
    const low: Point = [0, depth];
    // A level hem that just goes round the body is one arc about the body's own centre.
    if (hem === "level" && spread === 0) {
      return [arcFrom(low, 0, back.bend / (1 + depth * back.bend), this.halfHem(0))];
    }
    const arc = level > 0 ? [back.hem(low, 0, spread)] : [];
    const begin = this.corner(spread);
    const count = sloped === 0 ? 0 : curveCount(2 * angle * share);
    const ends = Array.from({ length: sloped === 0 ? 0 : count + 1 }, (_, i) => {
      const u = (sloped * i) / count;
      const place = this.place(u);
      const top = arcEnd(begin, this.slopeLean + spread * level, spread, u);
      const lean = place.lean + spread * (level + u);
      const [sideways, downwards] = this.hemSpeed(place, spread);
      const at = pointAhead(top, directionDown(lean), place.length);
      const speed = pointAhead(
        pointAhead([0, 0], directionAcross(lean), sideways),
        directionDown(lean),
        downwards,
      );
      return { at: i === 0 && arc.length > 0 ? arc[0]!.to : at, speed };
    });
    const curves = ends.slice(1).map((end, i) => curveBetween(ends[i]!, end, sloped / count));
    const last = (curves.at(-1) ?? arc.at(-1))?.to ?? low;
    const end = front_level > 0 ? [front.hem(last, this.frontLean(spread), spread)] : [];
    return [...arc, ...curves, ...end];
  }
}

/** A level part of the seam, `long` along the seam, with cloth `deep` below it. */
interface LevelPart {
  /** How the seam bends there before spreading, in radians for each length. */
  readonly bend: number;
  /** Length of the hem below it. */
  wide(spread: number): number;
  /** That hem from where it begins, as the strips lean there. */
  hem(from: Point, lean: number, spread: number): Stroke;
}

const levelPart = (bend: number, long: number, deep: number): LevelPart => ({
  bend,
  wide: (spread) => long * (1 + deep * (bend + spread)),
  hem(from, lean, spread) {
    const wider = 1 + deep * (bend + spread);
    return arcFrom(from, lean, (bend + spread) / wider, long * wider);
  },
});

/** Which argument asks for the hem, and half the hem for each 1 of it: for the sentence of a refusal. */
export interface HemRequest {
  readonly name: "hem_length" | "fullness";
  readonly per: number;
}
