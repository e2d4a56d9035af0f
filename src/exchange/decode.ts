/** The text of a file's bytes: UTF-8 or UTF-16 with or without a byte order mark, else Windows-1252. */
import { phrase } from "../../functions/phrase.ts";

/** The largest file that is read. */
export const MOST_BYTES = 50_000_000;

const utf8 = "UTF-8";
const utf16 = "UTF-16";
const windows1252 = "Windows-1252";

/** The encodings that a file may be read with, as the web's standard of encodings names them. */
export const ENCODINGS = {
  "utf-8": utf8,
  "utf-16le": utf16,
  "utf-16be": phrase`${utf16}, the high byte first`,
  "windows-1252": windows1252,
} as const;

export type Encoding = keyof typeof ENCODINGS;

export interface Decoded {
  readonly text: string;
  readonly label: Encoding;
  /** The encoding in a few words: "UTF-8 with a byte order mark". */
  readonly encoding: string;
}

export interface Refused {
  readonly refusal: string;
}

/** How files that are not text begin. */
const BEGINNINGS: readonly (readonly [bytes: string, what: string])[] = [
  ["%PDF", phrase`it is a PDF, not a table of texts; save the table as CSV in the program it was made with`],
  [
    "PK\u0003\u0004",
    phrase`it is a packed file, such as a spreadsheet, not a CSV; save its sheet as CSV in the program it was made with`,
  ],
  [
    "\u00d0\u00cf\u0011\u00e0",
    phrase`it is an old spreadsheet or document, not a CSV; save its sheet as CSV first`,
  ],
  ["\u0089PNG", phrase`it is a picture, not a CSV`],
  ["\u00ff\u00d8\u00ff", phrase`it is a picture, not a CSV`],
];

/** Bytes that stand for no letter in Windows-1252. */
const NO_LETTER = /[\u0081\u008d\u008f\u0090\u009d]/;

export const tooLarge = (bytes: number): string =>
  phrase`the file has ${Math.round(bytes / 1e6)} MB, and the most is ${MOST_BYTES / 1e6} MB; cut it into parts`;

/** `given`: the encoding, when it is known better than it can be found out. */
export function decode(bytes: Uint8Array, given?: Encoding): Decoded | Refused {
  if (bytes.length > MOST_BYTES) return { refusal: tooLarge(bytes.length) };
  if (bytes.length === 0) return { refusal: phrase`the file is empty` };
  const beginning = String.fromCharCode(...bytes.subarray(0, 4));
  const found = BEGINNINGS.find(([start]) => beginning.startsWith(start));
  if (found) return { refusal: found[1] };
  const read = given ? asGiven(bytes, given) : (withMark(bytes) ?? withoutMark(bytes));
  if ("refusal" in read) return read;
  const at = read.text.indexOf("\u0000");
  return at < 0
    ? read
    : {
        refusal: phrase`it is not a text file: character ${at + 1} is a zero byte; choose a file of comma-separated values`,
      };
}

function asGiven(bytes: Uint8Array, label: Encoding): Decoded | Refused {
  try {
    return {
      text: new TextDecoder(label, { fatal: true }).decode(bytes),
      label,
      encoding: phrase`${ENCODINGS[label]}, as you say`,
    };
  } catch {
    return { refusal: phrase`its letters are not ${ENCODINGS[label]}; choose another encoding` };
  }
}

function decodedAs(bytes: Uint8Array, label: Encoding, encoding: string): Decoded | Refused {
  try {
    return { text: new TextDecoder(label, { fatal: true }).decode(bytes), label, encoding };
  } catch {
    return { refusal: phrase`its first bytes say ${encoding}, and what follows is not; save it as ${utf8}` };
  }
}

/** What a byte order mark says; null for a file without one. */
function withMark(bytes: Uint8Array): Decoded | Refused | null {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf)
    return decodedAs(bytes, "utf-8", phrase`${utf8} with a byte order mark`);
  if (a === 0xff && b === 0xfe) return decodedAs(bytes, "utf-16le", phrase`${utf16} with a byte order mark`);
  if (a === 0xfe && b === 0xff) return decodedAs(bytes, "utf-16be", phrase`${utf16} with a byte order mark`);
  return null;
}

function withoutMark(bytes: Uint8Array): Decoded | Refused {
  const halves = zerosOfHalves(bytes);
  if (halves[1] > 0.4 && halves[0] < 0.1) return decodedAs(bytes, "utf-16le", utf16);
  if (halves[0] > 0.4 && halves[1] < 0.1) return decodedAs(bytes, "utf-16be", utf16);
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return { text, label: "utf-8", encoding: utf8 };
  } catch {
    const text = new TextDecoder("windows-1252").decode(bytes);
    return NO_LETTER.test(text)
      ? { refusal: phrase`its letters are neither ${utf8} nor ${windows1252}; save it as ${utf8}` }
      : { text, label: "windows-1252", encoding: phrase`${windows1252}, because it is not ${utf8}` };
  }
}

/** The shares of zeros among the even and the odd bytes at the beginning: letters of UTF-16 have one each. */
function zerosOfHalves(bytes: Uint8Array): [even: number, odd: number] {
  const counts: [number, number] = [0, 0];
  const length = Math.min(bytes.length, 2000) & ~1;
  for (let i = 0; i < length; i += 1) if (bytes[i] === 0) counts[i % 2]! += 1;
  return [counts[0] / (length / 2 || 1), counts[1] / (length / 2 || 1)];
}
