import { FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of cloth from a point to one `out` from it and `up` above it, drawn tight, with `extra` on
 * top for hems and falls; in the book's unit. Source: Pythagoras.
 */
export const SLANT_LENGTH = define({
  name: "SLANT_LENGTH",
  summary: "How long cloth must be to go straight from one place to another that is higher and farther out.",
  source: "geometry; awnings: Stephenson, Cutting and Draping, 1905, plate 155",
  words: "awning canopy slope hypotenuse train tent sail diagonal backdrop",
  takes: {
    out: { kind: "length", about: "horizontal distance", from: 0, to: 10_000 },
    up: { kind: "length", about: "difference in height", from: 0, to: 10_000 },
    extra: { kind: "length", about: "extra length for hems and falls", from: 0, to: 1000, otherwise: 0 },
  },
  returns: "length",
  alike: {
    "out, extra": "hems and falls may be longer than the way",
    "up, extra": "hems and falls may be longer than the way",
  },
  compute({ out, up, extra }, { step }) {
    const slant = step("slant", "SQRT(out^2 + up^2)", Math.hypot(out, up));
    return step("length", "slant + extra", slant + extra);
  },
  draw({ out, up }) {
    return [
      stroke(
        [
          [0, 0],
          [out, up],
        ],
        "cut",
        { shows: "slant" },
      ),
      dimension([0, up], [out, up], { label: phrase`out` }),
      dimension([0, 0], [0, up], { label: phrase`up` }),
    ];
  },
  examples: [
    {
      given: { out: 36, up: 36, extra: 12 },
      gives: 62.9116882454,
      within: 1e-9,
      because: "Stephenson 1905: 3 ft out and 3 ft up, and a foot more; the published figure is 5 ft 3 in",
    },
    { given: { out: 30, up: 40 }, gives: 50, unit: "cm", because: "a 3-4-5 triangle" },
  ],
  cautions: FLAME,
});
