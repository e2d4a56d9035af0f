import { define, type Given } from "../define.ts";
import { drawPanel, flaredPanel, STRAIGHT_GRAIN, type StraightGrain } from "../drafting/flared-panel.ts";
import {
  hiddenFolds,
  insertPleats,
  PLEATS_TO_INSERT,
  requireSimplePleated,
  topStrip,
} from "../drafting/pleat-insertion.ts";
import { marksDrawn } from "../drawing/shapes.ts";
import { degrees } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { placeAlong } from "../pieces/edges.ts";
import { movePiece, type Piece, turnPiece } from "../pieces/piece.ts";
import { pleatTurns } from "../worn/pleat-turns.ts";
import { between, panelsRound, skirt } from "../worn/skirt.ts";

/**
 * A straight or flared panel with pleats opened at given places, in the book's unit, without
 * allowances. Edges: 1 top, 2 right side, 3 hem, 4 left side; marked, three lines to a knife
 * pleat and six to a box or inverted one: the fold that shows, the inner fold, the placement line
 * it is brought to. Hidden layers are shaped to meet the seam when folded (functions/drafting/pleat-insertion.ts).
 * A box or inverted pleat at the very beginning or end is opened by half, for cutting on the fold.
 * Refuses pleats that reach past the panel or lie over it. Source: geometry.
 */
export const PLEATED_PANEL = define({
  name: "PLEATED_PANEL",
  summary:
    "A panel with pleats opened where you want them, straight or wedge-shaped, with folds and placement lines marked.",
  source: "geometry: the piece folded like paper, cut and unfolded",
  words: "knife box inverted kick pleat godet wedge godet pleat insert fullness marks fold placement skirt",
  takes: {
    top: { kind: "length", about: "the top once pleated", from: 1, to: 5000 },
    hem: { kind: "length", about: "the hem once pleated", from: 1, to: 10000 },
    depth: { kind: "length", about: "from top to hem, square to both", from: 1, to: 500 },
    ...PLEATS_TO_INSERT,
    straight: STRAIGHT_GRAIN,
  },
  returns: "piece",
  usual: ["top <= hem"],
  alike: {
    "top, depth": "it may be wider or longer",
    "hem, depth": "it may be wider or longer",
    "fold_depth, hem_fold_depth": "a wedge may open at either end",
  },
  compute(
    { top, hem, depth, places, fold_depth, hem_fold_depth, style, towards, straight },
    { step, measure },
  ) {
    const { piece, takenTop, takenHem } = insertPleats(
      flaredPanel(top, hem, depth, "left"),
      pleatsWanted({ places, fold_depth, hem_fold_depth, style, towards }),
    );
    measure("lines", "how many fold, inner-fold and placement lines are marked", piece.marks.length);
    measure("taken_at_top", "cloth that the pleats hide along the top", takenTop);
    measure("taken_at_hem", "cloth that the pleats hide along the hem", takenHem);
    step("flat_top", "top + taken_at_top", top + takenTop);
    step("flat_hem", "hem + taken_at_hem", hem + takenHem);
    step("side", "depth", depth);
    return setStraight(piece, (hem - top) / depth, (takenHem - takenTop) / depth, straight);
  },
  draw({ straight }, { flat_top = 0 }, piece) {
    if (typeof piece !== "object") return [];
    const inside = { left: 0.03, middle: 0.5, right: 0.97 }[straight] * flat_top;
    return [
      ...drawPanel({ ...piece, marks: [] }, placeAlong(piece.edges[0]!, inside).point, {
        top: "flat_top",
        hem: "flat_hem",
        side: "side",
      }),
      ...marksDrawn(piece),
    ];
  },
  worn(given, { flat_top = 0, flat_hem = 0 }, lengths) {
    const { top, hem, depth } = given;
    const { count, says } = panelsRound(top, "panel", lengths);
    const turns = hiddenFolds(pleatsWanted(given), [top, hem]);
    return skirt(
      {
        waist: count * top,
        depth,
        round: between(count * flat_top, count * flat_hem),
        folded: between(count * top, count * hem),
        pleats: pleatTurns(turns, top, count),
        assumed: [says, phrase`the pleats hang closed`],
      },
      lengths,
    );
  },
  strip: (_, __, piece) => (typeof piece === "object" ? topStrip(piece) : { length: 0, marks: [] }),
  examples: [
    {
      given: { top: 24, hem: 24, depth: 10, places: [6, 12, 18], fold_depth: [1] },
      gives: { area: 300, width: 30, edges: [30, 10, 30, 10] },
      because: "three knife pleats an inch deep add six inches to twenty-four",
    },
    {
      given: { top: 24, hem: 24, depth: 10, places: "6; 12; 18 in", fold_depth: [1] },
      gives: { area: 300, width: 30 },
      because: "the same three pleats, their places as one text",
    },
    {
      given: { top: 20, hem: 20, depth: 30, places: [10], fold_depth: [0], hem_fold_depth: [4] },
      gives: { edges: [20, 30, 28, 30] },
      unit: "cm",
      because: "a wedge: nothing at the top, two layers of 4 cm at the hem",
    },
    {
      given: {
        top: 15,
        hem: 21,
        depth: 8,
        places: [0],
        fold_depth: [1.5],
        style: "inverted",
        straight: "left",
      },
      gives: { edges: [18, 8, 24, 8] },
      because: "half of an inverted pleat at centre back, cut on the fold: two layers of 1 1/2 in",
    },
    {
      given: { top: 24, hem: 24, depth: 12, places: [12], fold_depth: [2], style: "box" },
      gives: { area: 384, width: 32 },
      because: "a box pleat takes four layers",
    },
  ],
});

const pleatsWanted = (given: Pick<Given<typeof PLEATS_TO_INSERT>, keyof typeof PLEATS_TO_INSERT>) => ({
  places: given.places.filter((place) => place !== null),
  depths: given.fold_depth,
  hemDepths: given.hem_fold_depth,
  style: given.style,
  towards: given.towards,
});

/**
 * The opened piece, its left side straight so far, turned so that the wanted part is: (0, 0) is
 * its upper corner on that side, or midway between both. `flare` and `opened` are, roughly and in
 * radians, the angle that the panel and its pleats turn by.
 */
function setStraight(piece: Piece, flare: number, opened: number, straight: StraightGrain): Piece {
  const [from, to] = [piece.edges[1]![0]!.from, piece.edges[1]!.at(-1)!.to];
  const lean = Math.atan2(to[0] - from[0], to[1] - from[1]);
  const whole = lean + 2 * Math.PI * Math.round((flare + opened - lean) / (2 * Math.PI));
  const share = { left: 0, middle: 0.5, right: 1 }[straight];
  // A fan of less than half a circle can not come round on itself.
  const sound = Math.abs(flare) + Math.abs(opened) < 3 ? piece : requireSimplePleated(piece);
  if (share === 0) return sound;
  return turnPiece(movePiece(sound, -from[0] * share, -from[1] * share), degrees(whole * share));
}
