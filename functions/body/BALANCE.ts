import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much more length the wearer needs in front, against the back, than the pattern has, in the
 * book's unit: (front − back) − (pattern_front − pattern_back). Positive, the front must be
 * lengthened by it or the back shortened (an upright or full-breasted figure); negative, the back
 * must be lengthened (a forward one). All four from the neck point to the waist, front and back
 * taken alike. Source: common practice.
 */
export const BALANCE = define({
  name: "BALANCE",
  summary:
    "How much length to move to the front, or to the back, so that a bodice hangs level on the wearer.",
  source: "common practice",
  words: "posture erect stooping round back front waist length back waist length balance hang swing",
  takes: {
    front: {
      kind: "length",
      usual: [20, 80],
      about: "the wearer's front, from neck point over the bust to the waist",
      from: 10,
      to: 120,
    },
    back: {
      kind: "length",
      usual: [20, 80],
      about: "the wearer's back, from neck point down to the waist",
      from: 10,
      to: 120,
    },
    pattern_front: {
      kind: "length",
      usual: [20, 80],
      about: "the pattern's front, measured the same way",
      from: 10,
      to: 120,
    },
    pattern_back: {
      kind: "length",
      usual: [20, 80],
      about: "the pattern's back, measured the same way",
      from: 10,
      to: 120,
    },
  },
  returns: "length",
  alike: {
    "front, back": "either may be the longer",
    "front, pattern_front": "the wearer may be longer or shorter than the pattern",
    "back, pattern_back": "the wearer may be longer or shorter than the pattern",
    "pattern_front, pattern_back": "either may be the longer",
  },
  compute({ front, back, pattern_front, pattern_back }, { step }) {
    const wearer = step("wearer_balance", "front - back", front - back);
    const pattern = step("pattern_balance", "pattern_front - pattern_back", pattern_front - pattern_back);
    step("front_change", "front - pattern_front", front - pattern_front);
    step("back_change", "back - pattern_back", back - pattern_back);
    return step("balance", "wearer_balance - pattern_balance", wearer - pattern);
  },
  draw({ front, back, pattern_front, pattern_back }) {
    const gap = Math.max(front, back) / 8;
    const down = (x: number, length: number, role: "seam" | "guide", label: string) =>
      stroke([[x, 0], [x, length]], role, { label }); // biome-ignore format: points in pairs
    return [
      down(0, pattern_front, "guide", phrase`pattern front`),
      down(gap, front, "seam", phrase`front`),
      down(3 * gap, back, "seam", phrase`back`),
      down(4 * gap, pattern_back, "guide", phrase`pattern back`),
      dimension([gap, pattern_front], [gap, front], { label: phrase`front` }),
      dimension([3 * gap, pattern_back], [3 * gap, back], { label: phrase`back` }),
    ];
  },
  examples: [
    {
      given: { front: 17.5, back: 16, pattern_front: 17, pattern_back: 16.25 },
      gives: 0.75,
      because: "the wearer is 1 1/2 in longer in front, the pattern only 3/4: an upright figure",
    },
    {
      given: { front: 43, back: 44, pattern_front: 44, pattern_back: 42 },
      gives: -3,
      unit: "cm",
      because: "a forward figure: the back is the longer",
    },
  ],
});
