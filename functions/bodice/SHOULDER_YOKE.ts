import { define } from "../define.ts";
import { BODICE_NECK, bothNecklines } from "../drafting/neckline.ts";
import { cutBack, cutFront, facingBack, joinYoke } from "../drafting/shoulder-yoke.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { edgeLength, type Piece, pieceArea } from "../pieces/piece.ts";

/**
 * Half of a yoke over the shoulder, in one piece without a shoulder seam, or what is left of the front or the back
 * below it; in the book's unit, without allowances. The front is cut parallel to its shoulder, the back
 * across the grain; the front's part is laid to the back's at the shoulder, mirrored where both are drawn for the same hand, and the back keeps its place, so
 * that centre back may lie on the fold. Edges keep their names; a name that front and back share begins with front or back; the cuts are
 * called "yoke line" ("front yoke line" and "back yoke line" on the yoke). The two shoulders must be
 * equal within 1 mm. Source: geometry; the lines of the yoke are common practice.
 */
export const SHOULDER_YOKE = define({
  name: "SHOULDER_YOKE",
  summary:
    "A shoulder yoke without a shoulder seam from the front and the back of a bodice or shirt, or what is left below it.",
  source: "geometry; common practice for the lines of the yoke",
  words: "yoke shoulder shirt yoke back yoke blouse split join bodice upper part",
  takes: {
    ...BODICE_NECK,
    front_depth: {
      kind: "length",
      usual: [1, 20],
      about: "how far below the shoulder seam the yoke ends in front, square to that seam",
      from: 0.2,
      to: 60,
    },
    back_depth: {
      kind: "length",
      usual: [3, 30],
      about: "how far below the neck the yoke ends at centre back",
      from: 0.2,
      to: 80,
    },
    part: {
      kind: "text",
      about: "the yoke, or what is left of the front or of the back below it",
      choices: ["yoke", "front", "back"],
      otherwise: "yoke",
    },
  },
  returns: "piece",
  usual: ["front_depth <= back_depth"],
  compute(given, { step, measure, cm }) {
    const { front_shoulder, back, back_shoulder, front_depth, back_depth, part } = given;
    const { front: front_line, back: back_line } = bothNecklines(given);
    const front = facingBack(
      { piece: given.front, shoulder: front_shoulder, line: front_line },
      { piece: back, shoulder: back_shoulder, line: back_line },
    );
    const ahead = cutFront(front, front_shoulder, front_depth, "front_depth");
    const behind = cutBack(back, back_line.neck.at(-1)!.to, back_shoulder, back_depth, "back_depth");
    const [one, two] = [front.edges[front_shoulder - 1]!, back.edges[back_shoulder - 1]!];
    const yoke = joinYoke(ahead.upper, one, behind.upper, two, cm(0.1));
    const line = (piece: Piece) => edgeLength(piece.edges.at(-1)!);
    measure("front_line", "along the line of the yoke in front", line(ahead.upper));
    measure("back_line", "along the line of the yoke at the back", line(behind.upper));
    const whole = measure("both_areas", "area of the front and the back", pieceArea(front) + pieceArea(back));
    const rest = measure(
      "rest_area",
      "area of what is left of them",
      pieceArea(ahead.rest) + pieceArea(behind.rest),
    );
    step("yoke_area", "both_areas - rest_area", whole - rest);
    const below = cutFront(given.front, front_shoulder, front_depth, "front_depth").rest;
    const piece = { yoke, front: below, back: behind.rest }[part];
    measure("area", "area of this piece", pieceArea(piece));
    return piece;
  },
  draw: (_, __, piece) => (typeof piece === "object" ? drawPattern(piece, { area: "area" }) : []),
  examples: [
    {
      given: {
        front:
          "M 3 0 L 9 0 L 9 20 L 0 20 L 0 3 A 3 3 0 0 0 3 0 Z | edges shoulder, armhole, waist, centre front, neckline",
        front_neck: "neckline",
        front_shoulder: "shoulder",
        back: "M 3 0 L 9 0 L 9 20 L 0 20 L 0 1 L 3 0 Z | edges shoulder, armhole, waist, centre back, neckline",
        back_neck: "neckline",
        back_shoulder: "shoulder",
        front_depth: 2,
        back_depth: 4,
      },
      gives: { width: 9, length: 7, area: 61.5 - Math.sqrt(5) - 4.5 * Math.asin(2 / 3) },
      because:
        "2 in of the front, less the neck's segment of a circle, and 5 of the back, where centre back begins 1 in below the shoulder",
    },
  ],
});
