import { FLAME } from "../cautions.ts";
import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Length of a skirt or petticoat at one place, in the book's unit: from the waist to the floor
 * there, over pad and petticoats, plus the shoe's heel if it was measured without shoes, minus the
 * clearance from the floor. Measure front, side and back separately: over a pad the back is the
 * longest. Waistband and hem are not included. Source: common practice.
 */
export const SKIRT_LENGTH = define({
  name: "SKIRT_LENGTH",
  summary:
    "How long a skirt must be at front, side or back for the hem to clear the floor by a given height.",
  source: "common practice",
  words: "floor clearance heel shoe pad bum roll hoop petticoat long back front side hem level",
  takes: {
    waist_to_floor: {
      kind: "length",
      usual: [40, 140],
      about: "from waist to floor at this place, the tape over pad and petticoats",
      from: 20,
      to: 200,
    },
    clearance: { kind: "length", about: "from hem to floor; negative for a train", from: -200, to: 150 },
    heel: {
      kind: "length",
      usual: [0, 16],
      about: "height of the shoe's heel, when measured without shoes",
      from: 0,
      to: 30,
      otherwise: 0,
    },
  },
  returns: "length",
  alike: { "clearance, heel": "a hem may clear the floor by more or less than the heel" },
  compute({ waist_to_floor, clearance, heel }, { step }) {
    const drop = step("drop", "waist_to_floor + heel", waist_to_floor + heel);
    if (!isBelow(clearance, drop)) {
      throw new Refusal(
        (say) =>
          phrase`clearance must be less than the ${say(drop, clearance)} from waist to floor, not ${say(clearance, drop)}`,
      );
    }
    return step("skirt", "drop - clearance", drop - clearance);
  },
  draw({ clearance }, { drop = 0, skirt = 0 }) {
    const wide = drop / 3;
    return [
      stroke([[-wide, drop], [wide, drop]], "guide", { label: phrase`floor` }),
      stroke([[-wide / 6, 0], [wide / 6, 0]], "seam", { label: phrase`waist` }),
      stroke([[wide / 6, 0], [wide / 2, skirt]], "cut"),
      stroke([[-wide / 6, 0], [-wide / 2, skirt]], "cut"),
      dimension([0, 0], [0, skirt], { label: phrase`skirt`, shows: "skirt" }),
      dimension([wide * 0.8, 0], [wide * 0.8, drop], { shows: "drop" }),
      ...(clearance > 0 ? [dimension([0, skirt], [0, drop], { label: phrase`clear` })] : []),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { waist_to_floor: 42, clearance: 1.5, heel: 2 },
      gives: 42.5,
      because: "2 in of heel more, 1 1/2 in clear of the floor",
    },
    { given: { waist_to_floor: 104, clearance: 5 }, gives: 99, unit: "cm", because: "measured in its shoes" },
  ],
  cautions: `A hem that touches the floor trips on stairs: walk the set in it. ${FLAME}`,
});
