import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength } from "../pieces/piece.ts";
import { PIECES, SEAMS } from "../seams/asked-seam.ts";
import { EXAMPLE_PIECES, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { notchesOf } from "../seams/notches.ts";
import { pieceCalled, piecesOf } from "../seams/piece-list.ts";
import { NOTCHING } from "../seams/seam-list.ts";

/**
 * A piece of the list of pieces with a notch for every seam that the list of seams sews it at, so that the
 * notches of both edges meet. A notch stands in the middle of the edge, or at the places of the row's column
 * "notches at", and on the edge it is sewn to where MATCH_MARK puts it. An edge sewn to several in succession
 * has a notch at each join and at the middle of each of them. Notches are single, or double between edges of
 * a back. Two edges begin at the same end of a seam where their neighbours of the same name say so, else where
 * both are drawn downwards or both upwards; the column "ends" says it otherwise. The first of several edges in succession lies where the edges beside them are called
 * alike, or front and back as their pieces; where nothing says it, it is refused. `size` is 5 mm or 3/16 in
 * when it is left out, the lines of a double notch twice that apart. Source: common practice.
 */
export const SEAM_NOTCHES = define({
  name: "SEAM_NOTCHES",
  summary:
    "A piece of the garment with all its notches, placed from the list of seams so that those of both edges meet.",
  source: "common practice",
  words: "balance marks page of seams single double front back list all pieces at once",
  takes: {
    seams: { ...SEAMS, reads: NOTCHING },
    pieces: PIECES,
    piece: { kind: "text", about: "which piece, as the list of pieces calls it" },
    size: {
      kind: "length",
      usual: [0.2, 2],
      about: "length of a notch",
      from: 0.1,
      to: 5,
      otherwise: { cm: 0.5, in: 3 / 16 },
    },
  },
  returns: "piece",
  compute({ seams, pieces, piece, size }, { measure, unit, decimal }) {
    const found = pieceCalled(piecesOf(pieces), piece, "piece").outline();
    const notches = notchesOf(piece, seams, pieces, { unit, decimal });
    measure(
      "notches",
      "how many notches the list of seams gives the piece, a double one as one",
      notches.length,
    );
    const marks = notches.flatMap(({ edge, at, double }) => {
      const whole = edgeLength(found.edges[edge - 1]!);
      const within = (place: number) => Math.min(Math.max(place, 0), whole);
      const places = double ? [within(at - size), within(at + size)] : [within(at)];
      return places.map((place) => notchOn(found, edge, place, size));
    });
    return { ...found, marks: [...found.marks, ...marks] };
  },
  draw: (_, __, notched) => (typeof notched === "object" ? drawPattern(notched) : []),
  examples: [
    {
      given: { seams: EXAMPLE_SEAMS, pieces: EXAMPLE_PIECES, piece: "sleeve" },
      gives: { area: 144 },
      because: "a notch in the middle of the cap; the outline stays as it is",
      formula: '=SEAM_NOTCHES(seams; pieces; "sleeve")',
    },
  ],
});
