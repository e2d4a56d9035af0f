import { define } from "../define.ts";
import { foldBracket } from "../drawing/fold-bracket.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline, type Shape } from "../drawing/shapes.ts";
import { normal } from "../geometry/offset.ts";
import { phrase } from "../phrase.ts";
import { type EdgeAllowance, orientation, withAllowances } from "../pieces/allowance.ts";
import { edgeText, hemEdges } from "../pieces/edge-names.ts";
import { edgeNumbers, placeAlong } from "../pieces/edges.ts";
import { edgeLength, type Piece, pieceArea } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * The cut outline of a piece whose outline is the sewing line: every edge moved out by its own
 * allowance, in the book's unit. Edges keep name, number and order; the sewing line stays as marks.
 * Straight edges and arcs are exact, the parallel of a curve keeps its distance to 0.01 mm.
 * Corners are mitred; where a mitre would stand out more than three allowances (sharper than about
 * 39°) it is cut square there; where a seam runs into a hem the side goes on below the hem's fold
 * line as its own mirror image, so that the hem folded up lies on the seam allowance; where widths
 * change along one line there is a step. An edge on the fold gets no allowance; `own` gives single edges an allowance of their own,
 * such as a narrow one at the neck or a wide one at a side seam to let out later. Refuses an allowance wider than a
 * hollow of the edge, or an inner corner too narrow for it. Source: common practice; geometry.
 */
export const WITH_ALLOWANCE = define({
  name: "WITH_ALLOWANCE",
  summary:
    "A pattern piece with seam and hem allowances added, except on the fold, with corners ready to cut.",
  source: "common practice; geometry",
  words:
    "seam allowance turnings add cutting line sewing line offset hem turn back mitre inlay different edges",
  takes: {
    piece: { kind: "piece", about: "the pattern piece; its outline is the sewing line" },
    seam: {
      kind: "length",
      usual: [0, 10],
      about: "allowance of every edge that is neither a hem nor a fold",
      from: 0,
      to: 50,
    },
    hem: {
      kind: "length",
      usual: [0, 50],
      about: "allowance of the hem; the same as seam when left out",
      from: 0,
      to: 200,
      otherwise: null,
    },
    hem_edges: {
      kind: "text",
      about:
        'the hem edges, by name or number, such as "hem" or "2, 4"; when left out, the edges named "hem", or else edge 3 of a piece with four edges',
      otherwise: null,
    },
    fold_edges: {
      kind: "text",
      about: 'the edges that lie on a fold of the cloth, by name or number, such as "centre back" or "4"',
      otherwise: "",
    },
    own: {
      kind: "length",
      about:
        "allowances of single edges, one cell for each edge in order; a blank edge takes the seam or hem allowance",
      from: 0,
      to: 200,
      otherwise: null,
      many: true,
      blanks: true,
    },
  },
  returns: "piece",
  alike: { "seam, hem": "a narrow hem may be less than the seams" },
  compute(given, { step, measure, cm }) {
    const { piece, seam, hem } = given;
    step("hem_allowance", 'IF(hem=""; seam; hem)', hem ?? seam);
    const cut = withAllowances(piece, each(given), cm(0.001));
    const whole = measure("cut_area", "area inside the cutting line", pieceArea(cut));
    const sewn = measure("sewn_area", "area inside the sewing line", pieceArea(piece));
    step("allowance_area", "cut_area - sewn_area", whole - sewn);
    return cut;
  },
  draw(given, { hem_allowance }, cut) {
    if (typeof cut !== "object") return [];
    const { piece } = given;
    const allowances = each(given);
    const widths = piece.edges.flatMap((edge, i): Shape[] => {
      const { width, name } = allowances[i]!;
      if (width === 0) return [];
      const { index, share, point } = placeAlong(edge, edgeLength(edge) / 3);
      const [nx, ny] = normal(edge[index]!, share, orientation(piece));
      const out: readonly [number, number] = [point[0] + nx * width, point[1] + ny * width];
      return [
        dimension(point, out, name === "hem" && width === hem_allowance ? { shows: "hem_allowance" } : {}),
      ];
    });
    const folds = allowances.flatMap(({ name }, i) =>
      name === "fold_edges" ? [foldBracket(cut, i + 1)] : [],
    );
    return [
      ...outline(cut, { shows: "cut_area" }),
      ...folds,
      grainDrawn(cut),
      ...edgeLabelsDrawn(piece),
      ...widths,
    ];
  },
  examples: [
    {
      given: { piece: "M 0 0 L 10 0 L 10 20 L 0 20 Z", seam: 0.5 },
      gives: { width: 11, length: 21, area: 231, edges: [11, 21, 11, 21] },
      because: "half an inch all round a rectangle",
    },
    {
      given: { piece: "M 0 0 L 10 0 L 10 20 L 0 20 Z", seam: 1.5, hem: 4, fold_edges: "4" },
      gives: { width: 11.5, length: 25.5, area: 293.25 },
      because: "one side on the fold, 1.5 cm above and at the other side, a hem of 4 cm",
      unit: "cm",
    },
    {
      given: {
        piece: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z",
        seam: 1,
        hem: 1,
        hem_edges: "",
      },
      gives: { area: 910 * Math.PI + 104 },
      because:
        "a quarter circle skirt: arcs of 9 and 61 about the same centre, and 1 cm along both straight sides",
      unit: "cm",
    },
    {
      given: {
        piece: "M 0 0 L 10 0 L 10 20 L 0 20 Z",
        seam: 0.5,
        hem: 2,
        own: [0.25, 1, null, null],
      },
      gives: { width: 11.5, length: 22.25, area: 11.5 * 22.25 },
      because: "a quarter inch at the top, an inch to let out at one side",
    },
    {
      given: { piece: "M 0 0 L 20 0 L 25 40 L -5 40 Z", seam: 1, hem: 5, hem_edges: "3" },
      gives: { length: 46 },
      because: "a flared skirt: the hem's corners turn back in along the sides",
      unit: "cm",
    },
  ],
});

interface Allowances {
  readonly piece: Piece;
  readonly seam: number;
  readonly hem: number | null;
  readonly hem_edges: string | null;
  readonly fold_edges: string;
  readonly own: readonly (number | null)[] | null;
}

/** What each edge of the piece gets. */
function each({ piece, seam, hem, hem_edges, fold_edges, own }: Allowances): EdgeAllowance[] {
  const count = piece.edges.length;
  const hems = hem_edges === null ? new Set(hemEdges(piece)) : edgeNumbers(hem_edges, piece, "hem_edges");
  const folds = edgeNumbers(fold_edges, piece, "fold_edges");
  if (own && own.length > count)
    throw new Refusal(
      phrase`own must be at most ${count} cells, one for each edge of the piece, not ${own.length}`,
    );
  return piece.edges.map((_, i): EdgeAllowance => {
    const number = i + 1;
    const ownWidth = own?.[i] ?? null;
    if (folds.has(number)) {
      if (hem_edges !== null && hems.has(number))
        throw new Refusal(phrase`fold_edges and hem_edges must not both name ${edgeText(piece, number)}`);
      if (ownWidth)
        throw new Refusal(
          (say) => phrase`own, number ${number}, must be blank or 0 on a fold, not ${say(ownWidth, 0)}`,
        );
      return { width: 0, name: "fold_edges" };
    }
    if (hems.has(number)) return { width: ownWidth ?? hem ?? seam, name: "hem" };
    return ownWidth === null ? { width: seam, name: "seam" } : { width: ownWidth, name: "own" };
  });
}
