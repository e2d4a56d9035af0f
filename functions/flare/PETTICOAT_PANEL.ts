import { FLAME } from "../cautions.ts";
import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawPanel } from "../drafting/flared-panel.ts";
import { dimension } from "../drawing/shapes.ts";
import { monotoneThrough } from "../geometry/monotone-curve.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, mark, pieceArea, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { overPad } from "../worn/over-pad.ts";

/**
 * Half of a petticoat or gathered skirt that hangs level over a pad or hoop, in the book's unit,
 * without allowances: the hem stays straight on the grain and the top is shaped, highest at the
 * back, as long from top to hem at back, side and front as measured there. Centre back lies along
 * the y axis from (0, 0). Edges: 1 waist from back to front, 2 centre front, 3 hem, 4 centre back.
 * The top is a smooth curve through the three heights that never passes above or below the two
 * beside it (functions/geometry/monotone-curve.ts); it is pleated or gathered afterwards.
 * Source: common practice; geometry.
 */
export const PETTICOAT_PANEL = define({
  name: "PETTICOAT_PANEL",
  summary:
    "Half a petticoat or gathered skirt over a pad: hem on the straight, top shaped longer at the back.",
  source: "common practice; geometry",
  words: "petticoat bum roll pad hoop pannier bustle gathered skirt longer at back shaped top level hem",
  takes: {
    width: {
      kind: "length",
      about: "half the flat width, from centre back to centre front",
      from: 5,
      to: 1000,
    },
    back: { kind: "length", about: "length at centre back, over the pad", from: 5, to: 250 },
    side: { kind: "length", about: "length at the side, over the pad", from: 5, to: 250 },
    front: { kind: "length", about: "length at centre front", from: 5, to: 250 },
    side_share: {
      kind: "share",
      about: "share of the width that lies between back and side",
      from: 0.1,
      to: 0.9,
      otherwise: 0.5,
    },
  },
  returns: "piece",
  usual: ["front <= side", "front <= back", "side <= 1.4 * front", "back <= 1.4 * front"],
  alike: { "back, side": "over side hoops the side is the longer" },
  compute({ width, back, side, front, side_share }, { step, measure }) {
    const steepest = Math.max(Math.abs(back - side), Math.abs(side - front));
    if (isAbove(steepest, 2 * width)) {
      throw new Refusal(
        (say) =>
          phrase`width must be more than ${say(steepest / 2, steepest, width)} to shape a top that rises by ${say(steepest, steepest / 2, width)}, not ${say(width, steepest / 2, steepest)}`,
      );
    }
    step("rise", "back - front", back - front);
    step("side_place", "width * side_share", width * side_share);
    const corners: Point[] = [[0, 0], [width * side_share, back - side], [width, back - front]]; // biome-ignore format: points in a row
    const top = monotoneThrough(corners);
    const [low, far]: [Point, Point] = [[0, back], [width, back]]; // biome-ignore format: points in a row
    const piece = pieceOf(
      [top, [line(top.at(-1)!.to, far)], [line(far, low)], [line(low, [0, 0])]],
      ["waist", "centre front", "hem", "centre back"],
      [mark([line(corners[1]!, [corners[1]![0], back])], "placement")],
    );
    measure("top_edge", "length of the shaped top before gathering", edgeLength(top));
    step("front_edge", "front", front);
    step("hem_edge", "width", width);
    step("back_edge", "back", back);
    measure("area", "area of the half panel", pieceArea(piece));
    return piece;
  },
  draw({ width, back }, _, piece) {
    if (typeof piece !== "object") return [];
    const side = piece.marks[0]!.line[0]!;
    return [
      ...drawPanel(piece, [width / 20, back * 0.1], {
        area: "area",
        top: "top_edge",
        hem: "hem_edge",
        side: "front_edge",
      }),
      dimension(side.from, side.to, { label: phrase`side` }),
      dimension([width / 40, 0], [width / 40, back], { label: phrase`centre back`, shows: "back_edge" }),
    ];
  },
  worn: (given, _, lengths) => overPad(given, lengths),
  examples: [
    {
      given: { width: 60, back: 42, side: 41, front: 40 },
      gives: { area: 2460, edges: [Math.sqrt(3604), 40, 60, 42] },
      because: "an even slope of 2 in: a trapezium, the mean of 42 and 40 times 60",
    },
    {
      given: { width: 150, back: 110, side: 108, front: 102, side_share: 0.5 },
      gives: { width: 150, length: 110 },
      unit: "cm",
      because: "8 cm longer at the back, most of it lost from side to front",
    },
  ],
  cautions: FLAME,
});
