import { define } from "../define.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { DRESS_MAKING } from "../sources.ts";

/** Ratios of flat to finished, as old handbooks print them. */
const RATIOS = {
  "light valance": 2,
  "medium valance": 1.5,
  ruffle: 1.5,
  lace: 1.5,
  "neck frill": 2,
  "french ruffle": 7 / 3,
  frill: 3,
  curtain: 2,
  smocking: 4,
  "hat facing": 3,
} as const;

const SKIRT = "gathered skirt" as const;

const USES = [...(Object.keys(RATIOS) as (keyof typeof RATIOS)[]), SKIRT] as const;

/**
 * How full handbooks advise to make a gathered thing: its flat length over its finished length.
 * A guide, not a law: sheer cloth takes more, stiff cloth less; gather a sample. A gathered skirt
 * goes by what it measures round the hem, 3 to 3 1/2 yd whatever the waist (common practice), so
 * its fullness is that over the waist. Light and medium flat valances and curtains, french ruffle: Stephenson 1905; ruffle: Kinne & Cooley 1916; lace:
 * Fryer 1913; neck frill: Ladies' Work-Table Book 1844; frill: Dress Making, Trade Practical, p. 212; smocking: University
 * of Wisconsin textbook page; shirred hat facing: Archer 1911.
 */
export const FULLNESS_GUIDE = define({
  name: "FULLNESS_GUIDE",
  summary: "How many times its finished length a gathered edge is cut, as handbooks advise.",
  source: `Stephenson, Cutting and Draping, 1905; Kinne & Cooley 1916; Fryer 1913; Ladies' Work-Table Book 1844; ${DRESS_MAKING}; Univ. of Wisconsin textbook page; Archer, Needlecraft, 1911`,
  words: "gather ratio gathered skirt hem round ruffle fullness times how full frill lace shirring multiply",
  takes: {
    use: { kind: "text", about: "the kind of thing that is gathered", choices: USES },
    finished: {
      kind: "length",
      about: "for a gathered skirt only: length of the waist or band that it is gathered to",
      from: 10,
      to: 1000,
      otherwise: null,
    },
    round: {
      kind: "length",
      about: "for a gathered skirt only: length round the hem, usually 3 to 3 1/2 yd, 2.75 to 3.2 m",
      from: 50,
      to: 2000,
      otherwise: { cm: 300, in: 117 },
    },
  },
  returns: "share",
  compute({ use, finished, round }, { step, measure }) {
    if (use === SKIRT) {
      if (finished === null)
        throw new Refusal(
          phrase`finished must be given for a gathered skirt: it goes 3 to 3 1/2 yd round the hem, whatever the waist`,
        );
      return step("fullness", "round / finished", round / finished);
    }
    return measure("fullness", "flat length over finished length, as the handbooks advise", RATIOS[use]);
  },
  examples: [
    {
      given: { use: "light valance" },
      gives: 2,
      because: "Stephenson 1905, flat valances: light goods twice",
    },
    {
      given: { use: "gathered skirt", finished: 26 },
      gives: 4.5,
      because: "common practice: 3 1/4 yd round, 117 in, gathered to a waist of 26",
    },
    {
      given: { use: "medium valance" },
      gives: 1.5,
      because: "Stephenson 1905: medium goods one and a half times",
    },
    {
      given: { use: "frill" },
      gives: 3,
      because: "Dress Making, Trade Practical, p. 212: a density of one third",
    },
  ],
});
