/** What the drafts of a set-in sleeve and of a two-piece sleeve have in common: the armhole, the ease and the marks that meet. */

import { isBelow } from "../compared-figures.ts";
import type { CallContext, Given, Takes } from "../define.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { type Cap, fitCap } from "./sleeve-cap.ts";

/** The share of an armhole that lies in front of the shoulder seam when no more is known (common practice: the back is a little longer). */
const FRONT_SHARE = 0.49;

/** The armhole and the arm, with which a sleeve's arguments begin. */
export const SLEEVE_MEASURES = {
  armhole: {
    kind: "length",
    usual: [25, 80],
    about: "the armhole the sleeve is sewn into, all round, along its seam",
    from: 5,
    to: 300,
  },
  ease: {
    kind: "length",
    usual: [0, 6],
    about: "how much longer the cap is than the armhole; eased in between the notches",
    from: 0,
    to: 50,
  },
  bicep: {
    kind: "length",
    usual: [15, 70],
    about: "width of the sleeve at the underarm: girth of the upper arm with its ease",
    from: 5,
    to: 200,
  },
  length: {
    kind: "length",
    usual: [8, 90],
    about: "from the crown of the cap down to the wrist edge, or from the underarm (see measured)",
    from: 2,
    to: 200,
  },
  wrist: {
    kind: "length",
    usual: [12, 70],
    about: "width of the sleeve at its lower edge: girth of the wrist, or of the hand, with its ease",
    from: 4,
    to: 200,
  },
} as const satisfies Takes;

/** How the armhole, the ease and the notches are shared out between front and back. */
export const SLEEVE_SHARES = {
  front: {
    kind: "length",
    about:
      "the front of the armhole, from the underarm seam to the shoulder seam; 49 % of the armhole when it is left out",
    from: 2,
    to: 300,
    otherwise: null,
  },
  ease_behind: {
    kind: "share",
    usual: [0.3, 0.7],
    about: "share of the ease that lies behind the shoulder seam",
    from: 0,
    to: 1,
    otherwise: 0.55,
  },
  front_notch: {
    kind: "length",
    about:
      "from the underarm seam up to the front notch, along the armhole; a third of its front when it is left out",
    from: 0,
    to: 200,
    otherwise: null,
  },
  back_notch: {
    kind: "length",
    about:
      "from the underarm seam up to the upper back notch, along the armhole; two fifths of its back when it is left out",
    from: 0,
    to: 200,
    otherwise: null,
  },
} as const satisfies Takes;

export const SLEEVE_USUAL = [
  "ease <= 0.12 * armhole",
  "bicep <= armhole",
  "armhole <= 1.8 * bicep",
  "wrist <= bicep",
  "front <= 0.56 * armhole",
  "0.4 * armhole <= front",
  "front_notch <= back_notch",
] as const;

/** A cap fitted to its armhole, and its notches as lengths along the cap from the back underarm. */
export interface FittedCap {
  readonly cap: Cap;
  readonly length: number;
  /** Notches from the back underarm: the two of the back, the crown, the front. */
  readonly back_notches: readonly [low: number, high: number];
  readonly crown: number;
  readonly front_notch: number;
}

/**
 * The steps from the armhole to the fitted cap. Below the notches the cap is as long as the armhole, so that a
 * notch lies as far from the underarm on both; all the ease lies between the notches and the crown. The lower of the two back
 * notches is a tenth nearer the underarm.
 */
export function fitSleeve(
  given: Given<Pick<typeof SLEEVE_MEASURES, "armhole" | "ease" | "bicep"> & typeof SLEEVE_SHARES>,
  { step, measure }: Pick<CallContext, "step" | "measure">,
): FittedCap {
  const { armhole, ease, bicep, front, ease_behind } = given;
  if (front !== null && !isBelow(front, armhole)) {
    throw new Refusal(
      (say) =>
        phrase`front must be less than the armhole ${say(armhole, front)}, of which it is a part, not ${say(front, armhole)}`,
    );
  }
  const front_armhole = step(
    "front_armhole",
    `IF(front=""; ${FRONT_SHARE} * armhole; front)`,
    front ?? FRONT_SHARE * armhole,
  );
  const back_armhole = step("back_armhole", "armhole - front_armhole", armhole - front_armhole);
  const front_cap = step(
    "front_cap",
    "front_armhole + ease * (1 - ease_behind)",
    front_armhole + ease * (1 - ease_behind),
  );
  const back_cap = step("back_cap", "back_armhole + ease * ease_behind", back_armhole + ease * ease_behind);
  const length = step("cap", "front_cap + back_cap", front_cap + back_cap);
  const front_at = step(
    "front_notch_at",
    'IF(front_notch=""; front_armhole / 3; front_notch)',
    given.front_notch ?? front_armhole / 3,
  );
  const back_at = step(
    "back_notch_at",
    'IF(back_notch=""; 0.4 * back_armhole; back_notch)',
    given.back_notch ?? 0.4 * back_armhole,
  );
  for (const [name, at, whole, where] of [
    ["front_notch", front_at, front_armhole, "front"],
    ["back_notch", back_at, back_armhole, "back"],
  ] as const) {
    if (!isBelow(at, whole))
      throw new Refusal(
        (say) =>
          phrase`${name} must be less than ${say(whole, at)}, the ${where} of the armhole, not ${say(at, whole)}`,
      );
  }
  const cap = fitCap({ front: front_cap, back: back_cap, width: bicep });
  measure(
    "cap_height",
    "the height at which the cap, as wide as the sleeve, is as long as wanted",
    cap.height,
  );
  measure("front_width", "straight across from the crown to the front underarm, found with it", cap.front);
  return {
    cap,
    length,
    back_notches: [0.9 * back_at, back_at],
    crown: back_cap,
    front_notch: length - front_at,
  };
}
