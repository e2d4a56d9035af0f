import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { roundDownToWhole } from "../whole-number.ts";

/**
 * Length of each running stitch for cartridge pleats, in the book's unit. Rows of even stitches
 * one above the other, drawn up, make a pleat for every two stitches, one over and one under; a
 * pleat stands out by the length of a stitch. `pitch` is the width that each pleat takes up along
 * the band; it can't be less than two thicknesses of the cloth. Source: common practice; geometry.
 */
export const CARTRIDGE_STITCH = define({
  name: "CARTRIDGE_STITCH",
  summary:
    "How long to make the gathering stitches so that cartridge pleats draw a skirt in to its band, or a ruff in to its collar.",
  source: "common practice; geometry",
  words:
    "cartridge pleats organ gauging stroked gathers running stitch size rows full skirt gown ruff collar",
  takes: {
    flat: { kind: "length", about: "width before drawing up", from: 5, to: 20_000 },
    finished: { kind: "length", about: "width of the band it is drawn up to", from: 2, to: 5000 },
    pitch: {
      kind: "length",
      usual: [0.1, 3],
      about: "width of band for each pleat, approximately",
      from: 0.05,
      to: 10,
    },
    thickness: {
      kind: "length",
      about: "thickness of the cloth and its padding",
      from: 0,
      to: 5,
      otherwise: 0,
    },
  },
  returns: "length",
  compute({ flat, finished, pitch, thickness }, { step }) {
    if (!isAbove(flat, finished))
      throw new Refusal(
        (say) =>
          phrase`flat must be wider than finished to be drawn up, not ${say(flat, finished)} against ${say(finished, flat)}`,
      );
    const least = step("least_pitch", "2 * thickness", 2 * thickness);
    if (pitch < least * (1 - 1e-9)) {
      throw new Refusal(
        (say) =>
          phrase`pitch must be at least ${say(least, pitch)}, two thicknesses of the cloth, not ${say(pitch, least)}`,
      );
    }
    if (isAbove(pitch, finished))
      throw new Refusal(
        (say) =>
          phrase`pitch must be at most the finished ${say(finished, pitch)}, not ${say(pitch, finished)}`,
      );
    const nearest = step(
      "nearest",
      "INT(ROUND(finished / pitch + 0.5; 8))",
      roundDownToWhole(finished / pitch + 0.5),
    );
    // Rounding up must not crowd the pleats closer than the cloth is thick: then one fewer goes in.
    const pleats = step(
      "pleats",
      "IF(nearest * least_pitch > finished * 1.000000001; nearest - 1; nearest)",
      nearest * least > finished * 1.000000001 ? nearest - 1 : nearest,
    );
    step("true_pitch", "finished / pleats", finished / pleats);
    step("fullness", "flat / finished", flat / finished);
    const stitches = step("stitches", "2 * pleats", 2 * pleats);
    return step("stitch", "flat / stitches", flat / stitches);
  },
  draw(_, { stitch = 0, true_pitch = 0, pleats = 0 }) {
    // A few stitches on the flat cloth, and below them the pleats they make seen from above.
    const shown = Math.min(pleats, 12);
    const rows = [0, 1].flatMap((row) =>
      Array.from({ length: shown }, (_, i) => {
        const [x, y] = [2 * i * stitch, row * stitch];
        return stroke([[x, y], [x + stitch, y]], "stitch");
      }),
    ); // biome-ignore format: points in pairs
    const fold = Array.from(
      { length: 2 * shown + 1 },
      (_, i): Point => [(i * true_pitch) / 2, (i % 2 ? 5 : 4) * stitch],
    );
    return [
      ...rows,
      dimension([0, -stitch / 2], [stitch, -stitch / 2], { shows: "stitch" }),
      stroke(fold, "fold", { label: phrase`drawn up, from above` }),
      dimension([0, 5.5 * stitch], [true_pitch, 5.5 * stitch], { shows: "true_pitch" }),
    ];
  },
  examples: [
    {
      given: { flat: 120, finished: 15, pitch: 0.125 },
      gives: 0.5,
      because: "120 pleats and 240 stitches in 120 in",
    },
    {
      given: { flat: 300, finished: 40, pitch: 0.4 },
      gives: 1.5,
      unit: "cm",
      because: "100 pleats: 300 cm over 200 stitches",
    },
  ],
});
