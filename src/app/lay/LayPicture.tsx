/** A lay on its cloths to scale: the tape along the selvedge, every copy with its grain, what is left over hatched. */
import { useId } from "react";
import type { Mark } from "../../../functions/fractions.ts";
import type { Point } from "../../../functions/geometry.ts";
import { grainLine } from "../../../functions/grain.ts";
import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import type { Unit } from "../../../functions/units.ts";
import { heartOf } from "../../lay/fault.ts";
import { boundsOf, turned } from "../../lay/outline.ts";
import { copyKey, copyName } from "./arrange.ts";
import { ticksOf } from "./ruler.ts";

interface Props {
  readonly question: LayQuestion;
  readonly lay: Lay;
  /** Pixels to one unit of length. */
  readonly scale: number;
  readonly unit: Unit;
  readonly mark: Mark;
  /** What the whole picture shows, for who can not see it. */
  readonly title: string;
  readonly chosen?: string | null;
  readonly pins?: ReadonlySet<string>;
  /** Where the pointer would have the copy that is dragged. */
  readonly wish?: Placement | null;
}

/** Room about the cloths in pixels: for the tape above, and the cloth's name. */
const ABOVE = 30;
const BESIDE = 8;
const BETWEEN = 14;

export const MARGIN = 2 * BESIDE;

/** The length of each cloth that is drawn: all of it when it is in hand, else what is used. */
const longOf = ({ cloths }: LayQuestion, lay: Lay): number[] =>
  cloths.map(({ length }, i) => length ?? lay.lengths[i] ?? 0);

/** How long and how wide all cloths are together, in units of length. */
export function extent(question: LayQuestion, lay: Lay): { long: number; wide: number } {
  return {
    long: Math.max(...longOf(question, lay), 1e-6),
    wide: question.cloths.reduce((sum, { width }) => sum + width, 0),
  };
}

export function LayPicture(props: Props) {
  const { question, lay, scale, unit, mark, title, chosen, pins, wish } = props;
  const hatch = useId();
  const long = longOf(question, lay);
  let top = 0;
  const tops = question.cloths.map(({ width }) => {
    const own = top + ABOVE;
    top = own + width * scale + BETWEEN;
    return own;
  });
  const wide = Math.max(...long) * scale + MARGIN;
  return (
    <svg className="lay-picture" width={wide} height={top} role="img" aria-label={title}>
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="lay-hatch" d="M 0 0 V 7" />
        </pattern>
      </defs>
      {question.cloths.map(({ name, width, outline, flaws = [] }, i) => (
        <g key={name} transform={`translate(${BESIDE} ${tops[i]})`}>
          <Tape length={long[i]!} scale={scale} unit={unit} mark={mark} />
          <rect className="lay-cloth" width={long[i]! * scale} height={width * scale} />
          {outline ? (
            <path d={pathOf(outline, scale)} fill={`url(#${hatch})`} className="lay-rest" />
          ) : (
            <rect width={long[i]! * scale} height={width * scale} fill={`url(#${hatch})`} />
          )}
          {flaws.map((flaw) => (
            <path key={flaw.join()} d={pathOf(flaw, scale)} className="lay-flaw" />
          ))}
          <path
            className="lay-selvedge"
            d={`M 0 0 H ${long[i]! * scale} M 0 ${width * scale} h ${long[i]! * scale}`}
          />
          {lay.placements
            .filter(({ cloth }) => cloth === i)
            .map((placement) => (
              <Copy
                key={copyKey(placement)}
                question={question}
                placement={placement}
                scale={scale}
                chosen={copyKey(placement) === chosen}
                pinned={pins?.has(copyKey(placement)) ?? false}
              />
            ))}
          {wish?.cloth === i && (
            <path
              className="lay-wish"
              d={pathOf(turned(question.pieces[wish.piece]!.outline, wish.turn, wish.x, wish.y), scale)}
            />
          )}
        </g>
      ))}
    </svg>
  );
}

const pathOf = (points: readonly Point[], scale: number): string =>
  `M${points.map(([x, y]) => `${(x * scale).toFixed(2)} ${(y * scale).toFixed(2)}`).join("L")}Z`;

function Tape({ length, scale, unit, mark }: { length: number; scale: number; unit: Unit; mark: Mark }) {
  const ticks = ticksOf(length, unit, mark, 34 / scale);
  return (
    <g className="lay-tape">
      <path d={ticks.map(({ at, label }) => `M${at * scale} -3v${label === null ? -4 : -8}`).join("")} />
      {ticks.map(
        ({ at, label }, i) =>
          label !== null && (
            <text key={at} x={at * scale} y={-14} textAnchor={i === 0 ? "start" : "middle"}>
              {label}
            </text>
          ),
      )}
    </g>
  );
}

interface CopyProps {
  readonly question: LayQuestion;
  readonly placement: Placement;
  readonly scale: number;
  readonly chosen: boolean;
  readonly pinned: boolean;
}

function Copy({ question, placement, scale, chosen, pinned }: CopyProps) {
  const { outline, turns } = question.pieces[placement.piece]!;
  const points = turned(outline, placement.turn);
  const [cx, cy] = heartOf(points);
  const { left, right } = boundsOf(points);
  const name = copyName(question, placement);
  const room = (right - left) * scale;
  const [from, to] = turned(grainLine(outline), placement.turn) as [Point, Point];
  const at = ([x, y]: Point): string => `${(x * scale).toFixed(2)} ${(y * scale).toFixed(2)}`;
  return (
    <g
      className={chosen ? "lay-copy lay-chosen" : "lay-copy"}
      data-copy={copyKey(placement)}
      transform={`translate(${placement.x * scale} ${placement.y * scale})`}
    >
      <title>{pinned ? `${name}, pinned` : name}</title>
      <path className="lay-cut" d={pathOf(points, scale)} />
      <path
        className="lay-grain"
        d={`M${at(from)}L${at(to)}${barb(to, from, scale)}${turns.length > 1 ? barb(from, to, scale) : ""}`}
      />
      {room > 5.5 * name.length && (
        <text x={cx * scale} y={cy * scale - 5}>
          {name}
        </text>
      )}
      {pinned && (
        <path
          className="lay-pin"
          d={`M${(cx * scale).toFixed(2)} ${(cy * scale + 16).toFixed(2)}v-8m-4 -4a4 4 0 1 1 8 0a4 4 0 1 1 -8 0`}
        />
      )}
    </g>
  );
}

/** An arrow's head at `tip`, in pixels, pointing away from `tail`. */
function barb(tip: Point, tail: Point, scale: number): string {
  const [dx, dy] = [tip[0] - tail[0], tip[1] - tail[1]];
  const long = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [(dx / long) * 6, (dy / long) * 6];
  const [x, y] = [tip[0] * scale, tip[1] * scale];
  return `M${x - ux + uy / 2} ${y - uy - ux / 2}L${x} ${y}L${x - ux - uy / 2} ${y - uy + ux / 2}`;
}
