/** A picture to scale. Lines and words keep their size on the screen however near one looks. */
import type { CSSProperties } from "react";
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Picture, Words } from "../../engine/picture.ts";
import { MARK_SIGNS } from "../../engine/roles.ts";
import { type Label, LINE, placeLabels } from "./labels.ts";
import { onScreen, type Size, type View } from "./view.ts";

interface Props {
  readonly picture: Picture;
  /** The picture as it was before what is tried out, drawn thin beneath. */
  readonly ghost: Picture | null;
  readonly view: View;
  readonly size: Size;
  readonly title: string;
  readonly description: string;
}

/** Words take about so many pixels a letter, at 12 pixels tall. */
const widthOf = (text: string): number => text.length * 6.3 + 8;

export function PictureView({ picture, ghost, view, size, title, description }: Props) {
  const { left, top, scale } = view;
  const place = `scale(${scale}) translate(${-left} ${-top})`;
  const at = (point: Point) => onScreen(view, point);
  const labels = placeLabels(labelsOf(picture.words, view, size), widthOf);
  return (
    <svg
      className="picture"
      width={size.width}
      height={size.height}
      role="img"
      aria-labelledby="picture-title picture-about"
    >
      <title id="picture-title">{title}</title>
      <desc id="picture-about">{description}</desc>
      <g transform={place}>
        {ghost?.outlines.map((d) => (
          <path key={d} className="ghost" d={d} />
        ))}
        {picture.layers.map(({ d, of, shade }, i) =>
          of === "silhouette" ? null : (
            <path
              // biome-ignore lint/suspicious/noArrayIndexKey: their order is what is drawn
              key={i}
              className={`layer layer-${of}`}
              d={d}
              style={{ "--shade": `${Math.round(shade * 26)}%` } as CSSProperties}
            />
          ),
        )}
        {ghost?.layers.map(({ d, of }, i) =>
          // biome-ignore lint/suspicious/noArrayIndexKey: their order is what is drawn
          of === "silhouette" ? <path key={i} className="ghost" d={d} /> : null,
        )}
        {picture.outlines.map((d, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: copies of a piece may lie on one another
          <path key={i} className="outline" d={d} />
        ))}
        {picture.lines.map(({ d, role }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be the same
          <path key={i} className={`line line-${role}`} d={d} />
        ))}
        {picture.angles.map((d) => (
          <path key={d} className="angle" d={d} />
        ))}
      </g>
      {picture.lines.flatMap(({ arrows, role }, i) =>
        arrows.map((arrow, k) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: the two ends of one line
            key={`${i}.${k}`}
            className={`head head-${role}`}
            d="M 0 0 L -9 -3.5 L -9 3.5 Z"
            transform={turnedTo(at(arrow.at), arrow.to)}
          />
        )),
      )}
      {picture.dimensions.map(({ from, to }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two dimensions may be the same
        <DimensionLine key={i} from={at(from)} to={at(to)} />
      ))}
      {picture.marks.map(({ at: points, mark }) =>
        points.map((point) => (
          <path
            key={`${mark}${point}`}
            className={`mark mark-${mark}`}
            d={MARK_SIGNS[mark]}
            transform={`translate(${at(point).join(" ")})`}
          />
        )),
      )}
      {labels.map(({ key, text, wide, upright, place: [x, y] }) => (
        <g key={key} transform={`translate(${x} ${y})${upright ? " rotate(-90)" : ""}`}>
          <rect className="behind" x={-wide / 2 + 2} y={-LINE / 2} width={wide - 4} height={LINE} rx="2" />
          <text className="words" dy="0.35em" textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
    </svg>
  );
}

const turnedTo = ([x, y]: Point, [dx, dy]: Point): string =>
  `translate(${x} ${y}) rotate(${(Math.atan2(dy, dx) * 180) / Math.PI})`;

function DimensionLine({ from, to }: { from: Point; to: Point }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const short = Math.hypot(dx, dy) < 26;
  return (
    <g className="dimension">
      <path d={`M ${from.join(" ")} L ${to.join(" ")}`} />
      <path d={ARROW} transform={turnedTo(from, short ? [dx, dy] : [-dx, -dy])} />
      <path d={ARROW} transform={turnedTo(to, short ? [-dx, -dy] : [dx, dy])} />
    </g>
  );
}

/** An open arrow with a stroke across its tip. */
const ARROW = "M -7 -2.5 L 0 0 L -7 2.5 M 0 -5 L 0 5";

/** The labels in sight. A name that has no room in its piece, across or upright, waits until one looks nearer. */
function labelsOf(words: readonly Words[], view: View, { width, height }: Size): Label[] {
  return words.flatMap(({ text, at, aside, long, room, is }, i) => {
    const [x, y] = onScreen(view, at);
    if (x < 0 || y < 0 || x > width || y > height) return [];
    const wide = widthOf(text);
    const [left, low] = onScreen(view, [room.left, room.low]);
    const [right, high] = onScreen(view, [room.right, room.high]);
    const upright = Number.isFinite(high) && high - low > 1.4 * (right - left) && high - low >= wide;
    const [halfX, halfY] = upright ? [LINE / 2, wide / 2] : [wide / 2, LINE / 2];
    const named = is === "outline";
    if (named && (right - left < 2 * halfX || high - low < 2 * halfY)) return [];
    const inside: Point = [
      between(x, Math.max(named ? left : 0, 0) + halfX, Math.min(named ? right : width, width) - halfX),
      between(y, Math.max(named ? low : 0, 0) + halfY, Math.min(named ? high : height, height) - halfY),
    ];
    return [{ key: `${i}`, text, at: inside, aside, upright, weight: WEIGHT[is] + long }];
  });
}

const between = (value: number, least: number, most: number): number =>
  Math.max(least, Math.min(value, most));

/** Figures before names, names before remarks. */
const WEIGHT: Record<Words["is"], number> = {
  dimension: 3e6,
  angle: 2e6,
  outline: 1e6,
  marks: 5e5,
  edge: 2e5,
  note: 0,
};
