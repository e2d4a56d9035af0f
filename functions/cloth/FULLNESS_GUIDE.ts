import { define } from "../define.ts";

/** Ratios of flat to finished, as old handbooks print them. */
const RATIOS = {
  "light skirt": 2,
  "medium skirt": 1.5,
  ruffle: 1.5,
  lace: 1.5,
  "neck frill": 2,
  "french ruffle": 7 / 3,
  frill: 3,
  curtain: 2,
  smocking: 4,
  "hat facing": 3,
} as const;

type Use = keyof typeof RATIOS;

/**
 * How full handbooks advise to make a gathered thing: its flat length over its finished length.
 * A guide, not a law: sheer cloth takes more, stiff cloth less; gather a sample. Light and medium
 * skirt valances and curtains, french ruffle: Stephenson 1905; ruffle: Kinne & Cooley 1916; lace:
 * Fryer 1913; neck frill: Ladies' Work-Table Book 1844; frill: NIMI p. 212; smocking: University
 * of Wisconsin textbook page; shirred hat facing: Archer 1911.
 */
export const FULLNESS_GUIDE = define({
  name: "FULLNESS_GUIDE",
  summary: "How many times its finished length a gathered edge is cut, as handbooks advise.",
  source:
    "Stephenson, Cutting and Draping, 1905; Kinne & Cooley 1916; Fryer 1913; Ladies' Work-Table Book 1844; NIMI Dress Making Trade Practical; Univ. of Wisconsin textbook page; Archer, Needlecraft, 1911",
  words: "gather ratio ruffle fullness times how full frill lace shirring multiply",
  takes: {
    use: { kind: "text", about: "what is gathered", choices: Object.keys(RATIOS) as Use[] },
  },
  returns: "share",
  work({ use }, { measure }) {
    return measure(
      "fullness",
      "flat length over finished length, as the handbooks have it",
      RATIOS[use as Use],
    );
  },
  examples: [
    { given: { use: "light skirt" }, gives: 2, because: "Stephenson 1905, flat valances: light goods twice" },
    {
      given: { use: "medium skirt" },
      gives: 1.5,
      because: "Stephenson 1905: medium goods one and a half times",
    },
    { given: { use: "frill" }, gives: 3, because: "NIMI p. 212: a density of one third" },
  ],
});
