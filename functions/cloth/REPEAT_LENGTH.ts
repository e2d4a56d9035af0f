import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * Length of patterned cloth for `count` lengths that must match side by side, in the book's unit:
 * each is cut at the same place of the pattern, so it takes whole repeats. With a half drop every
 * second length begins half a repeat lower; the two kinds are cut alternately where that takes
 * less, otherwise all of one kind first, which costs half a repeat once. Source: geometry.
 */
export const REPEAT_LENGTH = define({
  name: "REPEAT_LENGTH",
  summary: "How much patterned cloth to buy for lengths whose pattern must match at the seams.",
  source: "geometry; whole repeats: Hands, Church Needlework, 1907",
  words: "pattern match stripe plaid check brocade half drop motif widths panels curtain drops",
  takes: {
    length: { kind: "length", about: "one length to cut, allowances included", from: 0.5, to: 10_000 },
    repeat: { kind: "length", about: "length of the pattern repeat along the selvedge", from: 0.1, to: 500 },
    count: {
      kind: "count",
      about: "how many lengths are joined side by side",
      from: 1,
      to: 500,
      otherwise: 1,
    },
    half_drop: {
      kind: "flag",
      about: "TRUE where the pattern drops by half a repeat from one width to the next",
      otherwise: false,
    },
  },
  returns: "length",
  usual: ["repeat <= length"],
  compute({ length, repeat, count, half_drop }, { step }) {
    const each = step(
      "each",
      "ROUNDUP(ROUND(length / repeat; 8); 0) * repeat",
      roundUpToWhole(length / repeat) * repeat,
    );
    const alternate = step(
      "alternate",
      "(ROUNDUP(ROUND(MAX(0; length / repeat - 0.5); 8); 0) + 0.5) * repeat",
      (roundUpToWhole(Math.max(0, length / repeat - 0.5)) + 0.5) * repeat,
    );
    const dropped = Math.min(count * alternate, count * each + (count > 1 ? repeat / 2 : 0));
    const total = half_drop ? dropped : count * each;
    step(
      "wasted",
      "IF(half_drop; MIN(count * alternate; count * each + IF(count>1;repeat / 2;0)); count * each) - count * length",
      total - count * length,
    );
    return step(
      "total",
      "IF(half_drop; MIN(count * alternate; count * each + IF(count>1;repeat / 2;0)); count * each)",
      total,
    );
  },
  draw({ length, repeat, count, half_drop }, { total = 0, each = 0, alternate = 0 }) {
    const width = Math.min(total / 4, length);
    const shapes: Shape[] = drawStrip({ length: total, width, label: phrase`cloth`, lengthShows: "total" });
    for (let x = repeat; x < total && shapes.length < 300; x += repeat)
      shapes.push(
        stroke(
          [
            [x, 0],
            [x, width / 8],
          ],
          "guide",
        ),
      );
    const alternately = half_drop && alternate < each;
    const half = Math.ceil(count / 2);
    for (let i = 0; i < Math.min(count, 60); i += 1) {
      const x = alternately ? i * alternate : i * each + (half_drop && i >= half ? repeat / 2 : 0);
      shapes.push(
        stroke(
          [
            [x, 0],
            [x, width],
          ],
          "cut",
        ),
        stroke(
          [
            [x + length, 0],
            [x + length, width],
          ],
          "cut",
        ),
      );
    }
    shapes.push(dimension([0, -width / 8], [repeat, -width / 8], { label: phrase`repeat` }));
    return shapes;
  },
  examples: [
    {
      given: { length: 36, repeat: 36, count: 4 },
      gives: 144,
      because: "Hands, Church Needlework, 1907: four lengths of one repeat of 36 in are 4 yd, nothing extra",
    },
    {
      given: { length: 40, repeat: 12, count: 3 },
      gives: 144,
      because: "each of the three lengths takes four repeats",
    },
    {
      given: { length: 100, repeat: 32, count: 4, half_drop: true },
      gives: 448,
      unit: "cm",
      because: "cut alternately, each takes 3 1/2 repeats, 112 cm, instead of four",
    },
  ],
});
