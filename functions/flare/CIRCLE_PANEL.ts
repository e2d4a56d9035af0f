import { define } from "../define.ts";
import { innerEdge } from "../drafting/circle-part.ts";
import { drawPanel, flaredPanel, grainPoint, STRAIGHT_GRAIN } from "../drafting/flared-panel.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { between, skirt } from "../worn/skirt.ts";

/**
 * One panel of a circle skirt, cape or flounce, in the book's unit, without allowances: a ring
 * sector of 360 · circle / panels degrees. Edges: 1 waist, 2 right side, 3 hem, 4 left side; (0, 0)
 * where the straight grain meets the waist. Refuses a panel of more than a full circle. Source: geometry.
 */
export const CIRCLE_PANEL = define({
  name: "CIRCLE_PANEL",
  summary: "One panel of a circle skirt, half circle, cape or flounce, as a piece.",
  source: "geometry",
  words: "circle skirt half three-quarter quarter cape flounce annular ruffle ring panel peplum",
  takes: {
    waist: { kind: "length", about: "the edge it is sewn to, all round", from: 0.5, to: 5000 },
    length: { kind: "length", about: "from waist to hem", from: 0.5, to: 500 },
    circle: {
      kind: "share",
      about: "how much of a circle all panels together make: 0.5 half a circle, 2 two circles",
      from: 0.02,
      to: 20,
      otherwise: 1,
    },
    panels: { kind: "count", about: "how many of these panels go round", from: 1, to: 100, otherwise: 1 },
    ease: {
      kind: "length",
      about: "how much to ease or gather in at the waist",
      from: -50,
      to: 500,
      otherwise: 0,
    },
    straight: STRAIGHT_GRAIN,
  },
  returns: "piece",
  usual: ["ease < waist"],
  alike: { "waist, length": "a skirt may be longer or shorter than the edge it is sewn to" },
  compute({ waist, length, circle, panels, ease, straight }, { step }) {
    const edge = step("edge", "waist + ease", innerEdge(waist, ease));
    if (circle > panels * (1 + 1e-9)) {
      throw new Refusal(
        phrase`panels must be at least ${Math.ceil(circle)} for ${numberText(circle, 4)} circles, not ${panels}`,
      );
    }
    step("radius", "edge / (2 * PI() * circle)", edge / (2 * Math.PI * circle));
    step("angle", "360 * circle / panels", (360 * circle) / panels);
    const top = step("top_edge", "edge / panels", edge / panels);
    const gain = (2 * Math.PI * circle * length) / panels;
    const hem = step("hem_edge", "top_edge + RADIANS(angle) * length", top + gain);
    step("hem_all_round", "hem_edge * panels", hem * panels);
    step("side", "length", length);
    step("area", "(top_edge + hem_edge) / 2 * length", ((top + hem) / 2) * length);
    return flaredPanel(top, hem, length, straight, ["waist", "right side", "hem", "left side"]);
  },
  draw({ straight }, { top_edge = 0 }, piece) {
    if (typeof piece !== "object") return [];
    return drawPanel(piece, grainPoint(top_edge, straight), {
      area: "area",
      top: "top_edge",
      hem: "hem_edge",
      side: "side",
    });
  },
  worn({ waist, length, ease }, { edge = 0, hem_all_round = 0 }, lengths) {
    return skirt({ waist, depth: length, round: between(edge, hem_all_round), gathered: ease > 0 }, lengths);
  },
  examples: [
    {
      given: { waist: 72, length: 60, panels: 2 },
      gives: { edges: [36, 60, 36 + 60 * Math.PI, 60] },
      unit: "cm",
      because: "half of a full circle: each side of the skirt gains π × 60",
    },
    {
      given: { waist: 28, length: 30, circle: 0.5, straight: "left" },
      gives: { edges: [28, 30, 28 + 30 * Math.PI, 30] },
      because: "a half circle cut in one, one front edge on the straight",
    },
  ],
});
