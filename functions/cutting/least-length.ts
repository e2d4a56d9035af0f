/** What no lay can undercut: lengths of cloth that are proved too short before any lay is made. Source: geometry. */
import { boundingBox, type Point, signedArea } from "../geometry/strokes.ts";
import type { LayPiece, LayQuestion } from "../lay.ts";

/** How far a bound and a lay may differ by rounding, as a share. */
const ROUNDING = 1e-9;

/**
 * The length, in the question's unit, below which no lay of all pieces on its one cloth can be: by
 * their area, by the longest of them, or because pieces wider than half the cloth lie one after
 * another. On several cloths it is 0.
 */
export function leastLength({ pieces, cloths, gap }: LayQuestion): number {
  const [cloth, ...others] = cloths;
  if (!cloth || others.length > 0) return 0;
  const { width } = cloth;
  // Grown by half the gap the pieces do not overlap (Brunn-Minkowski gives the least grown area).
  let area = 0;
  let longest = 0;
  let chain = 0;
  let links = 0;
  for (const piece of pieces) {
    const own = Math.abs(signedArea(piece.outline));
    area += piece.quantity * (Math.sqrt(own) + (Math.sqrt(Math.PI) * gap) / 2) ** 2;
    // Turned end for end an outline is as long and as high as before, and so are its chords.
    const turns = new Set(piece.turns.map((turn) => turn % 180));
    const lying = Array.from(turns, (turn) => turned(piece.outline, turn));
    longest = Math.max(longest, Math.min(...lying.map(lengthOf)));
    const chords = lying
      .filter((outline) => heightOf(outline) <= width * (1 + ROUNDING))
      .map((outline) => leastChord(outline, width));
    const least = chords.length > 0 ? Math.min(...chords) : 0;
    if (least === 0) continue;
    chain += piece.quantity * least;
    links += piece.quantity;
  }
  return (
    Math.max(0, area / (width + gap) - gap, longest, chain + Math.max(0, links - 1) * gap) * (1 - ROUNDING)
  );
}

/** The area of all pieces divided by the area of all cloth in stock. Above 1 the pieces can not fit, whatever the lay. */
export function shareOfCloth({ pieces, cloths }: LayQuestion): number {
  const needed = pieces.reduce((sum, { quantity, outline }) => sum + quantity * areaOf(outline), 0);
  // Flaws are not taken off: they may lie over one another or over the border.
  const there = cloths.reduce(
    (sum, { width, length, outline }) => sum + (outline ? areaOf(outline) : width * (length ?? Infinity)),
    0,
  );
  return needed / there;
}

const areaOf = (outline: readonly Point[]): number => Math.abs(signedArea(outline));

const lengthOf = (outline: readonly Point[]): number =>
  boundingBox(outline).right - boundingBox(outline).left;
const heightOf = (outline: readonly Point[]): number => boundingBox(outline).high - boundingBox(outline).low;

function turned(outline: LayPiece["outline"], degrees: number): Point[] {
  const quarters = degrees / 90;
  const angle = (degrees * Math.PI) / 180;
  const exact = (value: number) => (Number.isInteger(quarters) ? Math.round(value) : value);
  const [c, s] = [exact(Math.cos(angle)), exact(Math.sin(angle))];
  return outline.map(([x, y]) => [c * x - s * y, s * x + c * y]);
}

/**
 * The least that an outline covers of the cloth's middle line, wherever it lies across the width;
 * 0 when it need not cross that line.
 */
function leastChord(outline: readonly Point[], width: number): number {
  const { low, high } = boundingBox(outline);
  const tall = high - low;
  if (tall <= (width / 2) * (1 + ROUNDING)) return 0;
  const [from, to] = [
    Math.min(high - width / 2, low + width / 2),
    Math.max(high - width / 2, low + width / 2),
  ];
  const heights = [...new Set([from, to, ...outline.map(([, y]) => y).filter((y) => y > from && y < to)])];
  heights.sort((a, b) => a - b);
  let least = Infinity;
  // Between two corners' heights the chord changes evenly: it is least at one of them.
  if (heights.length === 1) return Math.min(...chordsAt(outline, from, from));
  for (let k = 0; k + 1 < heights.length; k += 1) {
    const [first, last] = chordsAt(outline, heights[k]!, heights[k + 1]!);
    least = Math.min(least, first, last);
  }
  return least;
}

/** The chords at two heights between which the outline has no corner. */
function chordsAt(outline: readonly Point[], from: number, to: number): [number, number] {
  const middle = (from + to) / 2;
  const sides: { at: number; first: number; last: number }[] = [];
  let a = outline.at(-1)!;
  for (let i = 0; i < outline.length; i += 1) {
    const b = outline[i]!;
    if (a[1] > middle !== b[1] > middle) {
      const slope = (b[0] - a[0]) / (b[1] - a[1]);
      const x = (y: number) => a[0] + (y - a[1]) * slope;
      sides.push({ at: x(middle), first: x(from), last: x(to) });
    }
    a = b;
  }
  sides.sort((one, other) => one.at - other.at);
  let [first, last] = [0, 0];
  for (let i = 0; i + 1 < sides.length; i += 2) {
    first += sides[i + 1]!.first - sides[i]!.first;
    last += sides[i + 1]!.last - sides[i]!.last;
  }
  return [first, last];
}
