import { FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The size to cut a hanging for an opening that it must fill with room to drape: the opening's own
 * size and a share of the opening's width, for width and height alike. In the book's unit. Source: Stephenson 1905.
 */
export const DRAPE_ROOM = define({
  name: "DRAPE_ROOM",
  summary: "How wide or long to cut a hanging for an arch or opening so that there is room to drape it.",
  source: "Stephenson, Cutting and Draping, 1905, figure 111: half the width more, both ways",
  words: "curtain arch backdrop stage drapery opening allowance portiere",
  takes: {
    size: { kind: "length", about: "width or height of the opening", from: 1, to: 10_000 },
    width: { kind: "length", about: "width of the opening", from: 1, to: 10_000 },
    share: { kind: "share", about: "share of the opening's width to add", from: 0, to: 5, otherwise: 0.5 },
  },
  returns: "length",
  alike: { "size, width": "the size may be the width itself, or a height above or below it" },
  compute({ size, width, share }, { step }) {
    const room = step("room", "share * width", share * width);
    return step("cut", "size + room", size + room);
  },
  draw({ size, width }, { cut = 0 }) {
    return drawStrips(
      { length: size, width: width / 6, label: phrase`opening` },
      { length: cut, width: width / 6, label: phrase`cloth`, lengthShows: "cut" },
    );
  },
  examples: [
    { given: { size: 60, width: 60 }, gives: 90, because: "Stephenson 1905: an arch 5 ft wide, 7 ft 6 in" },
    { given: { size: 96, width: 60 }, gives: 126, because: "and 8 ft high, 10 ft 6 in" },
  ],
  cautions: FLAME,
});
