import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { fitSleeve, SLEEVE_MEASURES, SLEEVE_SHARES, SLEEVE_USUAL } from "../drafting/sleeve.ts";
import { capEdge } from "../drafting/sleeve-cap.ts";
import { curveFromUpright, smoothFromUpright } from "../drafting/upright-seam.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { type Edge, line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength, mark, pieceArea, pieceOf } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";

/**
 * A one-piece set-in sleeve, in the book's unit, without allowances, as it lies right side up for the
 * right arm: the crown at (0, 0), the back at the left. Edges: 1 cap, as long as the armhole with its
 * ease; 2 front seam; 3 wrist; 4 back seam, just as long as the front seam. Both seams leave the cap square to it, so that
 * the cap has no corner at the underarm once they are closed. The cap's height is found
 * for its width, and has one solution at most (functions/drafting/sleeve-cap.ts). One notch marks the
 * front and two the back, as far from the underarm as on the armhole, one the crown, one the elbow on
 * either seam, half-way down. Guide lines: the underarm line, the elbow. No published draft is followed: the lengths
 * are geometry, the shape of the cap and the places of the notches are common practice. The cap is about as high as that of
 * a published sleeve with the same width and length of cap (Burton, School Sewing): see the test.
 */
export const SET_IN_SLEEVE = define({
  name: "SET_IN_SLEEVE",
  summary:
    "A one-piece set-in sleeve whose cap is fitted to an armhole with the ease wanted, with its notches.",
  source:
    "geometry, not a published draft; common practice for the shape of the cap and the places of the notches",
  words:
    "sleeve pattern draft a sleeve block cap head crown armscye armhole fitted one-piece shirt sleeve bicep",
  takes: {
    ...SLEEVE_MEASURES,
    measured: {
      kind: "text",
      about: "where the length is measured from: the crown of the cap, or straight down from the underarm",
      choices: ["crown", "underarm"],
      otherwise: "crown",
    },
    elbow: {
      kind: "length",
      about: "width of the sleeve at the elbow; the seams go on evenly to the wrist when it is left out",
      from: 4,
      to: 200,
      otherwise: null,
    },
    ...SLEEVE_SHARES,
  },
  returns: "piece",
  usual: [...SLEEVE_USUAL, "elbow <= 1.1 * bicep", "wrist <= 1.1 * elbow"],
  alike: {
    "armhole, length": "a short sleeve may be shorter than its armhole, a long one is longer",
    "bicep, length": "a short sleeve may be shorter than it is wide, a long one is longer",
    "wrist, front": "a sleeve may be narrower or wider below than half its armhole",
  },
  compute(given, context) {
    const { step, measure, cm } = context;
    const { length, wrist, elbow, measured } = given;
    const fitted = fitSleeve(given, context);
    const { cap } = fitted;
    const over = measured === "crown";
    const under = over ? length - cap.height : length;
    if (isBelow(under, 0.05 * length)) {
      throw new Refusal(
        (say) =>
          phrase`length must be more than the cap, which is ${say(cap.height, length)} high, not ${say(length, cap.height)}`,
      );
    }
    step("underarm", 'IF(measured="crown"; length - cap_height; length)', under);
    const middle = (cap.front - cap.back) / 2;
    const low = cap.height + under;
    const elbowLine = cap.height + under / 2;
    const side = (way: 1 | -1): Edge => {
      const top: Point = [way === 1 ? cap.front : -cap.back, cap.height];
      const end: Point = [middle + (way * wrist) / 2, low];
      return elbow === null
        ? curveFromUpright(top, end)
        : smoothFromUpright([top, [middle + (way * elbow) / 2, elbowLine], end]);
    };
    const [front, back] = [side(1), side(-1)];
    const edges = [capEdge(cap), front, [line(front.at(-1)!.to, back.at(-1)!.to)], reverseEdge(back)];
    const names = ["cap", "front seam", "wrist", "back seam"];
    const piece = refuseUnlessSimple(
      "bicep, elbow, wrist and length give seams that cross one another or the cap: check these figures",
      pieceOf(edges, names),
    );
    const seam = measure("seam", "length of either seam along its line", edgeLength(front));
    step("wrist_edge", "wrist", wrist);
    measure("area", "area of the sleeve", pieceArea(piece));
    const size = cm(0.5);
    const notch = (edge: number, at: number) => notchOn(piece, edge, at, size);
    const width = elbow === null ? (given.bicep + wrist) / 2 : elbow;
    return {
      ...piece,
      marks: [
        ...fitted.back_notches.map((at) => notch(1, at)),
        notch(1, fitted.crown),
        notch(1, fitted.front_notch),
        notch(2, seam / 2),
        notch(4, seam / 2),
        mark([line([-cap.back, cap.height], [cap.front, cap.height])], "guide"),
        mark([line([middle - width / 2, elbowLine], [middle + width / 2, elbowLine])], "guide"),
      ],
    };
  },
  draw({ bicep }, { cap_height = 0, front_width = 0, underarm = 0 }, piece) {
    if (typeof piece !== "object") return [];
    const left = front_width - bicep;
    const off = bicep / 12;
    const low = cap_height + underarm;
    const [cap, front, wrist] = piece.edges;
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: cap!, role: "seam", label: phrase`cap`, shows: "cap" },
      { kind: "edge", edge: front!, role: "seam", label: phrase`front seam`, shows: "seam" },
      { kind: "edge", edge: wrist!, role: "seam", label: phrase`wrist`, shows: "wrist_edge" },
      ...edgeLabelsDrawn(piece, [4]),
      grainDrawn(piece),
      dimension([left - off, 0], [left - off, cap_height], {
        label: phrase`cap height`,
        shows: "cap_height",
      }),
      dimension([left - off, cap_height], [left - off, low], { label: phrase`underarm`, shows: "underarm" }),
      dimension([left, cap_height], [front_width, cap_height], { label: phrase`bicep` }),
      dimension([0, -off], [front_width, -off], { label: phrase`front`, shows: "front_width" }),
    ];
  },
  examples: [
    {
      given: { armhole: 44, ease: 3, bicep: 34, length: 60, wrist: 22 },
      gives: { edges: [47], length: 60, width: 34 },
      unit: "cm",
      because: "the cap is 3 cm longer than the armhole of 44, and 34 cm wide",
    },
    {
      given: {
        armhole: 17,
        ease: 1.25,
        bicep: 13.5,
        length: 17,
        wrist: 9,
        measured: "underarm",
        elbow: 11.5,
        front: 8.25,
        front_notch: 2.75,
        back_notch: 3.5,
      },
      gives: { edges: [18.25], width: 13.5 },
      because: "17 round the armhole and 1 1/4 eased in",
    },
    {
      given: { armhole: 44, ease: 0, bicep: 40, length: 45, wrist: 26, measured: "underarm" },
      gives: { edges: [44], width: 40 },
      unit: "cm",
      because: "a shirt's low, wide cap without ease",
    },
  ],
});
