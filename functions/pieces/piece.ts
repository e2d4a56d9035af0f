/**
 * A pattern piece as a value: an outline of edges, and marks drawn inside it.
 *
 * In a cell a piece is SVG path data in the book's unit, x across the grain and y along it
 * (downwards, as SVG has it: a skirt's waist is above its hem). The first subpath is the closed
 * outline, every later one a mark (fold, placement, slash or grain line). One command letter is
 * one edge, counted from 1 in drawing order. Functions that make a piece draw edge 1 along the
 * top and edge 3 along the hem. After the path data two parts may stand, each behind a stroke "|":
 * the role of each mark in order, and the word "edges" with the name of each edge in order:
 *
 *     M 0 0 L 9 0 L 9 9 Z M 3 0 L 3 9 M 4 0 L 4 9 | fold inner | edges waist, side, centre back
 *
 * Without the first part every mark is a placement line, without the second no edge has a name.
 */

import { IDENTITY, type Isometry, moveEdge } from "../geometry/isometry.ts";
import { readPath, writePath } from "../geometry/path.ts";
import { selfCrossing } from "../geometry/self-crossing.ts";
import {
  axisExtremes,
  type Bounds,
  boundingBox,
  distance,
  doubleSignedArea,
  type Edge,
  flatten,
  line,
  type Point,
  pointAt,
  radians,
  type Stroke,
  strokeLength,
} from "../geometry/strokes.ts";
import { remember } from "../memo.ts";
import { phrase } from "../phrase.ts";
import { edgeNamesText, mirroredName, readEdgeNames } from "./edge-names.ts";

/** What a line on a pattern means. */
export const ROLES = [
  "cut", "seam", "fold", "inner", "placement", "dart", "notch", "grain", "stitch", "slash", "guide",
] as const; // biome-ignore format: a list
export type Role = (typeof ROLES)[number];

/** A line or curve marked on a piece, with what it means to whoever sews it. */
export interface Mark {
  readonly line: Edge;
  readonly role: Role;
}

export const mark = (line: Edge, role: Role): Mark => ({ line, role });

/** A closed line. */
export interface Outline {
  /** Edges head to tail, the last one ending where the first begins. */
  readonly edges: readonly Edge[];
}

export interface Piece extends Outline {
  /** What each edge is called, such as "waist" or "centre back"; empty for an edge without a name. */
  readonly names: readonly string[];
  readonly marks: readonly Mark[];
}

/** A piece of these edges, named in order; edges beyond the names have none. */
export const pieceOf = (
  edges: readonly Edge[],
  names: readonly string[],
  marks: readonly Mark[] = [],
): Piece => ({ edges, names: edges.map((_, i) => names[i] ?? ""), marks });

/** The most strokes an outline may have: a point every millimetre round a piece of 5 m. */
const MAX_STROKES = 5000;

const pointText = ([x, y]: Point): string => `(${Number(x.toFixed(3))}, ${Number(y.toFixed(3))})`;

/** Kept because reading an outline costs more than most arithmetic on it, and each cell that uses a piece reads its text again. */
const readings = remember<string, Piece>(400);

/** Reads path data as a piece. Throws an Error that names the fault: the outline is open, crosses itself or has no area. */
export const readPiece = (text: string): Piece => readings(text, () => pieceFrom(text));

function pieceFrom(text: string): Piece {
  const { path, roles, named } = splitParts(text);
  const [outline, ...marks] = readPath(path);
  if (!outline || outline.edges.length === 0) throw new Error(phrase`the outline is empty`);
  const strokes = outline.edges.reduce((sum, edge) => sum + edge.length, 0);
  if (strokes > MAX_STROKES)
    throw new Error(phrase`the outline has ${strokes} strokes, more than ${MAX_STROKES}`);
  const end = outline.edges.at(-1)!.at(-1)!.to;
  const size = longerSide(outline.edges);
  const gap = distance(end, outline.start);
  if (!outline.closed && gap > 1e-9 * size) {
    throw new Error(
      phrase`the outline is open: it begins at ${pointText(outline.start)} and ends at ${pointText(end)}; close it with Z`,
    );
  }
  const edges = gap > 1e-9 * size ? [...outline.edges, [line(end, outline.start)]] : outline.edges;
  const drawn = marks
    .map(({ edges: run }, i): Mark => ({ line: run.flat(), role: roles[i] ?? "placement" }))
    .filter(({ line }) => line.length > 0);
  return requireSimple({ edges, names: readEdgeNames(named, edges.length), marks: drawn }, size);
}

/**
 * The piece itself when its outline has an area and does not cross itself, else throws an Error
 * that says so. `size` is roughly the greater of its width and height.
 */
export function requireSimple<P extends Outline>(piece: P, size = longerSide(piece.edges)): P {
  const place = selfCrossing(flattenPiece(piece, size / 2000));
  if (place) throw new Error(phrase`the outline crosses itself near ${pointText(place)}`);
  // Figures past the computer's reach make an area that is no number.
  if (!(pieceArea(piece) > 1e-9 * size * size)) throw new Error(phrase`the outline has no area`);
  return piece;
}

/** The parts of a piece's text: path data, roles of the marks, names of the edges. Throws an Error when a word is not a role. */
function splitParts(text: string): { path: string; roles: Role[]; named: string } {
  const [path = "", ...parts] = text.split("|");
  const words: string[] = [];
  let named = "";
  for (const part of parts) {
    const edges = /^\s*edges(?:\s|$)/.exec(part);
    if (edges) named = part.slice(edges[0].length);
    else words.push(...part.split(/\s+/).filter((word) => word !== ""));
  }
  const unknown = words.find((word) => !(ROLES as readonly string[]).includes(word));
  if (unknown !== undefined)
    throw new Error(phrase`"${unknown.slice(0, 24)}" is not a role of a mark: ${ROLES.join(", ")}`);
  return { path, roles: words as Role[], named };
}

/** The piece as a text: path data, the roles of its marks unless all are placement lines, the names of its edges if any has one. */
export function writePiece(piece: Piece): string {
  const path = writePath([
    { start: piece.edges[0]![0]!.from, edges: piece.edges, closed: true },
    ...piece.marks.map(({ line }) => ({ start: line[0]!.from, edges: [line], closed: false })),
  ]);
  const roles = piece.marks.map(({ role }) => role);
  const named = edgeNamesText(piece.names);
  return [
    path,
    ...(roles.every((role) => role === "placement") ? [] : [roles.join(" ")]),
    ...(named === "" ? [] : [`edges ${named}`]),
  ].join(" | ");
}

/** The outline alone as path data. */
export const outlinePath = ({ edges }: Outline): string =>
  writePath([{ start: edges[0]![0]!.from, edges, closed: true }]);

/** A piece with straight edges through these corners, its edges named in order. */
export function polygon(
  corners: readonly Point[],
  names: readonly string[] = [],
  marks: readonly Mark[] = [],
): Piece {
  const edges = corners.map((corner, i) => [line(corner, corners[(i + 1) % corners.length]!)]);
  return pieceOf(edges, names, marks);
}

/** The greater of an outline's width and height, curves and arcs taken by their ends and middles. */
function longerSide(edges: readonly Edge[]): number {
  const points: Point[] = [];
  for (const edge of edges)
    for (const stroke of edge) {
      points.push(stroke.to);
      if (stroke.kind !== "line") points.push(pointAt(stroke, 0.5));
    }
  // The first stroke begins where the last one ends, unless the outline is open.
  points.push(edges[0]![0]!.from);
  const box = boundingBox(points);
  return Math.max(box.right - box.left, box.high - box.low);
}

export const edgeLength = (edge: Edge): number => edge.reduce((sum, stroke) => sum + strokeLength(stroke), 0);

/** Twice the area that the outline encloses, positive when it runs from +x towards +y. */
export function doublePieceArea({ edges }: Outline): number {
  let sum = 0;
  for (const edge of edges) for (const stroke of edge) sum += doubleSignedArea(stroke);
  return sum;
}

export const pieceArea = (piece: Outline): number => Math.abs(doublePieceArea(piece)) / 2;

/** The outline as a polygon no chord of which strays more than `tolerance` from the true line. */
export function flattenPiece(piece: Outline, tolerance: number): Point[] {
  const points: Point[] = [];
  for (const edge of piece.edges)
    for (const stroke of edge) {
      if (stroke.kind === "line") points.push(stroke.to);
      else for (const point of flatten(stroke, tolerance)) points.push(point);
    }
  return points;
}

/** Least and greatest x and y of the outline, curves and arcs at their true extremes. */
export function pieceBounds(piece: Outline): Bounds {
  return boundingBox(piece.edges.flat().flatMap((stroke) => [stroke.from, stroke.to, ...extremes(stroke)]));
}

function extremes(stroke: Stroke): Point[] {
  if (stroke.kind === "line") return [];
  if (stroke.kind === "arc") {
    const { centre, from, radius, sweep } = stroke;
    const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
    return [0, 1, 2, 3].flatMap((quarter): Point[] => {
      const way =
        (((((quarter * Math.PI) / 2 - start) * Math.sign(sweep)) % (2 * Math.PI)) + 2 * Math.PI) %
        (2 * Math.PI);
      if (way >= Math.abs(sweep)) return [];
      return [[centre[0] + radius * [1, 0, -1, 0][quarter]!, centre[1] + radius * [0, 1, 0, -1][quarter]!]];
    });
  }
  return axisExtremes(stroke).map((share) => pointAt(stroke, share));
}

/** A piece after an isometry; its edges keep their order, numbers and names. */
function transformed({ edges, names, marks }: Piece, isometry: Isometry): Piece {
  return {
    names,
    edges: edges.map((edge) => moveEdge(isometry, edge)),
    marks: marks.map(({ line, role }) => ({ line: moveEdge(isometry, line), role })),
  };
}

/** Turned about (0, 0) by `angle` degrees, from +x towards +y: clockwise on paper, where y points down. */
export function turnPiece(piece: Piece, angle: number): Piece {
  const cos = Math.cos(radians(angle));
  const sin = Math.sin(radians(angle));
  return transformed(piece, { ...IDENTITY, a: cos, b: sin, c: -sin, d: cos });
}

const MIRRORED: Isometry = { ...IDENTITY, a: -1 };

/** The other half of a pair: x becomes −x. Edges keep their order and number; "left side" is named "right side". */
export const mirrorPiece = (piece: Piece): Piece => ({
  ...transformed(piece, MIRRORED),
  names: piece.names.map(mirroredName),
});

/** An edge with x changed to −x, drawn in the same order. */
export const mirrorEdge = (edge: Edge): Edge => moveEdge(MIRRORED, edge);

/** The piece moved by `dx` across the grain and `dy` along it. */
export const movePiece = (piece: Piece, dx: number, dy: number): Piece =>
  transformed(piece, { ...IDENTITY, e: dx, f: dy });
