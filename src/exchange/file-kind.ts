/** What a file is, judged by how it begins; its name decides only where the beginning fits two kinds. */
import { phrase } from "../../functions/phrase.ts";

/**
 * "book": one or several books of Ellwand. "table": a spreadsheet or separated values. "outline": a drawing
 * whose lines become pieces.
 */
export type FileKind = "book" | "table" | "outline";

/** How much of a file is needed to judge it, in bytes. */
export const JUDGED_BYTES = 16_384;

const PICTURE = phrase`it is a picture, and a picture has no outline to read; save the drawing as SVG, or drop a photograph on the cell that is to keep it`;

/** Kinds of files that Ellwand can't read, by their first bytes. */
const OTHERS: readonly (readonly [beginning: string, what: string])[] = [
  ["%PDF", phrase`it is a PDF; save the table or the drawing in the program it was made with`],
  ["\u0089PNG", PICTURE],
  ["\u00ff\u00d8\u00ff", PICTURE],
  ["GIF8", PICTURE],
  ["BM\u0000", PICTURE],
  ["\u001f\u008b", phrase`it is a compressed file; unpack it first`],
  ["7z\u00bc\u00af", phrase`it is a packed folder; unpack it first`],
  ["Rar!", phrase`it is a packed folder; unpack it first`],
  ["MZ", phrase`it is a program; nothing of it was run`],
  ["\u007fELF", phrase`it is a program; nothing of it was run`],
];

/** The kind of a file by its first bytes and its name, or a sentence that says why it can't be opened. */
export function fileKind(
  head: Uint8Array,
  name: string,
): { readonly kind: FileKind } | { readonly refusal: string } {
  if (head.length === 0) return { refusal: phrase`the file is empty` };
  const signs = String.fromCharCode(...head.subarray(0, 8));
  const other = OTHERS.find(([beginning]) => signs.startsWith(beginning));
  if (other) return { refusal: other[1] };
  // Packed spreadsheets, and the older container that holds old or encrypted ones: their reader says which.
  if (signs.startsWith("PK") || signs.startsWith("\u00d0\u00cf\u0011\u00e0")) return { kind: "table" };
  const text = beginningOf(head);
  if (isMarkup(text))
    return /<(?:[\w.-]+:)?svg[\s>]/i.test(text)
      ? { kind: "outline" }
      : /<html|<!doctype html|<table/i.test(text)
        ? { refusal: phrase`it is a web page; save its table as CSV or as a spreadsheet` }
        : /\.svg$/i.test(name)
          ? { kind: "outline" }
          : {
              refusal: phrase`it is marked-up text of a kind that Ellwand does not read; save it as CSV or SVG`,
            };
  // Pairs of lines, a group code and a value; the first pair begins a section or is a comment.
  if (/^\s*(?:0\s*\r?\n\s*SECTION|999\s*\r?\n)/i.test(text)) return { kind: "outline" };
  if (/^\s*\{/.test(text) && (/"ellwand/.test(text) || !/\.(?:csv|tsv|tab|txt)$/i.test(name)))
    return { kind: "book" };
  if (/\.json$/i.test(name)) return { kind: "book" };
  return { kind: "table" };
}

/** The first letters, in UTF-8 or, with its byte order mark, UTF-16. */
function beginningOf(head: Uint8Array): string {
  const label =
    head[0] === 0xff && head[1] === 0xfe
      ? "utf-16le"
      : head[0] === 0xfe && head[1] === 0xff
        ? "utf-16be"
        : "utf-8";
  return new TextDecoder(label).decode(head);
}

const isMarkup = (text: string): boolean => /^\s*<(?:[!?]|[a-z])/i.test(text);
