/** A picture to scale. Lines and words keep their size on the screen however near one looks. */
import type { CSSProperties } from "react";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { type Label, type PlacedLabel, placeLabels } from "../../engine/label-places.ts";
import type { Picture, Words } from "../../engine/picture.ts";
import { MARK_SIGNS } from "../../engine/roles.ts";
import { TEXT_SIZE } from "../text-size.ts";
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

/** The height of a line of words. */
const LINE = 16 * TEXT_SIZE;

/** So wide is the scale with its figure. */
const SCALE_WIDE = 175 * TEXT_SIZE;

/** About how many pixels wide a text is when its letters are as tall as the page's small ones. */
const widthOf = (text: string): number => text.length * 6.3 * TEXT_SIZE + 8;

export function PictureView({ picture, ghost, view, size, title, description }: Props) {
  const { left, top, scale } = view;
  const place = `scale(${scale}) translate(${-left} ${-top})`;
  const at = (point: Point) => onScreen(view, point);
  const labels = labelsIn(picture, view, size);
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
              style={{ "--shade": `${Math.round(shade * 15)}%` } as CSSProperties}
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
      {labels.map(({ key, text, upright, leader, place: [x, y] }) => (
        <g key={key}>
          {leader && <path className="leader" d={`M ${leader.map((end) => end.join(" ")).join(" L ")}`} />}
          <text
            className="words"
            textAnchor="middle"
            transform={`translate(${x} ${y})${upright ? " rotate(-90)" : ""}`}
          >
            {text.split("\n").map((words, i, all) => (
              <tspan
                // biome-ignore lint/suspicious/noArrayIndexKey: lines in order
                key={i}
                x="0"
                y={(i - (all.length - 1) / 2) * LINE}
                dy="0.35em"
                className={i === 0 && all.length > 1 ? "words-first" : undefined}
              >
                {words}
              </tspan>
            ))}
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

/** The labels in sight that find room; the others wait until one looks nearer. */
export function labelsIn(picture: Picture, view: View, { width, height }: Size): PlacedLabel[] {
  const screen = (point: Point) => onScreen(view, point);
  const labels = picture.words.flatMap(({ text, at, also, aside, long, room, is }, i): Label[] => {
    const places = [at, ...also]
      .map(screen)
      .filter(([x, y]) => x >= 0 && y >= 0 && x <= width && y <= height);
    if (places.length === 0) return [];
    const lines = text.split("\n");
    const [wide, tall] = [Math.max(...lines.map(widthOf)), LINE * lines.length];
    const [left, low] = screen([room.left, room.low]);
    const [right, high] = screen([room.right, room.high]);
    const steep = is === "dimension" && Math.abs(aside[0]) > 2 * Math.abs(aside[1]);
    const narrow = is === "outline" && high - low > 1.4 * (right - left);
    const upright = (steep || (narrow && wide > right - left)) && high - low >= wide;
    return [
      {
        key: `${i}`,
        text,
        at: places,
        aside,
        upright,
        wide,
        tall,
        within: is === "outline",
        weight: WEIGHT[is] + long,
      },
    ];
  });
  const marks = picture.marks.flatMap(({ at }) => at.map(screen)).map(([x, y]): Point[] => [[x - 4, y - 7], [x + 4, y + 4]]); // biome-ignore format: a diagonal
  // The arrows of a short dimension point at it from outside.
  const arrows = picture.dimensions.map(({ from, to }): Point[] => {
    const [[ax, ay], [bx, by]] = [screen(from), screen(to)];
    const long = Math.hypot(bx - ax, by - ay) || 1;
    const [dx, dy] = [((bx - ax) / long) * 8, ((by - ay) / long) * 8];
    return [
      [ax - dx, ay - dy],
      [bx + dx, by + dy],
    ];
  });
  // The scale stands at the lower left.
  const scale = [height - 24, height - 14, height - 4].map((y): Point[] => [[0, y], [SCALE_WIDE, y]]); // biome-ignore format: two points
  const strokes = [...picture.strokes.map((stroke) => stroke.map(screen)), ...marks, ...arrows, ...scale];
  const sheet = { left: 0, top: 0, right: width, bottom: height };
  const placed = placeLabels(labels, strokes, sheet, LINE);
  // Where all that a piece says does not fit in it, its name alone may.
  const found = new Set(placed.map(({ key }) => key));
  const cut = (label: Label): Label => {
    const [text = ""] = label.text.split("\n");
    return { ...label, text, wide: widthOf(text), tall: LINE };
  };
  const short = labels.map((label) =>
    found.has(label.key) || !label.text.includes("\n") ? label : cut(label),
  );
  return short.every((label, i) => label === labels[i]) ? placed : placeLabels(short, strokes, sheet, LINE);
}

/** Figures before names, names before remarks. */
const WEIGHT: Record<Words["is"], number> = {
  dimension: 3e6,
  angle: 2e6,
  outline: 1e6,
  marks: 5e5,
  edge: 2e5,
  note: 0,
};
