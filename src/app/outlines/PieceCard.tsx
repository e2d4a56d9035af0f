/** One piece that was found: drawn with its edges numbered, with its size, and what the maker says of it. */

import { useId } from "react";
import { writePath } from "../../../functions/geometry/path.ts";
import { phrase, plural } from "../../../functions/phrase.ts";
import { edgeLabel } from "../../../functions/pieces/edge-names.ts";
import { edgeMiddle } from "../../../functions/pieces/edges.ts";
import {
  edgeLength,
  outlinePath,
  type Piece,
  pieceArea,
  pieceBounds,
} from "../../../functions/pieces/piece.ts";
import type { Rule } from "../../engine/show.ts";
import { show } from "../../engine/show.ts";
import { type Choice, turnOf } from "./use-outlines.ts";

interface Props {
  readonly piece: Piece;
  /** The book's unit and marks; null as long as the drawing's size is not known. */
  readonly rule: Rule | null;
  readonly said: readonly string[];
  readonly choice: Choice;
  readonly onChange: (change: Partial<Choice>) => void;
  /** The edge whose length is asked for, counted from 0. */
  readonly asked: number | null;
  readonly onEdge: (edge: number) => void;
}

export function PieceCard({ piece, rule, said, choice, onChange, asked, onEdge }: Props) {
  const id = useId();
  const box = pieceBounds(piece);
  const [wide, tall] = [box.right - box.left, box.high - box.low];
  const length = (figure: number) => (rule ? `${show(figure, "length", rule)} ${rule.unit}` : null);
  const size = rule
    ? `${show(wide, "length", rule)} × ${show(tall, "length", rule)} ${rule.unit}, ${show(pieceArea(piece), "area", rule)}`
    : phrase`size not known yet`;
  const { edges, marks } = piece;
  const isTurn = turnOf(choice.turn) !== null;
  return (
    <li className={choice.take ? "outlines-piece" : "outlines-piece outlines-left"}>
      <PiecePicture
        piece={piece}
        label={phrase`${choice.name}, ${size}, ${edges.length} edges`}
        asked={asked}
        onEdge={onEdge}
        edgeWords={(edge) =>
          [edgeLabel(piece, edge + 1), length(edgeLength(edges[edge]!))].filter(Boolean).join(", ")
        }
      />
      <div className="outlines-says">
        <label className="outlines-take">
          <input
            type="checkbox"
            checked={choice.take}
            onChange={(event) => onChange({ take: event.target.checked })}
          />
          {phrase` Take `}
          <span className="unseen">{choice.name}</span>
        </label>
        <label>
          <span>{phrase`Name`}</span>
          <input
            dir="auto"
            value={choice.name}
            maxLength={60}
            onChange={(event) => onChange({ name: event.target.value })}
          />
        </label>
        <div className="outlines-turn">
          <label>
            <span>{phrase`Turn by`}</span>
            <input
              value={choice.turn}
              inputMode="decimal"
              aria-invalid={!isTurn}
              aria-describedby={`${id}-turn`}
              onChange={(event) => onChange({ turn: event.target.value })}
            />
            <span>°</span>
          </label>
          <button
            type="button"
            onClick={() => onChange({ turn: String(((turnOf(choice.turn) ?? 0) + 90) % 360) })}
          >{phrase`A quarter more`}</button>
        </div>
        <p id={`${id}-turn`} className={isTurn ? "aside" : "look"}>
          {isTurn ? phrase`The grain runs down the drawing.` : phrase`The turn is in degrees, such as 90.`}
        </p>
        <p className="outlines-size">{size}</p>
        <p className="aside">
          {phrase`${plural(edges.length, "# edge", "# edges")}, ${plural(marks.length, "# mark", "# marks")}.`}
          {said.length > 0 && ` ${said.join(" ")}`}
        </p>
      </div>
    </li>
  );
}

interface PictureProps {
  readonly piece: Piece;
  readonly label: string;
  readonly asked: number | null;
  readonly onEdge: (edge: number) => void;
  readonly edgeWords: (edge: number) => string;
}

/** More numbers than this would lie over one another. */
const MOST_NUMBERED = 24;

function PiecePicture({ piece, label, asked, onEdge, edgeWords }: PictureProps) {
  const { left, right, low, high } = pieceBounds(piece);
  const size = Math.max(right - left, high - low);
  const margin = 0.1 * size;
  const line = (edge: Piece["edges"][number]) =>
    writePath([{ start: edge[0]!.from, edges: [edge], closed: false }]);
  const grain = 0.3 * (high - low);
  const [x, y] = [left + 0.5 * (right - left), low + 0.35 * (high - low)];
  const head = 0.03 * size;
  return (
    <svg
      className="picture outlines-picture"
      viewBox={`${left - margin} ${low - margin} ${right - left + 2 * margin} ${high - low + 2 * margin}`}
      role="img"
      aria-label={label}
    >
      <path className="outline" d={outlinePath(piece)} />
      {piece.marks.map(({ line: mark, role }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two marks may be the same
        <path key={i} className={`line line-${role}`} d={line(mark)} />
      ))}
      <path
        className="line line-grain"
        d={`M ${x} ${y} V ${y + grain} M ${x - head} ${y + grain - 2 * head} L ${x} ${y + grain} L ${x + head} ${y + grain - 2 * head}`}
      />
      {piece.edges.map((edge, i) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the list of what is known is the way by keyboard
        <g
          // biome-ignore lint/suspicious/noArrayIndexKey: edges are known by their numbers
          key={i}
          className={asked === i ? "outlines-edge outlines-asked" : "outlines-edge"}
          onClick={() => onEdge(i)}
        >
          <title>{edgeWords(i)}</title>
          <path className="outlines-hit" d={line(edge)} />
          <path className="outlines-line" d={line(edge)} />
        </g>
      ))}
      {piece.edges.length <= MOST_NUMBERED &&
        piece.edges.map((edge, i) => {
          const [atX, atY] = edgeMiddle(edge);
          return (
            <text
              // biome-ignore lint/suspicious/noArrayIndexKey: edges are known by their numbers
              key={i}
              x={atX}
              y={atY}
              fontSize={0.07 * size}
            >
              {i + 1}
            </text>
          );
        })}
    </svg>
  );
}
