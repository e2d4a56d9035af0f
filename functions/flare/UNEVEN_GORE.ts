import { define } from "../define.ts";
import {
  gorePlace,
  leanFor,
  lengthAt,
  lengthsRound,
  type UnevenSkirt,
  unevenGore,
} from "../drafting/uneven-gore.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { dimension, outline, type Shape } from "../drawing/shapes.ts";
import { degrees, line } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, mark, pieceArea, pieceBounds } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";
import { between, skirt as skirtWorn } from "../worn/skirt.ts";

/**
 * One gore of a skirt that is longer at the back (or at the front), in the book's unit, without
 * allowances, right side up, the middle of its waist at (0, 0). The same arguments with other gore numbers give its neighbours:
 * the right side of each is as long as the left side of the next, and their hems run on without a corner
 * (functions/drafting/uneven-gore.ts). Gore 1 lies at centre front or begins there; the numbers go round over the wearer's left
 * side, as the drawing goes to the right. Edges: 1 waist, 2 right side, 3 hem, 4 left side. Lengths are
 * measured along the seams and down the middle of a gore. Source: geometry.
 */
export const UNEVEN_GORE = define({
  name: "UNEVEN_GORE",
  summary:
    "One gore of a skirt that is longer at the back than in front, by its number; neighbouring gores meet at seam and hem.",
  source: "geometry",
  words:
    "gored skirt gores unlike sides longer at the back train sweep walking skirt trained dip hem trailing bustle",
  takes: {
    gore: {
      kind: "count",
      about: "which gore, counted from centre front over the left side",
      from: 1,
      to: 48,
    },
    gores: { kind: "count", about: "how many gores the skirt has", from: 3, to: 48 },
    waist: { kind: "length", usual: [40, 200], about: "waist of the skirt, all round", from: 10, to: 500 },
    hip: { kind: "length", usual: [45, 300], about: "hip of the skirt, all round", from: 10, to: 1000 },
    hip_drop: { kind: "length", about: "from waist down to hip", from: 1, to: 100 },
    front_length: { kind: "length", about: "from waist to hem at centre front", from: 5, to: 300 },
    back_length: { kind: "length", about: "from waist to hem at centre back", from: 5, to: 400 },
    hem: { kind: "length", about: "the hem of the whole skirt along its edge, as sewn", from: 10, to: 3000 },
    side_length: {
      kind: "length",
      about: "from waist to hem at the side; half-way between front and back when it is left out",
      from: 5,
      to: 400,
      otherwise: null,
    },
    centre: {
      kind: "text",
      about: "what lies at centre front: the middle of gore 1, or the seam where gore 1 begins",
      choices: ["gore", "seam"],
      otherwise: "gore",
    },
  },
  returns: "piece",
  usual: [
    "waist <= hip",
    "hip <= 1.05 * hem",
    "front_length <= back_length",
    "back_length <= 1.7 * front_length",
    "hip_drop <= 0.6 * front_length",
    "front_length <= side_length",
    "side_length <= back_length",
  ],
  alike: {
    "waist, front_length": "a skirt may be longer or shorter than it is round at the waist",
    "hip, front_length": "a skirt may be longer or shorter than it is round at the hip",
    "hip, back_length": "a skirt may be longer or shorter than it is round at the hip",
    "hip, side_length": "a skirt may be longer or shorter than it is round at the hip",
  },
  compute(given, { step, measure }) {
    const { gore, gores, waist, hip, front_length, back_length } = given;
    if (gore > gores)
      throw new Refusal(phrase`gore must be at most ${gores}, the number of gores, not ${gore}`);
    const side_length = step(
      "side",
      'IF(side_length=""; (front_length + back_length) / 2; side_length)',
      given.side_length ?? (front_length + back_length) / 2,
    );
    const skirt: UnevenSkirt = { ...given, side_length };
    const { mean, wave, twist } = lengthsRound(skirt);
    step("mean", "(front_length + 2 * side + back_length) / 4", mean);
    step("wave", "(front_length - back_length) / 2", wave);
    step("twist", "(front_length - 2 * side + back_length) / 4", twist);
    const from = gorePlace(skirt, gore);
    step("begins", 'IF(centre="gore"; gore - 1.5; gore - 1) * 360 / gores', degrees(from));
    step("ends", "begins + 360 / gores", degrees(from) + 360 / gores);
    step("top_edge", "waist / gores", waist / gores);
    step("hip_width", "hip / gores", hip / gores);
    const lean = leanFor(skirt);
    measure("lean", "degrees that each side leans out below the hip, found for the hem", degrees(lean));
    const piece = refuseUnlessSimple(
      "waist, hip, hem and the lengths give a gore that lies over itself: check these figures",
      unevenGore(skirt, gore, lean),
    );
    const rule = (angle: string) =>
      `mean + wave * COS(RADIANS(${angle})) + twist * COS(2 * RADIANS(${angle}))`;
    step("left_side", rule("begins"), edgeLength(piece.edges[3]!));
    step("right_side", rule("ends"), edgeLength(piece.edges[1]!));
    step("middle", rule("(begins + ends) / 2"), lengthAt({ mean, wave, twist }, from + Math.PI / gores));
    measure("hem_edge", "the hem of this gore along its edge", edgeLength(piece.edges[2]!));
    measure("area", "area of the gore", pieceArea(piece));
    const width = hip / gores / 2;
    return {
      ...piece,
      marks: [mark([line([-width, given.hip_drop], [width, given.hip_drop])], "guide")],
    };
  },
  draw(_, { middle = 0 }, piece) {
    if (typeof piece !== "object") return [];
    const { left, right, high } = pieceBounds(piece);
    const off = high / 14;
    const edge = (number: number, shows: string): Shape => ({
      kind: "edge",
      edge: piece.edges[number - 1]!,
      role: "seam",
      label: piece.names[number - 1]!,
      shows,
    });
    return [
      ...outline(piece, { shows: "area" }),
      edge(1, "top_edge"),
      edge(2, "right_side"),
      edge(3, "hem_edge"),
      edge(4, "left_side"),
      grainDrawn(piece),
      dimension([left - off, 0], [left - off, middle], { label: phrase`middle`, shows: "middle" }),
      dimension([left, high + off], [right, high + off]),
    ];
  },
  worn({ waist, hip, hip_drop, hem, gores, ...given }, { mean = 0, wave = 0, twist = 0 }, lengths) {
    const depth = (share: number) => lengthAt({ mean, wave, twist }, Math.PI * (1 - 2 * share));
    const below = hip_drop / Math.max(given.front_length, given.back_length, mean);
    const [above, rest] = [between(waist, hip), between(hip, hem)];
    return skirtWorn(
      {
        waist,
        hip,
        hip_drop,
        depth,
        round: (share) => (share < below ? above(share / below) : rest((share - below) / (1 - below))),
        // A gored skirt folds at its seams.
        folds: Math.max(6, Math.min(40, gores)),
      },
      lengths,
    );
  },
  examples: [
    {
      given: {
        gore: 1,
        gores: 6,
        waist: 72,
        hip: 102,
        hip_drop: 20,
        front_length: 96,
        back_length: 108,
        hem: 300,
      },
      gives: { edges: [12, 102 - 6 * Math.cos(Math.PI / 6)] },
      unit: "cm",
      because:
        "the front gore's sides lie 30° from centre front: 96 cm there, and 12 cm more at the back by half a wave",
    },
    {
      given: {
        gore: 4,
        gores: 7,
        waist: 28,
        hip: 42,
        hip_drop: 8,
        front_length: 38,
        back_length: 45,
        hem: 126,
        side_length: 40,
      },
      gives: { edges: [4, 45] },
      because: "the fourth of seven gores ends at centre back, 180° from centre front",
    },
    {
      given: {
        gore: 2,
        gores: 4,
        waist: 72,
        hip: 104,
        hip_drop: 20,
        front_length: 90,
        back_length: 90,
        hem: 200,
        centre: "seam",
      },
      gives: { edges: [18, 90], length: 90 },
      unit: "cm",
      because: "as long in front as at the back, all sides are equal",
    },
  ],
});
