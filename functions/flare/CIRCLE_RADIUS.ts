import { define } from "../define.ts";
import { innerEdge } from "../drafting/circle-part.ts";
import { drawFlare } from "../drafting/flared-panel.ts";

/**
 * Radius of the inner edge of a circle part, in the book's unit: the edge to be sewn, with its
 * ease, over 2π times the part of a circle. Seam allowance lies inside it. Source: geometry.
 */
export const CIRCLE_RADIUS = define({
  name: "CIRCLE_RADIUS",
  summary: "The radius to cut a waist or neck at for a circle, half circle or any part of a circle.",
  source: "geometry",
  words: "circle skirt half three-quarter quarter cape flounce waist neck hole compass string",
  takes: {
    waist: { kind: "length", about: "the edge it is sewn to, all round", from: 0.5, to: 5000 },
    circle: {
      kind: "share",
      about: "how much of a circle: 1 a whole circle, 0.5 half, 2 two circles",
      from: 0.02,
      to: 20,
      otherwise: 1,
    },
    ease: {
      kind: "length",
      about: "how much to ease or gather in; negative to stretch",
      from: -50,
      to: 500,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["ease < waist"],
  compute({ waist, circle, ease }, { step }) {
    const edge = step("edge", "waist + ease", innerEdge(waist, ease));
    const turn = step("turn", "2 * PI() * circle", 2 * Math.PI * circle);
    return step("radius", "edge / turn", edge / turn);
  },
  draw: (_, { edge = 0, radius = 0 }) => drawFlare(edge, 2 * edge, radius, { radius: "radius" }),
  examples: [
    { given: { waist: 72 }, gives: 11.4591559026, within: 1e-9, unit: "cm", because: "72/2π" },
    { given: { waist: 72, circle: 0.5 }, gives: 22.9183118052, within: 1e-9, unit: "cm", because: "72/π" },
    {
      given: { waist: 27, circle: 0.75, ease: 1 },
      gives: 28 / (1.5 * Math.PI),
      because: "28 in on three quarters of a circle",
    },
  ],
});
