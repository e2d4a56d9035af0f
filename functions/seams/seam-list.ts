/**
 * The list of seams: which edge is sewn to which, how, and with how much difference. A side of a seam may
 * be several edges in succession, written "front + back + front" with one edge name for all, "waist", or
 * one for each, "waist + lower edge + waist".
 */

import { comparedName } from "../compared-name.ts";
import type { ListForm, ListRow } from "../define.ts";
import { rememberWithObject } from "../memo.ts";
import { phrase, plural, written } from "../phrase.ts";
import { type CellOfList, Refusal, refusingAt } from "../refusal.ts";

export const HOW = ["plain", "eased", "gathered", "stretched"] as const;
export type How = (typeof HOW)[number];

const text = (about: string) => ({ kind: "text", about }) as const;

export const SEAM_LIST = {
  noun: "the list of seams",
  columns: {
    piece: {
      headings: ["piece", "first piece", "pieces"],
      about: 'the piece of the first edge; several in succession as "front + back"',
      take: text("the piece"),
      needed: true,
    },
    edge: {
      headings: ["edge", "first edge", "edges"],
      about: "the edge of that piece, by its name or number",
      take: text("the edge"),
      needed: true,
    },
    other: {
      headings: ["sewn to", "second piece", "to piece"],
      about: "the piece that it is sewn to",
      take: text("the piece it is sewn to"),
      needed: true,
    },
    otherEdge: {
      headings: ["its edge", "second edge", "to edge"],
      about: "the edge of that other piece",
      take: text("the edge of that piece"),
      needed: true,
    },
    how: {
      headings: ["how", "sewn how", "how sewn"],
      about: "plain, eased, gathered or stretched; plain where it is blank",
      take: { kind: "text", about: "how it is sewn", choices: HOW },
    },
    difference: {
      headings: ["wanted difference", "difference wanted", "difference", "ease"],
      about: "by how much the first edge is longer than the second, before it is sewn; negative for shorter",
      take: { kind: "length", about: "the wanted difference", from: -1000, to: 5000 },
    },
    fullness: {
      headings: ["fullness", "wanted fullness", "times"],
      about: "how many times as long as the second edge the first is, instead of a difference: 1.5 or 150%",
      take: { kind: "share", about: "the fullness", from: 0.2, to: 20 },
    },
    easeFrom: {
      headings: ["eased from", "ease from", "gathered from"],
      about: "where along the first edge the easing begins; its beginning where it is blank",
      take: { kind: "length", about: "where the easing begins", from: 0, to: 5000 },
    },
    easeTo: {
      headings: ["eased to", "ease to", "gathered to"],
      about: "where along the first edge the easing ends; its end where it is blank",
      take: { kind: "length", about: "where the easing ends", from: 0, to: 5000 },
    },
    notches: {
      headings: ["notches at", "notches", "notch at"],
      about:
        'where notches stand along the first edge, with their unit: "3; 6 1/2 in"; in the middle where it is blank',
      take: text("places of notches"),
    },
    notch: {
      headings: ["notch", "kind of notch", "single or double"],
      about: "single, double or none; where it is blank double between edges of a back, single elsewhere",
      take: { kind: "text", about: "the kind of notch", choices: ["single", "double", "none"] },
    },
    ends: {
      headings: ["ends", "begins", "direction"],
      about:
        "same where both edges begin at the same end of the seam, opposite where they don't; found from the pieces where it is blank",
      take: { kind: "text", about: "how the ends meet", choices: ["same", "opposite"] },
    },
  },
} as const satisfies ListForm;

/** The columns that say which edge is sewn to which and how. Lengths, notches and changes rest on them, and the wanted differences may rest on those. */
export const JOINING = [
  "piece",
  "edge",
  "other",
  "otherEdge",
  "how",
] as const satisfies readonly (keyof typeof SEAM_LIST.columns)[];

/** All columns, for the verdict on a seam. */
export const SEAM_FIELDS = Object.keys(SEAM_LIST.columns) as readonly (keyof typeof SEAM_LIST.columns)[];

/** The columns that notches are placed by: all but the wanted difference. */
export const NOTCHING = SEAM_FIELDS.filter((field) => field !== "difference" && field !== "fullness");

/** One edge of a piece, by its names as they are compared. */
export interface NamedEdge {
  readonly piece: string;
  readonly edge: string;
}

export interface Seam {
  /** Row of the list, counted from 1. */
  readonly number: number;
  /** Each side: its edges in succession. */
  readonly sides: readonly [readonly NamedEdge[], readonly NamedEdge[]];
  readonly how: How;
  readonly difference: number | null;
  readonly fullness: number | null;
  readonly easeFrom: number | null;
  readonly easeTo: number | null;
  readonly notches: string | null;
  readonly notch: "single" | "double" | "none" | null;
  readonly ends: "same" | "opposite" | null;
  /** The cells of its row in the block. */
  readonly places: ListRow["places"];
}

/** A cell of a row of the list, to point at it. */
export const cellOfSeams = (
  places: ListRow["places"],
  field: keyof typeof SEAM_LIST.columns,
): CellOfList | undefined =>
  places[field] === undefined ? undefined : { argument: "seams", cell: places[field] };

export const edgeKey = ({ piece, edge }: NamedEdge): string => `${piece} ${edge}`;

/** Kept because a change is carried along the list seam by seam, once for each figure that follows the fittings. */
const keysOfSides = rememberWithObject<readonly NamedEdge[], readonly string[]>();

export const edgeKeys = (side: readonly NamedEdge[]): readonly string[] =>
  keysOfSides(side, () => side.map(edgeKey));

const edgesListed = rememberWithObject<readonly Seam[], ReadonlySet<string>>();

/** Every edge that the list of seams names. */
export const listedEdges = (seams: readonly Seam[]): ReadonlySet<string> =>
  edgesListed(seams, () => new Set(seams.flatMap(({ sides }) => sides.flatMap(edgeKeys))));

/** A side as it is named in sentences: "front waist + back waist". */
export const sideName = (side: readonly NamedEdge[]): string => edgeKeys(side).join(" + ");

/** The same edges, in whichever order. */
export const sideKey = (side: readonly NamedEdge[]): string => edgeKeys(side).toSorted().join(" + ");

/** A side from the cells of a piece and its edge. `where` is for refusals. */
export function sideOf(piece: string, edge: string, where: string): readonly NamedEdge[] {
  const split = (list: string) => list.split("+").map(comparedName);
  const [pieces, edges] = [split(piece), split(edge)];
  if (pieces.includes("") || edges.includes(""))
    throw new Refusal(phrase`${where} has a "+" with nothing beside it: write the names as "front + back"`);
  if (edges.length !== 1 && edges.length !== pieces.length)
    throw new Refusal(
      phrase`${where} has ${plural(pieces.length, "# piece", "# pieces")} and ${edges.length} edges: name one edge for all pieces, or one for each`,
    );
  return pieces.map((one, i) => ({ piece: one, edge: edges.length === 1 ? edges[0]! : edges[i]! }));
}

/** Kept because every seam, notch and fitting asks for the list. */
const seamsRead = rememberWithObject<readonly ListRow[], readonly Seam[]>();

/** The seams of the list, in its order. Refuses a row that says only half of a seam, or two things at once. */
export const seamsOf = (rows: readonly ListRow[]): readonly Seam[] => seamsRead(rows, () => readSeams(rows));

const readSeams = (rows: readonly ListRow[]): readonly Seam[] =>
  rows.map(({ number, cells, places }): Seam => {
    const at = (field: keyof typeof SEAM_LIST.columns) => cellOfSeams(places, field);
    const where = written`row ${number} of the list of seams`;
    for (const field of ["piece", "edge", "other", "otherEdge"] as const)
      if (cells[field] === null)
        throw new Refusal(
          phrase`${where} has nothing in its column "${SEAM_LIST.columns[field].headings[0]}": fill it in, or clear the row`,
          at(field),
        );
    const how = (cells.how ?? "plain") as How;
    const [difference, fullness] = [cells.difference, cells.fullness] as (number | null)[];
    if (difference !== null && fullness !== null)
      throw new Refusal(
        phrase`${where} has a wanted difference and a fullness: keep one of them`,
        at("difference"),
      );
    if (how === "plain" && ((difference ?? 0) !== 0 || (fullness ?? 1) !== 1))
      throw new Refusal(
        phrase`${where} is plain, but its wanted difference or fullness asks for edges of different lengths: write eased, gathered or stretched, or clear the wanted difference`,
        at("how") ?? at("difference"),
      );
    if (how === "stretched" && ((difference ?? 0) > 0 || (fullness ?? 1) > 1))
      throw new Refusal(
        phrase`${where} is stretched, so its first edge is the shorter: write its wanted difference with a minus`,
        at("difference") ?? at("fullness"),
      );
    return {
      number,
      sides: [
        refusingAt(at("edge"), () => sideOf(String(cells.piece), String(cells.edge), where)),
        refusingAt(at("otherEdge"), () => sideOf(String(cells.other), String(cells.otherEdge), where)),
      ],
      how,
      difference: difference ?? null,
      fullness: fullness ?? null,
      easeFrom: (cells.easeFrom ?? null) as number | null,
      easeTo: (cells.easeTo ?? null) as number | null,
      notches: cells.notches === null ? null : String(cells.notches),
      notch: (cells.notch ?? null) as Seam["notch"],
      ends: (cells.ends ?? null) as Seam["ends"],
      places,
    };
  });
