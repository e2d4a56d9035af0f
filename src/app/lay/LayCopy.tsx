/** One copy on the cloth: its cut line, grain, fold, name and pin. */

import { memo } from "react";
import { grainLine } from "../../../functions/drawing/grain-line.ts";
import { distance, type Point } from "../../../functions/geometry/strokes.ts";
import type { LayPiece, LayQuestion, Placement } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { type Spot, spotFor } from "../../lay/name-spot.ts";
import { turned } from "../../lay/outline.ts";
import { TEXT_SIZE } from "../text-size.ts";
import { copyKey, copyName } from "./arrange.ts";
import { liesEitherWay } from "./words.ts";

/** A text's measure in pixels: a letter is about so wide, a line so high. */
const LETTER = 5.9 * TEXT_SIZE;
const LINE = 11 * TEXT_SIZE;
/** How wide a figure of a piece's number is. */
const FIGURE = 7 * TEXT_SIZE;
/** A grain line's length at most, in pixels. */
const LONGEST = 44;

/** How a piece is called on the cloth: by name, by its number in the list beneath where that is too long, or not at all. */
export interface Label {
  readonly spot: Spot | null;
  readonly byNumber: boolean;
}

/** The label of every copy of a piece that lies turned this way, at `scale` pixels to one unit. */
export function labelOf(piece: LayPiece, number: number, turn: number, scale: number): Label {
  const grow = ([x, y]: Point): Point => [x * scale, y * scale];
  const outline = turned(piece.outline, turn).map(grow);
  const [from, to] = grainOf(piece, turn, scale).map(grow) as [Point, Point];
  const letters = piece.name.length + (piece.quantity > 1 ? 1 + String(piece.quantity).length : 0);
  const spot = spotFor(outline, letters * LETTER, LINE, [from, to]);
  if (spot) return { spot, byNumber: false };
  return { spot: spotFor(outline, String(number).length * FIGURE, LINE, [from, to]), byNumber: true };
}

/** The grain line of a piece that lies turned so, no longer than is easily seen. */
function grainOf(piece: LayPiece, turn: number, scale: number): [Point, Point] {
  const [from, to] = turned(grainLine(piece.outline), turn) as [Point, Point];
  const share = Math.min(0.5, LONGEST / 2 / (scale * distance(from, to)));
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const off: Point = [(to[0] - from[0]) * share, (to[1] - from[1]) * share];
  return [
    [middle[0] - off[0], middle[1] - off[1]],
    [middle[0] + off[0], middle[1] + off[1]],
  ];
}

interface Props {
  readonly question: LayQuestion;
  readonly placement: Placement;
  readonly scale: number;
  readonly label: Label;
  readonly chosen: boolean;
  readonly pinned: boolean;
}

export const LayCopy = memo(function LayCopy(props: Props) {
  const { question, placement, scale, label, chosen, pinned } = props;
  const piece = question.pieces[placement.piece]!;
  const { outline, fold } = piece;
  const points = turned(outline, placement.turn);
  const name = copyName(question, placement);
  const at = ([x, y]: Point): string => `${(x * scale).toFixed(2)} ${(y * scale).toFixed(2)}`;
  const [from, to] = grainOf(piece, placement.turn, scale);
  const pin = at([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
  return (
    <g
      className={chosen ? "lay-copy lay-chosen" : "lay-copy"}
      data-copy={copyKey(placement)}
      transform={`translate(${placement.x * scale} ${placement.y * scale})`}
    >
      <title>{pinned ? phrase`${name}, pinned` : name}</title>
      <path className="lay-cut" d={pathOf(points, scale)} />
      {fold && <path className="lay-fold" d={`M${turned(fold, placement.turn).map(at).join("L")}`} />}
      <path
        className="lay-grain"
        d={`M${at(from)}L${at(to)}${barb(to, from, scale)}${liesEitherWay(piece) ? barb(from, to, scale) : ""}`}
      />
      {label.spot && (
        <text
          x={label.spot.at[0]}
          y={label.spot.at[1]}
          dy="0.36em"
          {...(label.spot.turn === 0 ? {} : { transform: `rotate(-90 ${label.spot.at.join(" ")})` })}
        >
          {label.byNumber ? placement.piece + 1 : name}
        </text>
      )}
      {pinned && <path className="lay-pin" d={`M${pin}m-4.5 0a4.5 4.5 0 1 1 9 0a4.5 4.5 0 1 1 -9 0`} />}
    </g>
  );
});

export const pathOf = (points: readonly Point[], scale: number): string =>
  `M${points.map(([x, y]) => `${(x * scale).toFixed(2)} ${(y * scale).toFixed(2)}`).join("L")}Z`;

/** An arrow's head at `tip`, in pixels, pointing away from `tail`. */
function barb(tip: Point, tail: Point, scale: number): string {
  const [dx, dy] = [tip[0] - tail[0], tip[1] - tail[1]];
  const long = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [(dx / long) * 6, (dy / long) * 6];
  const [x, y] = [tip[0] * scale, tip[1] * scale];
  return `M${x - ux + uy / 2} ${y - uy - ux / 2}L${x} ${y}L${x - ux - uy / 2} ${y - uy + ux / 2}`;
}
