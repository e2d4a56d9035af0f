/** A lay on its cloths to scale: the tape along the selvedge, every copy with its grain, what is left over hatched. */

import { useId, useMemo } from "react";
import type { Lay, LayCloth, LayQuestion, Placement } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { lengthText, type Rule } from "../../engine/show.ts";
import { turned } from "../../lay/outline.ts";
import { ticksOf } from "../../lay/ruler.ts";
import { TEXT_SIZE } from "../text-size.ts";
import { copyKey } from "./arrange.ts";
import { type Label, LayCopy, labelOf, pathOf } from "./LayCopy.tsx";
import { layInWords } from "./words.ts";

interface Props {
  readonly question: LayQuestion;
  readonly lay: Lay;
  /** Pixels to one unit of length. */
  readonly scale: number;
  readonly rule: Rule;
  /** What the whole picture shows, for readers who can't see it. */
  readonly title: string;
  readonly chosen?: string | null;
  readonly pins?: ReadonlySet<string>;
  /** Where the pointer would have the copy that is dragged. */
  readonly wish?: Placement | null;
}

/** Room about the cloths in pixels: for the tape above, and what is written below. */
const ABOVE = 30 * TEXT_SIZE;
const BELOW = 8;
const CAPTION = 14 * TEXT_SIZE;
const BESIDE = 8;

/** How many pixels a figure on the tape takes, and the last one. */
const FIGURE = 34 * TEXT_SIZE;
const LAST = 64 * TEXT_SIZE;

/** The length of each cloth that is drawn: all of it when it is in hand, else what is used. */
export const longOf = ({ cloths }: LayQuestion, lay: Lay): number[] =>
  cloths.map(({ length }, i) => length ?? lay.lengths[i] ?? 0);

export const MARGIN = 2 * BESIDE;

export function LayPicture(props: Props) {
  const { question, lay, scale, rule, title, chosen, pins, wish } = props;
  const { cloths, pieces } = question;
  const hatch = useId();
  const labels = useMemo(() => labelBook(question, scale), [question, scale]);
  const long = longOf(question, lay);
  let top = 0;
  const tops = cloths.map(({ width, length }) => {
    const own = top + ABOVE;
    top = own + width * scale + BELOW + (length === null ? 0 : CAPTION);
    return own;
  });
  const wide = Math.max(...long) * scale + MARGIN;
  const numbered = [...new Set(lay.placements.filter((p) => labels(p).byNumber).map(({ piece }) => piece))];
  return (
    <>
      <svg
        className="lay-picture"
        width={wide}
        height={top}
        role="img"
        aria-label={title}
        aria-describedby={`${hatch}-words`}
      >
        <desc id={`${hatch}-words`}>{layInWords(question, lay, (length) => lengthText(length, rule))}</desc>
        <defs>
          <pattern
            id={hatch}
            width="7"
            height="7"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path className="lay-hatch" d="M 0 0 V 7" />
          </pattern>
        </defs>
        {cloths.map((cloth, i) => (
          <g key={cloth.name} transform={`translate(${BESIDE} ${tops[i]})`}>
            <Tape length={long[i]!} scale={scale} rule={rule} />
            <Cloth cloth={cloth} long={long[i]! * scale} scale={scale} fill={`url(#${hatch})`} />
            {lay.placements
              .filter((placement) => placement.cloth === i)
              .map((placement) => (
                <LayCopy
                  key={copyKey(placement)}
                  question={question}
                  placement={placement}
                  scale={scale}
                  label={labels(placement)}
                  chosen={copyKey(placement) === chosen}
                  pinned={pins?.has(copyKey(placement)) ?? false}
                />
              ))}
            {cloth.length !== null && lay.lengths[i]! > 0 && (
              <path className="lay-end" d={`M${lay.lengths[i]! * scale} -2v${cloth.width * scale + 4}`} />
            )}
            {wish?.cloth === i && (
              <path
                className="lay-wish"
                d={pathOf(turned(pieces[wish.piece]!.outline, wish.turn, wish.x, wish.y), scale)}
              />
            )}
            {cloth.length !== null && (
              <text className="lay-caption" x={0} y={cloth.width * scale + CAPTION}>
                {clothCaption(cloth, lay.lengths[i]!, (length) => lengthText(length, rule))}
              </text>
            )}
          </g>
        ))}
      </svg>
      {numbered.length > 0 && (
        <p className="lay-keys">
          {numbered
            .sort((a, b) => a - b)
            .map((piece) => (
              <span key={piece}>
                <b>{piece + 1}</b> {pieces[piece]!.name}
              </span>
            ))}
        </p>
      )}
    </>
  );
}

/** "cloth 1, 54 in wide: 40 in of 45 in used". */
function clothCaption(
  { name, width, length }: LayCloth,
  used: number,
  say: (length: number) => string,
): string {
  const part = used > 0 ? phrase`${say(used)} of ${say(length!)} used` : phrase`${say(length!)}, not used`;
  return phrase`${name}, ${say(width)} wide: ${part}`;
}

/** Copies of one piece that lie turned alike have the same label; each is worked out once. */
function labelBook({ pieces }: LayQuestion, scale: number): (placement: Placement) => Label {
  const known = new Map<string, Label>();
  return ({ piece, turn }) => {
    const key = `${piece} ${turn}`;
    let label = known.get(key);
    if (!label) {
      label = labelOf(pieces[piece]!, piece + 1, turn, scale);
      known.set(key, label);
    }
    return label;
  };
}

interface ClothProps {
  readonly cloth: LayCloth;
  /** In pixels. */
  readonly long: number;
  readonly scale: number;
  readonly fill: string;
}

function Cloth({ cloth: { width, outline, flaws = [] }, long, scale, fill }: ClothProps) {
  const high = width * scale;
  if (!outline)
    return (
      <>
        <rect className="lay-cloth" width={long} height={high} />
        <rect width={long} height={high} fill={fill} />
        <Flaws flaws={flaws} scale={scale} />
        <path className="lay-selvedge" d={`M0 0H${long}M0 ${high}h${long}`} />
      </>
    );
  return (
    <>
      <path className="lay-cloth" d={pathOf(outline, scale)} />
      <path className="lay-rest" d={pathOf(outline, scale)} fill={fill} />
      <Flaws flaws={flaws} scale={scale} />
    </>
  );
}

function Flaws({ flaws, scale }: { flaws: NonNullable<LayCloth["flaws"]>; scale: number }) {
  return flaws.map((flaw) => (
    <path key={flaw.join()} d={pathOf(flaw, scale)} className="lay-flaw">
      <title>{phrase`a hole or a flaw`}</title>
    </path>
  ));
}

function Tape({ length, scale, rule }: { length: number; scale: number; rule: Rule }) {
  const ticks = ticksOf(length, rule.unit, rule.mark, FIGURE / scale, rule.decimal);
  const end = length * scale;
  return (
    <g className="lay-tape">
      <path
        d={`${ticks.map(({ at, label }) => `M${at * scale} -3v${label === null ? -4 : -8}`).join("")}M${end} -3v-11`}
      />
      {ticks.map(
        ({ at, label }, i) =>
          label !== null &&
          at * scale < end - LAST && (
            <text key={at} x={at * scale} y={-14} textAnchor={i === 0 ? "start" : "middle"}>
              {label}
            </text>
          ),
      )}
      <text className="lay-long" x={end} y={-16} textAnchor="end">
        {lengthText(length, rule)}
      </text>
    </g>
  );
}
