/** `import` of a drawing: its outlines become the pieces of a book. */

import { withPoints } from "../../functions/decimal.ts";
import { readTape } from "../../functions/fractions.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { pieceArea, pieceBounds } from "../../functions/pieces/piece.ts";
import type { Unit } from "../../functions/units.ts";
import { writeBook } from "../book/write.ts";
import { show } from "../engine/show.ts";
import type { Found } from "../exchange/outlines/find-pieces.ts";
import { bookOfPieces, type TakenPiece } from "../exchange/outlines/piece-rows.ts";
import { readOutlines } from "../exchange/outlines/read-outlines.ts";
import { drawnLength, factorOfFile, type Known, sized } from "../exchange/outlines/scale.ts";
import { titleOf } from "../exchange/read-table.ts";
import { fileName } from "./machine.ts";
import { notOneOf, unitFrom } from "./options.ts";
import { type Io, type VerbOptions, Wrong } from "./verb.ts";

/** The options of `import` that a drawing takes. */
export const OUTLINE_OPTIONS = {
  known: {
    type: "string",
    value: "EDGE=LENGTH",
    about: phrase`of a drawing: a length that is known, "front/2=40 cm" for edge 2 of the piece front, "width=84 cm" or "height=60 cm" for all pieces together, "unit=1 mm" for one unit of the file`,
  },
  scale: {
    type: "string",
    value: "N",
    about: phrase`of a drawing: how many times larger than the file says; 4 for a drawing at 1:4`,
  },
  inner: {
    type: "string",
    value: "marks|pieces",
    about: phrase`of a drawing: what closed lines inside a piece are; marks when left out`,
  },
} as const satisfies VerbOptions;

export interface OutlineChoices {
  readonly unit?: string | undefined;
  readonly known?: string | undefined;
  readonly scale?: string | undefined;
  readonly inner?: string | undefined;
  readonly out?: string | undefined;
  readonly json?: boolean | undefined;
}

/** Makes a book of the outlines in a file and says how they were read. */
export function importOutlines(path: string, bytes: Uint8Array, choices: OutlineChoices, io: Io): number {
  const unit = unitFrom(choices.unit ?? "in");
  const inner = choices.inner ?? "marks";
  if (inner !== "marks" && inner !== "pieces")
    throw notOneOf("--inner", ["marks", "pieces"], inner.slice(0, 24));
  const found = readOutlines(bytes, inner);
  if ("refusal" in found) throw new Wrong(`${fileName(path)}: ${found.refusal}`);
  const { factor, size } = sizeOf(found, choices, unit, path);
  const taken = found.pieces.map(
    ({ name, piece, said }): TakenPiece => ({ name, piece: sized(piece, factor), said }),
  );
  let book: ReturnType<typeof bookOfPieces>;
  try {
    book = bookOfPieces(titleOf(path), unit, taken);
  } catch (reason) {
    throw new Wrong(`${fileName(path)}: ${(reason as Error).message}`);
  }
  const out = choices.out?.trim();
  if (out === "")
    throw new Wrong(phrase`--out is empty; give the book's file, such as ${"--out pieces.json"}`);
  if (out !== undefined) io.write(out, writeBook(book));
  const pieces = taken.map(({ name, piece, said }) => {
    const { left, right, low, high } = pieceBounds(piece);
    return {
      name,
      edges: piece.edges.length,
      marks: piece.marks.length,
      width: right - left,
      length: high - low,
      area: pieceArea(piece),
      said,
    };
  });
  if (choices.json) io.out(JSON.stringify({ size, unit, pieces, said: found.said, file: out }, null, 2));
  else
    io.out(
      [
        size,
        ...pieces.map(({ name, edges, marks, width, length, area, said }) =>
          [
            phrase`${name}: ${show(width, "length", book)} × ${show(length, "length", book)} ${unit}, ${show(area, "area", book)}, ${plural(edges, "# edge", "# edges")}, ${plural(marks, "# mark", "# marks")}.`,
            ...said,
          ].join(" "),
        ),
        ...found.said,
      ].join("\n"),
    );
  return 0;
}

/** The length of one unit of the drawing in the book's unit, and how it is known. */
function sizeOf(
  found: Found,
  { known, scale }: OutlineChoices,
  unit: Unit,
  path: string,
): { factor: number; size: string } {
  if (known !== undefined) {
    if (scale !== undefined)
      throw new Wrong(phrase`--known and --scale both say how large the drawing is; give one of them`);
    const { of, length, says } = knownLength(found, known, unit);
    return { factor: length / drawnLength(found, of), size: says };
  }
  const times = scale === undefined ? 1 : Number(withPoints(scale, "point") ?? Number.NaN);
  if (!(times > 0 && times < 1e6))
    throw new Wrong(phrase`--scale must be a number above 0, such as 4, not "${scale!.slice(0, 24)}"`);
  const factor = factorOfFile(found, unit);
  if (factor === null)
    throw new Wrong(
      phrase`${fileName(path)}: it does not say how large it is; give a length that you know, such as ${`--known "${found.pieces[0]!.name}/1=40 cm"`}, ${'--known "width=84 cm"'} or ${'--known "unit=1 mm"'}`,
    );
  return {
    factor: factor * times,
    size: times === 1 ? found.size : phrase`${found.size} Made ${times} times as large.`,
  };
}

function knownLength(found: Found, text: string, unit: Unit): { of: Known; length: number; says: string } {
  const cut = text.lastIndexOf("=");
  const [what, said] = [text.slice(0, cut).trim(), text.slice(cut + 1).trim()];
  const read = cut < 1 ? null : readTape(said, unit);
  if (!read || !(read.length > 0))
    throw new Wrong(
      phrase`--known needs what is known and its length, such as "${"front/2=40 cm"}", not "${text.slice(0, 40)}"`,
    );
  const says = phrase`Sized by ${what}, which is ${read.certain ? said : `${said} ${unit}`}.`;
  if (what === "unit" || what === "width" || what === "height")
    return { of: { of: what }, length: read.length, says };
  const [, name = "", edge = ""] = /^(.+)\/\s*(\d+)$/.exec(what) ?? [];
  const piece = found.pieces.findIndex((one) => one.name.toLowerCase() === name.trim().toLowerCase());
  const edges = found.pieces[piece]?.piece.edges.length ?? 0;
  const number = Number(edge);
  if (piece < 0 || number < 1 || number > edges)
    throw new Wrong(
      piece < 0
        ? phrase`--known: the drawing has no edge "${what.slice(0, 40)}"; its pieces are ${found.pieces
            .slice(0, 8)
            .map((one) => one.name)
            .join(", ")}`
        : phrase`--known: the drawing has no edge "${what.slice(0, 40)}"; ${found.pieces[piece]!.name} has edges 1 to ${edges}`,
    );
  return { of: { of: "edge", piece, edge: number - 1 }, length: read.length, says };
}
