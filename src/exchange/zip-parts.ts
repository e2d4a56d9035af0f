/** The parts of a packed file, looked at before any of them is unpacked, and unpacked within a limit. */

import { Inflate } from "fflate";
import { SaxesParser } from "saxes";
import { phrase } from "../../functions/phrase.ts";

/** The most that the parts of a file may hold once they are unpacked, in bytes. */
export const MOST_UNPACKED = 250_000_000;

/** The most parts; a spreadsheet has a few for each sheet. */
const MOST_PARTS = 10_000;

export interface ZipPart {
  readonly name: string;
  /** 0: stored as it is; 8: deflated. */
  readonly method: number;
  readonly packed: Uint8Array;
  /** The unpacked size that the file claims, in bytes. */
  readonly size: number;
  readonly encrypted: boolean;
}

/** Why a packed file can't be read, in a sentence that goes on from its name. */
export class BadZip extends Error {}

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;

/** The parts by name, as the directory at the end of the file lists them. Throws `BadZip`. */
export function zipParts(bytes: Uint8Array): ReadonlyMap<string, ZipPart> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const damaged = () =>
    new BadZip(
      phrase`it is a packed file that is cut off or damaged; look for a whole copy, or save it again`,
    );
  let end = bytes.length - 22;
  for (const least = Math.max(0, end - 65_535); end >= least; end -= 1)
    if (view.getUint32(end, true) === END) break;
  if (end < 0 || view.getUint32(end, true) !== END) throw damaged();
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > MOST_PARTS) throw new BadZip(phrase`it has ${count} parts, and the most is ${MOST_PARTS}`);
  const parts = new Map<string, ZipPart>();
  for (let i = 0; i < count; i += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== ENTRY) throw damaged();
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const [packed, size] = [view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
    const lengths = [28, 30, 32].map((where) => view.getUint16(at + where, true));
    const local = view.getUint32(at + 42, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + lengths[0]!));
    at += 46 + lengths[0]! + lengths[1]! + lengths[2]!;
    if (local + 30 > bytes.length || view.getUint32(local, true) !== LOCAL) throw damaged();
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (from + packed > bytes.length || parts.has(name)) throw damaged();
    parts.set(name, {
      name,
      method,
      size,
      packed: bytes.subarray(from, from + packed),
      encrypted: (flags & 1) === 1,
    });
  }
  const claimed = [...parts.values()].reduce((sum, { size }) => sum + size, 0);
  if (claimed > MOST_UNPACKED) throw tooGreat(claimed);
  return parts;
}

const tooGreat = (size: number) =>
  new BadZip(
    phrase`unpacked it would have ${size > MOST_UNPACKED * 1.5 ? Math.round(size / 1e6) : phrase`more than ${MOST_UNPACKED / 1e6}`} MB, and the most is ${MOST_UNPACKED / 1e6} MB; save the sheets as separate files`,
  );

/** How much of a part is unpacked at once, in packed bytes; deflate makes at most a thousand times as much of it. */
const SLICE = 16_384;

/** A part unpacked, whatever size it claims. Throws `BadZip` when it is encrypted, damaged or greater than it claims. */
export function unpacked({ name, method, packed, size, encrypted }: ZipPart): Uint8Array {
  if (encrypted) throw new BadZip(phrase`it is encrypted; open it with its password and save it without one`);
  if (method === 0) return packed;
  if (method !== 8)
    throw new BadZip(
      phrase`its part ${name.slice(0, 80)} is packed in a way that Ellwand can't read; save it again`,
    );
  const chunks: Uint8Array[] = [];
  let length = 0;
  const inflate = new Inflate((chunk) => {
    length += chunk.length;
    chunks.push(chunk);
  });
  try {
    for (let from = 0; from < packed.length || from === 0; from += SLICE) {
      inflate.push(packed.subarray(from, from + SLICE), from + SLICE >= packed.length);
      if (length > size) break;
    }
  } catch {
    throw new BadZip(phrase`it is a packed file that is damaged; look for a whole copy, or save it again`);
  }
  if (length !== size)
    throw new BadZip(
      phrase`its parts are not as long as the file says; it is damaged, or made to harm; nothing of it was read`,
    );
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

/** Throws `BadZip` when a part is not well-formed XML: a lenient reader would lose everything after the fault. */
export function requireXml(part: ZipPart): void {
  const parser = new SaxesParser({ xmlns: false });
  parser.on("error", (reason) => {
    const said = reason.message.replace(/^undefined:/, "").slice(0, 100);
    throw new BadZip(phrase`its part ${part.name.slice(0, 80)} is damaged (${said}); save it again`);
  });
  parser.write(partText(part)).close();
}

/**
 * A part as text. A document type is refused: it may name other files or repeat texts without end, and
 * no spreadsheet has one.
 */
export function partText(part: ZipPart): string {
  const text = new TextDecoder().decode(unpacked(part));
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text.slice(0, 4000)))
    throw new BadZip(
      phrase`it declares entities of its own, which may name other files; nothing of it was read`,
    );
  return text;
}
