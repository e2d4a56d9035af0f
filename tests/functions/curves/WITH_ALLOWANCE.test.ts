import { areaPathsD, EndType, FillRule, inflatePathsD, JoinType, type PathsD, xorD } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import type { Edge, Point } from "../../../functions/geometry/strokes.ts";
import { edgePart } from "../../../functions/pieces/edges.ts";
import {
  edgeLength,
  flattenPiece,
  mirrorPiece,
  type Piece,
  pieceArea,
  pieceBounds,
  readPiece,
  writePiece,
} from "../../../functions/pieces/piece.ts";
import { type Argument, isRefused, run } from "../../../functions/run.ts";

const give = (...args: Argument[]): string | { refusal: string } => {
  const answer = run(WITH_ALLOWANCE, args, { unit: "cm" });
  return isRefused(answer) ? answer : String(answer);
};
const cut = (...args: Argument[]): Piece => {
  const answer = give(...args);
  if (typeof answer !== "string") throw new Error(answer.refusal);
  return readPiece(answer);
};

/** Outlines with corners both ways, arcs, curves, a hollow neck and an armhole; no corner under 45 degrees. */
const PIECES = {
  rectangle: "M 0 0 L 30 0 L 30 40 L 0 40 Z",
  gore: "M 0 0 L 20 0 L 27 60 L -7 60 Z",
  angle: "M 0 0 L 30 0 L 30 30 L 20 30 L 20 10 L 0 10 Z",
  bevelled_angle: "M 0 0 L 30 0 L 30 30 L 20 30 L 20 10.2 19.8 10 0 10 Z",
  traced_hollow: `M 0 0 L 30 0 L 30 20 L 20 20 L ${Array.from(
    { length: 60 },
    (_, i) => `${15 + 5 * Math.cos((i * Math.PI) / 60)} ${20 - 5 * Math.sin((i * Math.PI) / 60)}`,
  )
    .slice(1)
    .join(" ")} 10 20 L 0 20 Z`,
  circle_skirt: "M 0 12 A 12 12 0 0 0 12 0 L 70 0 A 70 70 0 0 1 0 70 Z",
  bodice: "M 0 8 C 4 8 8 5 8 0 L 20 4 C 17 12 19 20 26 22 L 24 45 L 0 47 Z",
  sleeve: "M 0 12 C 4 12 6 8 10 4 S 20 -2 26 5 S 32 12 36 12 L 30 50 L 6 50 Z",
  collar: "M 0 0 C 8 3 16 3 24 -2 L 27 6 C 18 10 8 10 0 7 Z",
  round: "M 0 0 A 15 15 0 0 1 30 0 A 15 15 0 0 1 0 0 Z",
  teardrop: "M 0 0 C 40 0 10 40 0 0 Z",
  scallops: "M 0 0 L 0 -10 L 30 -10 L 30 0 A 5 5 0 0 1 20 0 A 5 5 0 0 1 10 0 A 5 5 0 0 1 0 0 Z",
};

/** The least distance between a point and a run of strokes. */
function off(p: Point, edge: Edge): number {
  const chain = [edge[0]!.from, ...flattenPiece({ edges: [edge] }, 1e-4)];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < chain.length; i += 1) {
    const [a, b] = [chain[i - 1]!, chain[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy));
  }
  return least;
}

const ring = (piece: Piece): PathsD => [flattenPiece(piece, 1e-3).map(([x, y]) => ({ x, y }))] as PathsD;

describe("the same allowance all round", () => {
  const pieces = Object.entries(PIECES).filter(([name]) => name !== "scallops");
  test.each(pieces)("%s: the outline is the one an independent library inflates", (_, text) => {
    for (const sewn of [readPiece(text), mirrorPiece(readPiece(text))]) {
      for (const seam of [0.5, 1, 2]) {
        const mine = cut(writePiece(sewn), seam, null, "");
        // Mitre limit 3 as ours; chords of the curves within 0.01 mm, figures to 5 places.
        const theirs = inflatePathsD(ring(sewn), seam, JoinType.Miter, EndType.Polygon, 3, 5);
        const apart = Math.abs(areaPathsD(xorD(ring(mine), theirs, FillRule.NonZero, 5)));
        const around = sewn.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
        // A tenth of a millimetre all round would be 0.01 × around.
        expect(apart).toBeLessThan(0.002 * around);
      }
    }
  });

  test("a convex outline grows by perimeter × allowance and what its corners ask", () => {
    // Mitred corners: Σ w²·tan(turn/2). For a rectangle four times w².
    expect(pieceArea(cut(PIECES.rectangle, 1.5, null, ""))).toBeCloseTo(33 * 43, 9);
    // A circle of radius 15 becomes one of radius 17, exactly.
    expect(pieceArea(cut(PIECES.round, 2))).toBeCloseTo(Math.PI * 17 ** 2, 9);
  });

  test("a hollow between scallops that is too tight for the allowance is refused with its radius", () => {
    const hollow = "M 0 0 L 30 0 L 30 20 L 20 20 A 5 5 0 0 0 10 20 L 0 20 Z";
    expect(pieceBounds(cut(hollow, 4, null, "")).high).toBeCloseTo(24, 9);
    expect(give(hollow, 5, null, "")).toMatchObject({
      refusal:
        "seam must be less than 5 cm, the radius of the tightest hollow of edge 4, not 5 cm; in own this edge can have a narrower allowance than the others",
    });
  });
});

describe("each edge by its own allowance", () => {
  test.each(Object.entries(PIECES))(
    "%s: every edge keeps its distance along its whole length",
    (name, text) => {
      const sewn = readPiece(text);
      const count = sewn.edges.length;
      const hem = count >= 3 ? "3" : "";
      const fold = count >= 4 ? "4" : "";
      const [seam, deep] = name === "scallops" ? [0.4, 0.6] : [1, 3];
      const piece = cut(text, seam, deep, hem, fold);
      expect(piece.edges).toHaveLength(count);
      sewn.edges.forEach((edge, i) => {
        const width = String(i + 1) === hem ? deep : String(i + 1) === fold ? 0 : seam;
        const length = edgeLength(edge);
        for (let k = 1; k < 40; k += 1) {
          const p = edgePart(edge, 0, (length * k) / 40).at(-1)!.to;
          // Near its ends a cut edge may be trimmed at an inner corner, or hold the step to its neighbour.
          const from = Math.min(k, 40 - k) * (length / 40);
          const found = off(p, piece.edges[i]!);
          if (from > deep) expect(found).toBeGreaterThan(width - 0.0011);
          if (from > 5 * deep) expect(found).toBeLessThan(width + 0.0011);
        }
      });
    },
  );

  test("the sewing line stays inside as marks, but on the fold, after the piece's own marks", () => {
    const piece = cut(`${PIECES.gore} M 10 5 L 10 50`, 1, 4, "3", "4");
    const sewn = readPiece(PIECES.gore);
    expect(piece.marks).toHaveLength(4);
    expect(piece.marks.slice(1).map(({ line }) => edgeLength(line))).toEqual(
      sewn.edges.slice(0, 3).map((edge) => expect.closeTo(edgeLength(edge), 9)),
    );
  });

  test("a fold edge is only lengthened, in its own line", () => {
    const piece = cut(PIECES.rectangle, 1.5, 4, "3", "4");
    expect(pieceBounds(piece)).toEqual({ left: 0, right: 31.5, low: -1.5, high: 44 });
  });

  test("edges told their own keep it, a blank goes by seam and hem, and a width told so is the same as one told by seam", () => {
    const own = [0.6, 2.5, null, null, 0.6, 1.5];
    const bodice = cut(PIECES.bodice, 1, 4, "5", "", [0.6, 2.5, null, null, null, 1.5]);
    const sewn = readPiece(PIECES.bodice);
    expect(sewn.edges).toHaveLength(6);
    [0.6, 2.5, 1, 1, 4, 1.5].forEach((width, i) => {
      const middle = edgePart(sewn.edges[i]!, 0, edgeLength(sewn.edges[i]!) / 2).at(-1)!.to;
      expect(off(middle, bodice.edges[i]!)).toBeCloseTo(width, 2);
    });
    expect(cut(PIECES.gore, 1, 3, "3", "", [1, 1, 3, 1])).toEqual(cut(PIECES.gore, 1, 3, "3"));
    expect(give(PIECES.gore, 1, 3, "3", "", own)).toMatchObject({
      refusal: "own must be at most 4 cells, one for each edge of the piece, not 6",
    });
    expect(give(PIECES.gore, 1, 3, "3", "4", [null, null, null, 2])).toMatchObject({
      refusal: "own, number 4, must be blank or 0 on a fold, not 2 cm",
    });
  });

  test("without any allowance the outline stays as it is", () => {
    for (const text of Object.values(PIECES))
      expect(pieceArea(cut(text, 0))).toBeCloseTo(pieceArea(readPiece(text)), 8);
  });
});

describe("hem corners", () => {
  test("folded up along the hem, the allowance's side lies on the seam allowance", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (right, left, seam, hem) => {
          const piece = cut(`M 0 0 L 30 0 L ${30 + right} 50 L ${-left} 50 Z`, seam, hem, "3");
          const [, side, low, back] = piece.edges as [Edge, Edge, Edge, Edge];
          expect(low[0]!.from[1]).toBeCloseTo(50 + hem, 8);
          // What lies below the fold line y = 50 of both side cuts, folded up, is on the same cut line.
          for (const [cutLine, end] of [
            [side, low[0]!.from],
            [back, low.at(-1)!.to],
          ] as const)
            expect(off([end[0], 100 - end[1]], cutLine)).toBeLessThan(1e-8);
        },
      ),
      { seed: 1916 },
    );
  });

  test("on a curved hem the side turns back about the hem's line at the corner", () => {
    const piece = cut("M 10 0 L 10 0 L 40 0 L 50 60 A 100 100 0 0 1 0 60 Z", 1.5, 4, "3");
    const hem = readPiece("M 10 0 L 40 0 L 50 60 A 100 100 0 0 1 0 60 Z").edges[2]![0]!;
    if (hem.kind !== "arc") throw new Error("an arc");
    const cutHem = piece.edges[2]!.find(({ kind }) => kind === "arc");
    expect(cutHem).toMatchObject({ radius: expect.closeTo(104, 8) });
    const corner = piece.edges[1]!.at(-1)!;
    const above = piece.edges[1]!.at(-2)!;
    // The fold line there is the tangent; both parts of the side lean to it by the same angle.
    const tangent = Math.atan2(hem.centre[0] - 50, 60 - hem.centre[1]);
    const lean = (from: Point, to: Point) => Math.atan2(to[1] - from[1], to[0] - from[0]) - tangent;
    expect(Math.sin(lean(corner.from, corner.to))).toBeCloseTo(Math.sin(lean(above.from, above.to)), 9);
    expect(Math.cos(lean(corner.from, corner.to))).toBeCloseTo(-Math.cos(lean(above.from, above.to)), 9);
  });

  test("a flared side meets a straight hem by hand's reckoning", () => {
    // Side 1 across in 8 down; its cut line is √65/8 across from it. Below the hem it leans back in.
    const piece = cut("M 0 0 L 20 0 L 25 40 L -5 40 Z", 1, 5, "3");
    const out = Math.sqrt(65) / 8;
    expect(piece.edges[2]![0]!.from[0]).toBeCloseTo(25 + out - 5 / 8, 9);
  });
});

describe("corners", () => {
  test("a sharp point is cut square at three allowances, a right angle is not", () => {
    const sharp = cut("M 0 0 L 40 5 L 0 10 Z", 1);
    const { right } = pieceBounds(sharp);
    expect(right).toBeCloseTo(43, 9);
    expect(pieceBounds(cut("M 0 0 L 20 20 L 0 40 Z", 1)).right).toBeCloseTo(20 + Math.SQRT2, 9);
  });

  test("between allowances of two widths along one line there is a step", () => {
    const piece = cut("M 0 0 L 20 0 L 20 10 L 20 30 L 0 30 Z", 1, 3, "3", "");
    expect(pieceBounds(piece).right).toBe(23);
    expect(pieceArea(piece)).toBeCloseTo(22 * 32 + 2 * 20 + 2 * 1, 9);
  });
});

test.each([
  [
    ["M 0 0 L 5 0 L 6 10 L 7 0 L 12 0 L 12 20 L 0 20 Z", 1.5],
    "seam must be less for the narrow inner corner between edge 2 and edge 3, not 1.5 cm; an edge named in fold_edges gets no allowance",
  ],
  [["M 0 0 L 9 0 L 9 9 L 5 9 L 5 3 L 4 3 L 4 9 L 0 9 Z", 0.6], "seam must be less"],
  [
    ["M 0 0 L 9 0 L 9 9 Z", 1, null, "4"],
    "hem_edges must name edges from 1 to 3, because the piece has 3 edges, not 4",
  ],
  [["M 0 0 L 9 0 L 9 9 Z", 1, null, "2", "2"], "fold_edges and hem_edges must not both name edge 2"],
  [
    ["M 0 0 L 9 0 L 9 9 Z", 1, null, "hem"],
    'hem_edges must be the number of an edge, from 1 to 3, not "hem", because the edges of this piece have no names',
  ],
  [["M 0 0 L 9 0 L 9 9 Z", -1], "seam must be at least 0, not -1 cm"],
  [["M 0 0 L 9 0 L 9 9", 1], "piece is not a valid piece: the outline is open"],
] as [Argument[], string][])("%s is refused in words", (args, sentence) => {
  expect(give(...args)).toMatchObject({ refusal: expect.stringContaining(sentence) });
});
