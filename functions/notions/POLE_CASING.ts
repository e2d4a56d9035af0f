import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much to add beyond the folded edge for a casing that takes a round pole, rod or hoop, in the
 * book's unit, as CASING_DEPTH does for flat elastic: front and back of the casing each go half
 * round the pole, with `ease` to slide it; then the heading, if there is one, and the turning
 * under. Measured from the stitching line instead, the front of the casing is added
 * (`above_stitching`). Source: geometry.
 */
export const POLE_CASING = define({
  name: "POLE_CASING",
  summary: "How much to add at an edge for a casing that takes a round pole, rod, dowel or cane.",
  source: "geometry: each layer goes half round the pole; ease and turning: common practice",
  words: "pole rod casing banner curtain sleeve tunnel dowel tube round heading backdrop hang",
  takes: {
    diameter: { kind: "length", about: "diameter of the pole", from: 0.2, to: 50 },
    ease: {
      kind: "length",
      about: "extra length in each layer to slide the pole",
      from: 0,
      to: 50,
      otherwise: { cm: 1.2, in: 1 / 2 },
    },
    turning: {
      kind: "length",
      about: "width turned under at the raw edge",
      from: 0,
      to: 20,
      otherwise: { cm: 1.2, in: 1 / 2 },
    },
    heading: {
      kind: "length",
      about: "height of the heading, a frill that stands above the pole; no heading when left out",
      from: 0,
      to: 100,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["ease <= diameter", "turning <= 2 * diameter"],
  alike: {
    "diameter, heading": "a heading may be higher or lower than the pole is thick",
  },
  compute({ diameter, ease, turning, heading }, { step }) {
    const half = step("half_girth", "PI() * diameter / 2", (Math.PI * diameter) / 2);
    const tunnel = step("tunnel", "half_girth + ease", half + ease);
    step("above_stitching", "2 * (tunnel + heading) + turning", 2 * (tunnel + heading) + turning);
    return step("depth", "tunnel + heading + turning", tunnel + heading + turning);
  },
  draw({ diameter, heading }, { tunnel = 0, depth = 0, above_stitching: add = 0 }) {
    const long = 3 * add;
    const fold = tunnel + heading;
    return [
      stroke([[0, 0], [long, 0], [long, -add], [0, -add], [0, 0]], "cut"),
      stroke([[0, 0], [long, 0]], "stitch", { label: phrase`stitching` }),
      ...(heading > 0 ? [stroke([[0, -tunnel], [long, -tunnel]], "stitch")] : []),
      stroke([[0, -fold], [long, -fold]], "fold", { label: phrase`fold` }),
      stroke([[0, -2 * fold], [long, -2 * fold]], "fold", { label: phrase`turned under` }),
      dimension([-add / 10, -fold], [-add / 10, -fold - depth], { shows: "depth" }),
      dimension([long * 1.03, 0], [long * 1.03, -tunnel], { label: phrase`tunnel`, shows: "tunnel" }),
      {
        kind: "edge",
        edge: [arc([long / 2, -tunnel / 2], diameter / 2, 0, 2 * Math.PI)],
        role: "placement",
        label: phrase`pole`,
      },
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { diameter: 2, ease: 0.5, turning: 0.5 },
      gives: Math.PI + 1,
      because: "half round a 2 in pole is π in; 1/2 in to slide it and 1/2 in turned under",
    },
    {
      given: { diameter: 3, ease: 1, turning: 1, heading: 2 },
      gives: 1.5 * Math.PI + 4,
      unit: "cm",
      because: "half round the pole 1.5π cm, 1 cm of ease, 2 cm of heading and 1 cm turned under",
    },
  ],
});
