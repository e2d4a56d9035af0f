/**
 * A sleeve in two pieces, a top sleeve and an under sleeve, bent at the elbow.
 *
 * The one-piece cap is cut upright at its two seams, and the parts beyond them are joined at the
 * underarm to the cap of the under sleeve: both caps together are the whole cap. Folded flat, the sleeve has a front and a back
 * fold, each a quarter of its width from the underarm; the seams lie beyond the folds on the under side.
 *
 *        top sleeve            under sleeve, seen from its right side as the top is
 *          .-´`-.
 *        .´      `.            front       back
 *       |          |             |`-.___.-´|
 *       |          |              |        |
 *       |         |               |        |       elbow
 *        \         \             /        /
 *         \_________\           /________/
 *
 * Each seam is one line on both pieces, mirrored, so that the edges sewn together are equal whatever the bend. It runs
 * straight down the grain to the underarm, then curves to the elbow and to the wrist. The back fold
 * goes straight down to the elbow; the front one comes in by all that the sleeve narrows. Below the
 * elbow the forearm turns to the front by the bend, and the wrist edge lies square to it.
 */

import { isBelow } from "../compared-figures.ts";
import { reaching } from "../geometry/increasing-root.ts";
import { IDENTITY, moveEdge } from "../geometry/isometry.ts";
import { type Edge, line, type Point, pointAt, strokePart } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { edgeLength, mirrorEdge, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { type Cap, capEdge } from "./sleeve-cap.ts";
import { smoothFromUpright } from "./upright-seam.ts";

export interface TwoPieceMeasures {
  readonly cap: Cap;
  /** Widths all round, at the underarm, at the elbow and along the wrist edge. */
  readonly bicep: number;
  readonly elbow: number;
  readonly wrist: number;
  /** From the crown down to the elbow, and over it to the wrist along the middle. */
  readonly elbow_length: number;
  readonly length: number;
  /** How far the forearm turns to the front, in radians. */
  readonly bend: number;
  /** How far each seam lies beyond its fold, on the under side. */
  readonly front_shift: number;
  readonly back_shift: number;
}

/** A seam from its top at (0, 0), the front of the sleeve to the right. */
interface Seam {
  readonly line: Edge;
  /** Along it from its top down to the elbow. */
  readonly to_elbow: number;
}

export interface TwoPieces {
  readonly top: Piece;
  readonly under: Piece;
  readonly front_seam: Seam;
  readonly back_seam: Seam;
  /** Where the seams cut the cap, as lengths along it from the back underarm. */
  readonly back_cut: number;
  readonly front_cut: number;
}

export function twoPieceSleeve(measures: TwoPieceMeasures): TwoPieces {
  const { cap, bicep, elbow, front_shift, back_shift } = measures;
  const quarter = bicep / 4;
  for (const [name, shift] of [["front_shift", front_shift], ["back_shift", back_shift]] as const) {
    if (shift >= quarter * (1 - 1e-6))
      throw new Refusal(
        (say) =>
          phrase`${name} must be less than a quarter of the bicep, ${say(quarter, shift)}, where the seam reaches the underarm, not ${say(shift, quarter)}`,
      );
  } // biome-ignore format: a table
  const shift = front_shift + back_shift;
  if (!isBelow(2 * shift, 0.95 * elbow))
    throw new Refusal(
      (say) =>
        phrase`front_shift and back_shift must be less than half the elbow together, ${say(elbow / 2, shift)}, not ${say(shift, elbow / 2)}`,
    );
  const whole = capEdge(cap);
  const cut = {
    back: cutAt(whole, quarter - back_shift - cap.back),
    front: cutAt(whole, cap.front - quarter + front_shift),
  };
  const { front, back } = seams(measures, cap.height - cut.back.at[1], cap.height - cut.front.at[1]);
  const top = between(
    moved(front.line, cut.front.at),
    moved(back.line, cut.back.at),
    part(whole, cut.back, cut.front),
  );
  // The under sleeve goes on where the front seam is, through the underarm to the back seam.
  const [start, end]: [Point, Point] = [cut.front.at, [cut.back.at[0] + bicep, cut.back.at[1]]];
  const under = between(moved(mirrorEdge(back.line), end), moved(mirrorEdge(front.line), start), [
    ...part(whole, cut.front, null),
    ...moved(part(whole, null, cut.back), [bicep, 0]),
  ]);
  return {
    top: pieceOf(top, ["cap", "front seam", "wrist", "back seam"]),
    under: pieceOf(under, ["cap", "back seam", "wrist", "front seam"]),
    front_seam: front,
    back_seam: back,
    back_cut: edgeLength(part(whole, null, cut.back)),
    front_cut: edgeLength(part(whole, null, cut.front)),
  };
}

/** The outline from the cap down the right seam, along the wrist and up the left seam; both seams are given downwards. */
const between = (right: Edge, left: Edge, cap: Edge): Edge[] => [
  cap,
  right,
  [line(right.at(-1)!.to, left.at(-1)!.to)],
  reverseEdge(left),
];

interface Cut {
  readonly index: number;
  readonly share: number;
  readonly at: Point;
}

/** The place of the cap at this x; along the cap x grows all the way. */
function cutAt(cap: Edge, x: number): Cut {
  const found = cap.findIndex(({ to }) => to[0] >= x);
  const index = found < 0 ? cap.length - 1 : found;
  const share = reaching((t) => pointAt(cap[index]!, t)[0], x, 0, 1);
  return { index, share, at: pointAt(cap[index]!, share) };
}

/** The cap from one cut to another; null is its beginning or end. */
function part(cap: Edge, from: Cut | null, to: Cut | null): Edge {
  const [first, last] = [from?.index ?? 0, to?.index ?? cap.length - 1];
  return cap.slice(first, last + 1).flatMap((stroke, i) => {
    const start = i === 0 ? (from?.share ?? 0) : 0;
    const end = first + i === last ? (to?.share ?? 1) : 1;
    return end - start > 1e-12 ? [strokePart(stroke, start, end)] : [];
  });
}

const moved = (edge: Edge, [e, f]: Point): Edge => moveEdge({ ...IDENTITY, e, f }, edge);

/** Both seams from their tops, which lie `back_rise` and `front_rise` above the underarm. */
function seams(
  measures: TwoPieceMeasures,
  back_rise: number,
  front_rise: number,
): { front: Seam; back: Seam } {
  const { cap, bicep, elbow, wrist, elbow_length, length, bend, front_shift, back_shift } = measures;
  const upper = elbow_length - cap.height;
  const fore = length - elbow_length;
  if (isBelow(upper, 0.05 * length))
    throw new Refusal(
      (say) =>
        phrase`elbow_length must be more than the cap, which is ${say(cap.height, elbow_length)} high, not ${say(elbow_length, cap.height)}`,
    );
  if (isBelow(fore, 0.05 * length))
    throw new Refusal(
      (say) =>
        phrase`length must be more than the ${say(elbow_length, length)} down to the elbow, not ${say(length, elbow_length)}`,
    );
  const shift = front_shift + back_shift;
  if (!isBelow(2 * shift, 0.95 * wrist))
    throw new Refusal(
      (say) =>
        phrase`front_shift and back_shift must be less than half the wrist together, ${say(wrist / 2, shift)}, not ${say(shift, wrist / 2)}`,
    );
  // The wrist edges, (across ± shift, up) long, are as long together as the wrist: (across, up) lies on
  // the ellipse about the shifts whose long axis is half the wrist.
  const [long, off] = [wrist / 2, (2 * shift) / wrist];
  const across = long * Math.sqrt((1 - off * off) / (1 - (off * Math.cos(bend)) ** 2));
  const [dx, dy] = [(across * Math.cos(bend)) / 2, (across * Math.sin(bend)) / 2];
  // From the back fold at the underarm: the elbow straight below, the middle of the wrist ahead of its middle.
  const middle: Point = [elbow / 4 + fore * Math.sin(bend), upper + fore * Math.cos(bend)];
  const seam = (rise: number, at: number, narrower: number, end: Point): Seam => {
    const places: [Point, Point, Point] = [
      [0, rise],
      [-narrower, rise + upper],
      [end[0] - at, rise + end[1]],
    ];
    const [toElbow, toWrist] = smoothFromUpright(places);
    const straight: Edge = rise > 1e-9 * length ? [line([0, 0], places[0])] : [];
    return {
      line: [...straight, toElbow!, toWrist!],
      to_elbow: edgeLength([...straight, toElbow!]),
    };
  };
  return {
    back: seam(back_rise, 0, 0, [middle[0] - dx, middle[1] + dy]),
    front: seam(front_rise, bicep / 2, (bicep - elbow) / 2, [middle[0] + dx, middle[1] - dy]),
  };
}
