/** Pattern pieces from a file of another program: SVG or DXF; the content of the file shows which. */
import { phrase } from "../../../functions/phrase.ts";
import { type Found, findPieces, type Inner } from "./find-pieces.ts";
import { readDxf } from "./read-dxf.ts";
import { readSvg } from "./read-svg.ts";
import { readText } from "./read-text.ts";

/** The pieces of a file, in the drawing's own units, or a sentence that says why they can't be read. */
export function readOutlines(
  bytes: Uint8Array,
  inner: Inner = "marks",
): Found | { readonly refusal: string } {
  const read = readText(bytes);
  if ("refusal" in read) return read;
  const { text } = read;
  const drawing = /^\ufeff?\s*</.test(text)
    ? readSvg(text)
    : /^\ufeff?(?:\s*999\r?\n.*\r?\n)*\s*0\r?\n\s*SECTION\s/.test(text)
      ? readDxf(text)
      : {
          refusal: phrase`it is neither an SVG nor a DXF file: an SVG file begins with <svg, a DXF file with its first section`,
        };
  return "refusal" in drawing ? drawing : findPieces(drawing, inner);
}
