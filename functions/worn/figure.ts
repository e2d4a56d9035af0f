/**
 * A plain figure to hang a garment on: level sections from the neck down to below the hip. Girths
 * that are measured are met exactly; everything else is a plain proportion (common practice),
 * and the figure says in words what is assumed. Levels are plumb, downwards from the waist.
 */
import { around, girthOf, mixed, type Section, withGirth } from "./section.ts";

/** How deep a section is in front and behind, for each half width of 1. */
const WAIST_SHAPE: Section = { half: 1, front: 0.74, back: 0.74 };
const HIP_SHAPE: Section = { half: 1, front: 0.66, back: 0.86 };
const CHEST_SHAPE: Section = { half: 1, front: 0.72, back: 0.62 };
const NECK_SHAPE: Section = { half: 1, front: 0.95, back: 0.95 };

/** Parts of the stature. */
export const WAIST_HEIGHT = 0.62;
const CHEST_UP = 0.115;
const SHOULDER_UP = 0.212;
const NECK_UP = 0.25;
const NECK_END_UP = 0.285;
export const SHOULDER_HALF = 0.118;
/** Straight across for each unit along the sloping shoulder. */
const SHOULDER_ACROSS = 0.93;
const SHOULDER_DEEP = 0.05;
const BELOW_HIP = 0.09;

export interface FigureMeasures {
  readonly waist: number;
  readonly hip: number;
  /** From waist to hip along the body, on average all round. */
  readonly hip_drop: number;
  /** The shape of the hip's section when the measures tell it, as over a pad. */
  readonly hip_shape?: Section;
  /** The hip's level below the waist, plumb, when it is known and not to be found from `hip_drop`. */
  readonly hip_level?: number;
  readonly neck?: number | undefined;
  readonly bust?: number | undefined;
  /** From the neck to the end of the shoulder. */
  readonly shoulder?: number | undefined;
  readonly stature: number;
  /** The waist above the floor. */
  readonly waist_height?: number | undefined;
  /** Least height of the waist above the floor: that of the garment that is to hang clear of it. */
  readonly clear: number;
}

interface Level {
  readonly y: number;
  readonly section: Section;
}

export interface Figure {
  /** The body's section at a level; girths between waist and hip lie on the straight line of both. */
  section(y: number): Section;
  readonly hip_level: number;
  readonly top: number;
  /** Where the figure ends below the hip. */
  readonly foot: number;
  /** The floor, below the waist. */
  readonly floor: number;
  readonly neck_level: number;
  readonly shoulder_level: number;
}

export function figureOf(measures: FigureMeasures): Figure {
  const { waist, hip, stature, neck = stature * 0.225, clear } = measures;
  const waistSection = withGirth(WAIST_SHAPE, waist);
  const hipSection = withGirth(measures.hip_shape ?? HIP_SHAPE, hip);
  const hip_level = measures.hip_level ?? levelFor(waistSection, hipSection, measures.hip_drop);
  const neckSection = withGirth(NECK_SHAPE, neck);
  const shoulders: Section = {
    half:
      measures.shoulder === undefined
        ? stature * SHOULDER_HALF
        : neckSection.half + measures.shoulder * SHOULDER_ACROSS,
    front: stature * SHOULDER_DEEP,
    back: stature * SHOULDER_DEEP,
  };
  const levels: Level[] = [
    { y: -stature * NECK_END_UP, section: mixed(neckSection, { half: 0, front: 0, back: 0 }, 0.08) },
    { y: -stature * NECK_UP, section: neckSection },
    { y: -stature * SHOULDER_UP, section: around(shoulders, neckSection) },
    {
      y: -stature * CHEST_UP,
      section: withGirth(CHEST_SHAPE, measures.bust ?? Math.max(waist * 1.2, stature * 0.45)),
    },
    { y: 0, section: waistSection },
    { y: hip_level, section: hipSection },
    {
      y: hip_level + stature * BELOW_HIP,
      section: withGirth(HIP_SHAPE, Math.min(hip, stature * 0.62) * 0.94),
    },
  ];
  return {
    section: (y) => sectionAt(levels, y, measures.hip_shape !== undefined),
    hip_level,
    top: levels[0]!.y,
    foot: levels.at(-1)!.y,
    floor: Math.max(measures.waist_height ?? stature * WAIST_HEIGHT, clear),
    neck_level: levels[1]!.y,
    shoulder_level: levels[2]!.y,
  };
}

/**
 * The section between two levels: its shape passes from one to the other. Between waist and hip the girth
 * follows a straight line; over a pad, where `taut`, every line from the waist to the pad's edge is straight.
 */
function sectionAt(levels: readonly Level[], y: number, taut: boolean): Section {
  const after = levels.findIndex((level) => level.y >= y);
  if (after === 0) return levels[0]!.section;
  if (after < 0) return levels.at(-1)!.section;
  const [above, below] = [levels[after - 1]!, levels[after]!];
  const share = (y - above.y) / (below.y - above.y);
  // Above the waist the shape is free, and eased so that the outline has no corners.
  const eased = below.y <= 0 || after === levels.length - 1 ? (1 - Math.cos(Math.PI * share)) / 2 : share;
  const shape = mixed(above.section, below.section, after === 2 ? share : eased);
  if (above.y !== 0 || taut) return shape;
  const girth = girthOf(above.section) + (girthOf(below.section) - girthOf(above.section)) * share;
  return withGirth(shape, girth);
}

/** How far below the waist, plumb, the hip lies when the way along the body is `drop`, on average all round. */
function levelFor(waist: Section, hip: Section, drop: number): number {
  const count = 72;
  const outs = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / count;
    const deep = Math.cos(angle) > 0 ? hip.back - waist.back : hip.front - waist.front;
    return Math.hypot((hip.half - waist.half) * Math.sin(angle), deep * Math.cos(angle));
  });
  const way = (level: number) => outs.reduce((sum, out) => sum + Math.hypot(out, level), 0) / count;
  let [low, high] = [0.05 * drop, drop];
  if (way(low) >= drop) return low;
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (way(middle) < drop) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
