import type { Chapter } from "./topic.ts";

/** What makers look for and Ellwand has no function for, and what comes nearest. */
export const NOT_YET: Chapter = {
  title: "Not in Ellwand yet",
  topics: [
    {
      name: "No shirt or shawl collar yet",
      summary:
        "Ellwand has no function that drafts a collar with stand and fall, a lapel or a shawl collar; it drafts stand collars and flat collars.",
      words:
        "collar, shirt collar, collar with stand and fall, shawl collar, lapel, revers, roll collar, turn-down",
      says: [
        "`STAND_COLLAR` drafts a stand, straight or curved, to the length of the neckline, and `FLAT_COLLAR` a flat collar from the front and the back of a bodice. `TURN_OF_CLOTH` says how much larger the outer layer is cut. A collar that you have on paper comes in by its points with `OUTLINE`.",
      ],
      see: ["STAND_COLLAR", "FLAT_COLLAR", "TURN_OF_CLOTH", "OUTLINE"],
    },
    {
      name: "No shirt, stays or jacket yet",
      summary:
        "Ellwand has no function that drafts a shirt, a waistcoat, a jacket or stays; it drafts the foundation of a close-fitting bodice.",
      words:
        "shirt, blouse, waistcoat, jacket, coat, stays, corset pattern, princess seam, side body, doublet",
      says: [
        "`BODICE_FOUNDATION` drafts front and back to the waist from direct measurements. A pattern on paper comes in by its points with `OUTLINE`. `DRAFT_SCALE` scales a printed draft to the wearer, `SEAM_GIRTH` gives the dipped waist seam that a skirt is sewn to, and `EASE_CHECK`, `BALANCE` and `MEASURE_CHECK` test what you have.",
      ],
      see: ["BODICE_FOUNDATION", "OUTLINE", "DRAFT_SCALE", "SEAM_GIRTH", "BALANCE"],
    },
    {
      name: "No sleeve in one with the bodice yet",
      summary:
        "Ellwand has no function that drafts a raglan, a kimono sleeve or a leg-of-mutton sleeve; it drafts sleeves with a cap, and gathered sleeves as strips.",
      words: "raglan, kimono sleeve, dolman, batwing, leg of mutton, gigot, puff sleeve",
      says: [
        "`SET_IN_SLEEVE` and `TWO_PIECE_SLEEVE` draft a sleeve whose cap fits its armhole, and `SLASHED_PANEL` opens a panel for fullness. A gathered sleeve begins from *New*, “Gathered sleeve and cuff”. A sleeve on paper comes in with `OUTLINE`; `CAP_EASE` and `CAP_CHECK` compare its cap with the armhole.",
      ],
      see: ["SET_IN_SLEEVE", "TWO_PIECE_SLEEVE", "CUFF", "CAP_CHECK", "SLASHED_PANEL", "OUTLINE"],
    },
    {
      name: "No hat, hood or glove yet",
      summary: "Ellwand has no function that drafts a hat, a hood, a bonnet or a glove.",
      words: "hat, cap, hood, bonnet, coif, glove, mitten, shoe, stocking, headwear, brim, crown",
      says: [
        "`DISC` cuts a round crown, `FLARED_PANEL` a brim or a side band that is wider below, and `OUTLINE` takes any piece from paper.",
      ],
      see: ["DISC", "FLARED_PANEL", "OUTLINE"],
    },
    {
      name: "No pocket yet",
      summary: "Ellwand has no function for pockets.",
      words: "pocket, pockets, flap, welt, bag",
      says: [
        "A patch pocket is a `RECTANGLE`, or any shape with `OUTLINE`; `WITH_ALLOWANCE` adds its turnings. List it in the cut list, and it is laid with the other pieces.",
      ],
      see: ["RECTANGLE", "OUTLINE", "WITH_ALLOWANCE"],
    },
  ],
};
