/** Files as the tests of outlines write them. */
import { expect } from "vitest";
import { writePiece } from "../../../../functions/pieces/piece.ts";
import type { Found, Inner } from "../../../../src/exchange/outlines/find-pieces.ts";
import { readOutlines } from "../../../../src/exchange/outlines/read-outlines.ts";
import { factorOfFile, sized } from "../../../../src/exchange/outlines/scale.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A drawing of 100 × 100 mm in which one unit is a millimetre. */
export const svg = (
  content: string,
  attributes = 'width="100mm" height="100mm" viewBox="0 0 100 100"',
): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${content}</svg>`;

/** A DXF file of these groups in the section ENTITIES; each entity is its type and its groups. */
export function dxf(
  entities: readonly (readonly (string | number)[])[],
  { units = 4, blocks = [] as readonly (readonly (string | number)[])[] } = {},
): string {
  const section = (name: string, groups: readonly (string | number)[]) => [
    0,
    "SECTION",
    2,
    name,
    ...groups,
    0,
    "ENDSEC",
  ];
  const groups = (all: readonly (readonly (string | number)[])[]) =>
    all.flatMap(([type, ...rest]) => [0, type!, ...rest]);
  const header = units === 0 ? [] : section("HEADER", [9, "$INSUNITS", 70, units]);
  return [
    ...header,
    ...section("BLOCKS", groups(blocks)),
    ...section("ENTITIES", groups(entities)),
    0,
    "EOF",
  ].join("\n");
}

export function refusalOf(text: string | Uint8Array, inner?: Inner): string {
  const found = readOutlines(typeof text === "string" ? bytes(text) : text, inner);
  expect(found).toHaveProperty("refusal");
  return (found as { refusal: string }).refusal;
}

export function foundIn(text: string, inner?: Inner): Found {
  const found = readOutlines(bytes(text), inner);
  if ("refusal" in found) throw new Error(found.refusal);
  return found;
}

/** The text of each piece in millimetres, its figures rounded to a thousandth. */
export const textsOf = (found: Found): string[] =>
  found.pieces.map(({ piece }) => rounded(writePiece(sized(piece, factorOfFile(found, "mm") ?? 1))));

export const rounded = (text: string): string =>
  text.replace(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g, (figure) => String(Number(Number(figure).toFixed(3)) + 0));
