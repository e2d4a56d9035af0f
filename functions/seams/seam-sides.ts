/** The two sides of a seam: their lengths in the garment, the wanted difference, and their angles to the grain. */
import type { CallContext, ListRow } from "../define.ts";
import { degrees, flatten } from "../geometry/strokes.ts";
import { phrase, plural, written } from "../phrase.ts";
import { pieceBounds } from "../pieces/piece.ts";
import { Refusal, refusingAt } from "../refusal.ts";
import { orderedList } from "../verdict.ts";
import { type GarmentEdge, garmentEdge, pieceCalled, piecesOf } from "./piece-list.ts";
import { cellOfSeams, type Seam } from "./seam-list.ts";

export interface SeamPart extends GarmentEdge {
  /** How many such edges are in succession at one such seam. */
  readonly times: number;
}

export interface SeamSide {
  /** In succession; an edge named several times stands several times. */
  readonly parts: readonly SeamPart[];
  /** All edges of the side together, at one seam. */
  readonly length: number;
  /** "the front's waist (twice) and the back's waist" */
  readonly text: string;
  /** Whether the text names more than one edge, so that its verb is in the plural. */
  readonly several: boolean;
}

export interface MeasuredSeam {
  readonly sides: readonly [SeamSide, SeamSide];
  /** How many such seams the garment has. */
  readonly seams: number;
}

/** The greatest number by which both can be divided. */
export const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/**
 * Both sides of a seam. How many edges of each name the garment has follows from the list of pieces; what
 * all of them can be divided by is how many such seams there are, so a side seam is compared one to one and
 * a waist of two fronts and a back with the whole band.
 */
export function measuredSeam(seam: Seam, pieceRows: readonly ListRow[]): MeasuredSeam {
  const pieces = piecesOf(pieceRows);
  const where = written`row ${seam.number} of the list of seams`;
  const found = seam.sides.map((side, i) => {
    const [piece, edge] = (i === 0 ? ["piece", "edge"] : ["other", "otherEdge"]) as ["piece", "edge"];
    return side.map((named) => {
      const of = refusingAt(cellOfSeams(seam.places, piece), () => pieceCalled(pieces, named.piece, where));
      return refusingAt(cellOfSeams(seam.places, edge), () => garmentEdge(of, named.edge, where));
    });
  }) as [GarmentEdge[], GarmentEdge[]];
  refusingAt(cellOfSeams(seam.places, "other"), () => refuseSelf(found, where));
  const [a, b] = found;
  const copies = found.flat().map((edge) => edge.copies);
  const own = isSelf(found);
  const seams = own ? copies[0]! / 2 : copies.reduce(commonDivisor);
  return {
    seams,
    sides: [
      refusingAt(cellOfSeams(seam.places, "piece"), () => sideOf(a, own ? 1 : seams, own, where)),
      refusingAt(cellOfSeams(seam.places, "other"), () => sideOf(b, own ? 1 : seams, own, where)),
    ],
  };
}

/** Says of each piece at the seam whose number is blank in the list of pieces that it counts as 1. */
export function doubtCounts({ sides }: MeasuredSeam, doubt: CallContext["doubt"]): void {
  for (const piece of new Set(sides.flatMap(({ parts }) => parts.map((part) => part.piece))))
    if (piece.blankCount)
      doubt(
        phrase`the list of pieces does not say how many of ${piece.name} the garment has, and 1 is taken: type how many`,
        piece.blankCount,
      );
}

/** Of how many such seams the compared lengths are one, as it stands beside the answer; `whole` is the length in question. */
export function seamsBeside(seams: number, whole: number, say: (length: number) => string): string {
  if (seams === 1) return phrase`the whole seam: the garment has one such seam`;
  return seams === 2
    ? phrase`one of ${seams} such seams of the garment, not all round: both together ${say(seams * whole)}`
    : phrase`one of ${seams} such seams of the garment, not all round: all ${seams} together ${say(seams * whole)}`;
}

/** The words of the Working for how many such seams the garment has. The lengths beside it are those of one seam. */
export const seamsText = (seams: number): string =>
  seams === 1
    ? phrase`how many such seams the garment has`
    : phrase`how many such seams the garment has; the lengths are those of one of them, not of all`;

const same = (a: GarmentEdge, b: GarmentEdge): boolean =>
  a.piece.name === b.piece.name && a.number === b.number;

/** One edge sewn to the same edge of its twin, such as a centre back seam. */
const isSelf = ([a, b]: readonly [GarmentEdge[], GarmentEdge[]]): boolean =>
  a.length === 1 && b.length === 1 && same(a[0]!, b[0]!);

function refuseSelf([a, b]: readonly [GarmentEdge[], GarmentEdge[]], where: string): void {
  const twice = a.find((one) => b.some((other) => same(one, other)));
  if (!twice) return;
  if (!isSelf([a, b])) throw new Refusal(phrase`${where} has ${twice.text} on both sides of one seam`);
  if (twice.copies % 2 === 1)
    throw new Refusal(
      phrase`${where} sews ${twice.text} to itself, and the garment has ${plural(twice.copies, "one such edge", "# such edges, which are no pairs")}: name the edge that it is sewn to, or correct how many in the list of pieces`,
    );
}

function sideOf(edges: readonly GarmentEdge[], seams: number, own: boolean, where: string): SeamSide {
  const parts = edges.map((edge): SeamPart => {
    const named = edges.filter((one) => same(one, edge)).length;
    const times = own ? 1 : edge.copies / seams / named;
    if (!Number.isInteger(times))
      throw new Refusal(
        phrase`${where} names ${edge.text} ${named} times, and the garment has ${edge.copies} such edges: name it once, or as often as the garment has it`,
      );
    return { ...edge, times };
  });
  const seen = new Set<string>();
  const words = parts.flatMap((part) => {
    if (seen.has(part.text)) return [];
    seen.add(part.text);
    const count = part.times * parts.filter((one) => one.text === part.text).length;
    return [count === 1 ? part.text : written`${part.text} (${count} times)`];
  });
  return {
    parts,
    length: parts.reduce((sum, { length, times }) => sum + times * length, 0),
    text: orderedList(words, "and"),
    several: words.length > 1,
  };
}

/**
 * The mean angle of an edge to the grain in degrees, 0 along it and 90 across, each part of the edge by its
 * length; a grain across or on the bias turns the piece first.
 */
export function angleToGrain({ piece, outline, number }: GarmentEdge): number {
  const { left, right, low, high } = pieceBounds(outline);
  const tolerance = Math.max(right - left, high - low) * 1e-4;
  let [sum, whole] = [0, 0];
  for (const stroke of outline.edges[number - 1]!) {
    const points = [stroke.from, ...flatten(stroke, tolerance)];
    points.slice(1).forEach(([x, y], i) => {
      const [dx, dy] = [x - points[i]![0], y - points[i]![1]];
      const long = Math.hypot(dx, dy);
      if (long === 0) return;
      const signed = degrees(Math.atan2(dx, dy));
      const turn = { straight: 0, cross: 90, bias: 45 }[piece.grain];
      const off = (((signed + turn) % 180) + 180) % 180;
      sum += long * Math.min(off, 180 - off);
      whole += long;
    });
  }
  return whole === 0 ? 0 : sum / whole;
}

/** The mean angle of a side's edges to the grain. */
export const sideAngle = ({ parts, length }: SeamSide): number =>
  parts.reduce((sum, part) => sum + part.times * part.length * angleToGrain(part), 0) / length;

/** Whether an angle to the grain is near the bias, where cloth stretches most. */
export const isBias = (angle: number): boolean => angle >= 25 && angle <= 65;

/** The wanted difference of a seam's sides. Returns null when its row says only how it is sewn. */
export function wantedDifference({ difference, fullness, how }: Seam, second: number): number | null {
  if (difference !== null) return difference;
  if (fullness !== null) return (fullness - 1) * second;
  return how === "plain" ? 0 : null;
}
