/** The text of an outline file from its bytes, or a sentence that says why the bytes can't be read as text. */
import { phrase } from "../../../functions/phrase.ts";

const utf8 = "UTF-8";

/** The largest outline file that is read. */
export const MOST_BYTES = 20_000_000;

export interface Refused {
  readonly refusal: string;
}

/** What a file that is neither SVG nor DXF text begins with, byte for byte. */
const BEGINNINGS: readonly (readonly [bytes: string, what: string])[] = [
  ["%PDF", phrase`it is a PDF; save the drawing as SVG in the program it was made with`],
  ["PK\u0003\u0004", phrase`it is a packed file; unpack it, or save the drawing as SVG`],
  ["\u001f\u008b", phrase`it is a compressed SVG; unpack it, or save the drawing as plain SVG`],
  ["\u0089PNG", phrase`it is a picture of dots, which has no lines; trace it in a drawing program first`],
  [
    "\u00ff\u00d8\u00ff",
    phrase`it is a picture of dots, which has no lines; trace it in a drawing program first`,
  ],
];

export const tooLarge = (bytes: number): string =>
  phrase`it has ${Math.round(bytes / 1e6)} MB, and the most is ${MOST_BYTES / 1e6} MB; leave pictures out of it, or cut it into parts`;

export function readText(bytes: Uint8Array): { readonly text: string } | Refused {
  if (bytes.length > MOST_BYTES) return { refusal: tooLarge(bytes.length) };
  const first = String.fromCharCode(...bytes.subarray(0, 400));
  if (first.trim() === "") return { refusal: phrase`it is empty` };
  const found = BEGINNINGS.find(([start]) => first.startsWith(start));
  if (found) return { refusal: found[1] };
  const text = decoded(bytes, first);
  if (text === null) return { refusal: phrase`its letters can't be read; save it as ${utf8}` };
  const at = text.indexOf("\u0000");
  return at < 0
    ? { text }
    : {
        refusal: phrase`it is not a text file: character ${at + 1} is a zero byte; save the drawing as SVG or as DXF in text`,
      };
}

/** UTF-16 by its mark, else UTF-8, else what the XML declaration names, else Windows-1252. */
function decoded(bytes: Uint8Array, first: string): string | null {
  const as = (label: string): string | null => {
    try {
      return new TextDecoder(label, { fatal: true }).decode(bytes);
    } catch {
      return null;
    }
  };
  if (first.startsWith("\u00ff\u00fe")) return as("utf-16le");
  if (first.startsWith("\u00fe\u00ff")) return as("utf-16be");
  const named = /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.:-]+)["']/.exec(first)?.[1];
  return as("utf-8") ?? (named && as(named)) ?? as("windows-1252");
}
