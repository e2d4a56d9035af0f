/** A sheet of a document as plain data for an SVG: the marks of the PDF, none left out. Millimetres. */
import type { DrawnSheet, Mark } from "../../paper/marks.ts";
import { trace } from "../../paper/trace.ts";

export type Part =
  | {
      readonly is: "lines";
      /** SVG path data. */
      readonly d: string;
      readonly width: number;
      readonly dashes: string;
      readonly filled: boolean;
    }
  | { readonly is: "shade"; readonly d: string; readonly grey: number }
  | Extract<Mark, { readonly is: "text" }>
  /** Parts that are seen only inside a rectangle. */
  | { readonly is: "window"; readonly d: string; readonly parts: readonly Part[] };

export interface SheetPicture {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Part[];
}

/** Hundredths of a millimetre are finer than any screen shows. */
const text = (value: number): string => String(Math.round(value * 100) / 100);

const rectangle = ({ x, y, width, height }: Record<"x" | "y" | "width" | "height", number>): string =>
  `M${text(x)} ${text(y)}h${text(width)}v${text(height)}h${text(-width)}Z`;

export function pathOf({ ink, x, y }: Pick<Extract<Mark, { is: "ink" }>, "ink" | "x" | "y">): string {
  const data: string[] = [];
  const pen = {
    moveTo: (...to: number[]) => data.push(`M${to.map(text).join(" ")}`),
    lineTo: (...to: number[]) => data.push(`L${to.map(text).join(" ")}`),
    bezierCurveTo: (...to: number[]) => data.push(`C${to.map(text).join(" ")}`),
    closePath: () => data.push("Z"),
  };
  for (const subpath of ink.subpaths) trace(pen, subpath, x, y);
  return data.join("");
}

function partOf(mark: Exclude<Mark, { readonly is: "clip" | "unclip" }>): Part {
  const lines = (d: string, width: number, dashes: readonly number[] = [], filled = false): Part => ({
    is: "lines",
    d,
    width,
    dashes: dashes.join(" "),
    filled,
  });
  switch (mark.is) {
    case "ink":
      return lines(pathOf(mark), mark.ink.width, mark.ink.dashes, mark.ink.filled);
    case "line": {
      const place = ([x, y]: readonly [number, number]) => `${text(x)} ${text(y)}`;
      return lines(`M${place(mark.from)}L${place(mark.to)}`, mark.width, mark.dashes);
    }
    case "box":
      return lines(rectangle(mark), mark.line);
    case "shade":
      return { is: "shade", d: rectangle(mark), grey: mark.grey };
    case "text":
      return mark;
    default:
      return mark satisfies never;
  }
}

/** Neighbours of one manner become one path: a sheet of a pattern has some ten manners of lines. */
function add(parts: Part[], part: Part): void {
  const last = parts.at(-1);
  const isSame =
    part.is === "lines" &&
    last?.is === "lines" &&
    !part.filled &&
    !last.filled &&
    part.width === last.width &&
    part.dashes === last.dashes;
  if (isSame) parts[parts.length - 1] = { ...last, d: last.d + part.d };
  else parts.push(part);
}

export function pictureOfSheet({ width, height, marks }: DrawnSheet): SheetPicture {
  const open: Part[][] = [[]];
  for (const mark of marks) {
    if (mark.is === "clip") {
      const parts: Part[] = [];
      open.at(-1)!.push({ is: "window", d: rectangle(mark), parts });
      open.push(parts);
    } else if (mark.is === "unclip") open.pop();
    else add(open.at(-1)!, partOf(mark));
  }
  return { width, height, parts: open[0]! };
}
