import { define } from "../define.ts";
import { rowStrip } from "../drafting/edge-strips.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { normal } from "../geometry/offset.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { orientation } from "../pieces/allowance.ts";
import { EDGE_OF_PIECE, edgeText } from "../pieces/edge-names.ts";
import { placeAlong } from "../pieces/edges.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, type Mark, mark, type Piece } from "../pieces/piece.ts";
import { liesWithin } from "../pieces/within.ts";
import { Refusal } from "../refusal.ts";

/**
 * The piece with a mark at each place of a list along one of its edges, measured from the edge's beginning or from
 * its end: a notch on the edge; a cross, such as for a button or an eyelet, `inset` within it; or a line square to
 * the edge, such as for a buttonhole, a tuck or a pleat, that begins `inset` within it. `size` is the length of the
 * mark, 1 cm or 3/8 in when it is left out. The outline is not cut into; refuses a place beyond the edge, and
 * crosses and lines outside the piece.
 * Source: common practice.
 */
export const WITH_MARKS = define({
  name: "WITH_MARKS",
  summary: "A pattern piece with all marks of a list along one of its edges: notches, crosses or lines.",
  source: "common practice",
  words: "buttons buttonholes hooks eyelets tucks pleats positions on edge all at once mark placement",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    edge: EDGE_OF_PIECE,
    marks: {
      kind: "length",
      about: 'the places along the edge, as MARKS gives them, "1; 3 1/2; 6 in", or cells with lengths',
      from: 0,
      to: 5000,
      many: true,
      blanks: true,
      marks: true,
    },
    as: {
      kind: "text",
      about: "notches on the edge, crosses within it, or lines square to it",
      choices: ["notch", "cross", "line"],
      otherwise: "notch",
    },
    inset: {
      kind: "length",
      about: "from the edge to the cross or to the beginning of the line",
      from: 0,
      to: 200,
      otherwise: 0,
    },
    size: {
      kind: "length",
      usual: [0.2, 100],
      about: "length of each mark",
      from: 0.1,
      to: 500,
      otherwise: { cm: 1, in: 3 / 8 },
    },
    from: {
      kind: "text",
      about: "which end of the edge the places are measured from",
      choices: ["start", "end"],
      otherwise: "start",
    },
  },
  returns: "piece",
  alike: { "inset, size": "a mark may be longer or shorter than its distance from the edge" },
  compute({ piece, edge, marks, as, inset, size, from }, context) {
    const { measure } = context;
    const places = marks.filter((place) => place !== null);
    const whole = measure(
      "edge_length",
      () => phrase`along ${edgeText(piece, edge)}`,
      edgeLength(piece.edges[edge - 1]!),
    );
    const beyond = places.find((place) => place > whole * (1 + 1e-9));
    if (beyond !== undefined)
      throw new Refusal(
        (say) =>
          phrase`marks must lie on ${edgeText(piece, edge)}, from 0 to ${say(whole, beyond)}, not at ${say(beyond, whole)}`,
      );
    measure("count", "how many marks", places.length);
    for (const place of as === "notch" ? [] : places) {
      const inside = insideOf(piece, edge, Math.min(from === "end" ? whole - place : place, whole));
      if (!liesWithin(piece, as === "line" ? [inside(inset), inside(inset + size)] : [inside(inset)]))
        throw new Refusal((say) =>
          as === "line"
            ? phrase`inset and size must leave the line at ${say(place)} within the piece: it ends ${say(inset + size)} from ${edgeText(piece, edge)}`
            : phrase`inset must leave the cross at ${say(place)} within the piece, not ${say(inset)}`,
        );
    }
    const made = places.flatMap((place) => {
      const at = Math.min(from === "end" ? whole - place : place, whole);
      return as === "notch" ? [notchOn(piece, edge, at, size)] : within(piece, edge, at, inset, size, as);
    });
    return { ...piece, marks: [...piece.marks, ...made] };
  },
  draw({ piece, edge, marks, as, inset, from }, { edge_length = 0 }, marked) {
    if (typeof marked !== "object") return [];
    const at = marks.flatMap((place): Point[] => {
      if (place === null) return [];
      const along = Math.min(from === "end" ? edge_length - place : place, edge_length);
      return [insideOf(piece, edge, along)(as === "cross" ? inset : 0)];
    });
    // Crosses and notches are small: they are drawn so that they are seen at any scale.
    return as === "line"
      ? drawPattern(marked)
      : [...drawPattern(marked), { kind: "marks", at, mark: as, shows: "count" }];
  },
  strip: ({ marks, from }, { edge_length = 0 }) =>
    rowStrip(
      edge_length,
      marks
        .flatMap((place) => (place === null ? [] : [from === "end" ? edge_length - place : place]))
        .toSorted((a, b) => a - b),
    ),
  examples: [
    {
      given: {
        piece: "M 0 0 L 10 0 L 10 20 L 0 20 Z | edges neck, centre front, waist, side",
        edge: "centre front",
        marks: "1; 3 1/2; 6 in",
        as: "cross",
        inset: 0.75,
      },
      gives: { area: 200, edges: [10, 20, 10, 20] },
      because: "three buttons 3/4 in within the front edge; the outline stays as it is",
      formula: '=WITH_MARKS(piece; "centre front"; "1; 3 1/2; 6 in"; "cross"; 3/4)',
    },
    {
      given: {
        piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z",
        edge: 3,
        marks: [5, 10, null],
        as: "line",
        inset: 1,
        size: 3,
        from: "end",
      },
      gives: { area: 800 },
      unit: "cm",
      because: "two lines 3 cm long, 1 cm within the hem, 5 and 10 cm from the end of the hem",
    },
  ],
});

/** A cross or a line within the edge. */
function within(
  piece: Piece,
  edge: number,
  at: number,
  inset: number,
  size: number,
  as: "cross" | "line",
): Mark[] {
  const inside = insideOf(piece, edge, at);
  if (as === "line") return [mark([line(inside(inset), inside(inset + size))], "placement")];
  return [
    mark([line(inside(inset - size / 2), inside(inset + size / 2))], "placement"),
    mark([line(inside(inset, -size / 2), inside(inset, size / 2))], "placement"),
  ];
}

/** Points within an edge at a place along it: so far inside, and so far aside from there. */
function insideOf(piece: Piece, edge: number, at: number): (by: number, aside?: number) => Point {
  const run = piece.edges[edge - 1]!;
  const { index, share, point } = placeAlong(run, at);
  const [nx, ny] = normal(run[index]!, share, orientation(piece));
  return (by, aside = 0) => [point[0] - nx * by - ny * aside, point[1] - ny * by + nx * aside];
}
