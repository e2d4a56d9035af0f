import { define } from "../define.ts";
import { stroke } from "../drawing/shapes.ts";
import { radians } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { askedSeam, SEAM_ASKED, SEAMS } from "../seams/asked-seam.ts";
import { EXAMPLE_PIECES, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { JOINING } from "../seams/seam-list.ts";
import { measuredSeam, sideAngle } from "../seams/seam-sides.ts";

/**
 * The angle of one side of a seam to the grain of its piece, in degrees: 0 along the grain, 90 across it, 45 on
 * the true bias. Of a curve or of edges in succession it is the mean, each part by its length. The grain
 * lies down the outline, unless the list of pieces says cross or bias. Source: geometry.
 */
export const SEAM_GRAIN = define({
  name: "SEAM_GRAIN",
  summary:
    "At what angle to the grain a side of a seam of the list lies: 0 along it, 45 on the bias, 90 across.",
  source: "geometry",
  words: "page of seams bias straight cross grain edge angle stretch stay tape list",
  takes: {
    ...SEAM_ASKED,
    seams: { ...SEAMS, reads: JOINING },
    which: {
      kind: "text",
      about: "the side that piece and edge name, or the second that it is sewn to",
      choices: ["first", "second"],
      otherwise: "first",
    },
  },
  returns: "angle",
  compute({ which, ...asked }, { measure }) {
    const { seam, asked: own } = askedSeam(asked);
    const side = measuredSeam(seam, asked.pieces).sides[(which === "first") === (own === 0) ? 0 : 1];
    return measure("angle", () => phrase`mean angle of ${side.text} to the grain`, sideAngle(side));
  },
  draw(_, { angle = 0 }) {
    const turn = radians(angle);
    const tip = [Math.sin(turn) * 10, Math.cos(turn) * 10] as const;
    return [
      stroke([[0, 0], [0, 10]], "grain", { label: phrase`grain` }),
      stroke([[0, 0], tip], "seam", { label: phrase`edge` }),
      { kind: "angle", at: [0, 0], from: [0, 10], to: tip, shows: "angle" },
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { seams: EXAMPLE_SEAMS, pieces: EXAMPLE_PIECES, piece: "front", edge: "side" },
      gives: 0,
      because: "the side runs straight down",
      formula: '=SEAM_GRAIN(seams; pieces; "front"; "side")',
    },
    {
      given: { seams: EXAMPLE_SEAMS, pieces: EXAMPLE_PIECES, piece: "sleeve", edge: "cap", which: "second" },
      gives: 90,
      because: "the edge of the armhole piece runs straight across",
      formula: '=SEAM_GRAIN(seams; pieces; "sleeve"; "cap"; ; ; "second")',
    },
  ],
});
