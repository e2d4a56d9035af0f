/** What stands on the sheets of a document, in the order in which it is drawn: for the PDF and for its preview. Millimetres. */
import type { Ink } from "./pattern-sheet.ts";
import type { Tile } from "./tiles.ts";

export type Mark =
  /** Lines, moved by x and y. */
  | { readonly is: "ink"; readonly ink: Ink; readonly x: number; readonly y: number }
  | {
      readonly is: "line";
      readonly from: readonly [x: number, y: number];
      readonly to: readonly [x: number, y: number];
      readonly width: number;
      readonly dashes: readonly number[];
    }
  /** A rectangle drawn with a line. */
  | (Rectangle & { readonly is: "box"; readonly line: number })
  /** A filled rectangle; 0 is black, 1 is white. */
  | (Rectangle & { readonly is: "shade"; readonly grey: number })
  /** A line of words that begins at x, y at its foot; `wide` is its width. */
  | {
      readonly is: "text";
      readonly text: string;
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly bold: boolean;
      readonly wide: number;
    }
  /** What comes until "unclip" is seen only inside the rectangle. */
  | (Rectangle & { readonly is: "clip" })
  | { readonly is: "unclip" };

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet of paper with everything on it. */
export interface DrawnSheet {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** Which part of a large drawing the sheet shows, if it shows one. */
  readonly tile?: Tile | undefined;
}
