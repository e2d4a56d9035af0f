import { define } from "../define.ts";
import {
  BOX_WIDTH,
  type Crease,
  checkBoxWidth,
  drawCreases,
  drawFolded,
  evenCreases,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_STYLE,
} from "../drafting/pleat-creases.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { toCheck } from "../verdict.ts";

/**
 * Whether a pleat hides a join of panels. The pleats are set evenly as PLEAT_MARK has them; `join`
 * is measured along the flat width from its beginning, without allowances. A join on a hidden
 * layer is "ok", best at the inner fold; otherwise the sentence names the inner fold before it
 * where the join could lie if the panel before it were cut narrower. Source: geometry.
 */
export const JOIN_CHECK = define({
  name: "JOIN_CHECK",
  summary: "Whether a seam between panels disappears inside a pleat, and if not, where it would.",
  source: "geometry; common practice: joins go at an inner fold",
  words: "join seam hide pleat inner fold panel visible kilt skirt",
  takes: {
    join: { kind: "length", about: "where the join falls on the flat width", from: 0, to: 100_000 },
    finished: { kind: "length", about: "width once pleated", from: 1, to: 20_000 },
    count: { kind: "count", about: "how many pleats", from: 1, to: 1000 },
    depth: { kind: "length", about: "from a pleat's outer fold to its inner one", from: 0.1, to: 200 },
    style: PLEAT_STYLE,
    box_width: BOX_WIDTH,
  },
  returns: "verdict",
  usual: ["depth <= finished"],
  compute({ join, finished, count, depth, style, box_width }, { step, measure, say }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const flat = step("flat", "finished + layers * depth * count", finished + layers * depth * count);
    if (join > flat * (1 + 1e-9)) {
      throw new Refusal(
        (say) => phrase`join must lie on the flat width of ${say(flat, join)}, not ${say(join, flat)}`,
      );
    }
    checkBoxWidth(style, finished / count, box_width);
    const lines = evenCreases(style, finished, count, depth, box_width);
    const slack = 1e-9 * flat;
    // Both folds of an inverted pleat cover its placement line; elsewhere that line is where cloth shows again.
    const reach = (line: Crease) => (style === "inverted" && line.kind === "placement" ? slack : -slack);
    const hidden = lines.some((inner, i) => {
      if (inner.kind !== "inner") return false;
      const [before, after] = [lines[i - 1]!, lines[i + 1]!];
      return join >= before.at - reach(before) && join <= after.at + reach(after);
    });
    const inner = lines.findLast((one) => one.kind === "inner" && one.at <= join + slack);
    const best = measure(
      "inner_fold",
      "the inner fold before the join; 0 when no fold lies before it",
      inner?.at ?? 0,
    );
    step("to_move", "join - inner_fold", join - best);
    if (hidden) return measure("verdict", "the join lies on a hidden layer", "ok");
    return measure(
      "verdict",
      "the join lies where the cloth shows",
      toCheck(
        inner
          ? written`the join ${say(join, best)} from the beginning shows; ${say(join - best, 0)} sooner, at ${say(best, join)}, it would lie at an inner fold`
          : written`the join ${say(join, best)} from the beginning shows, and no pleat comes before it: begin with a narrower panel`,
      ),
    );
  },
  draw({ join, finished, count, depth, style, box_width }, { flat = 0 }) {
    if (count > 60) return [];
    const lines: Crease[] = evenCreases(style, finished, count, depth, box_width);
    const deep = flat / 8;
    return [
      ...drawCreases(flat, lines, "flat"),
      stroke([[join, -deep / 4], [join, deep * 1.2]], "seam", { label: phrase`join` }),
      ...(join > 0 ? [dimension([0, -deep / 3], [join, -deep / 3])] : []),
      ...drawFolded(style, finished, count, depth, flat / 4, box_width),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { join: 9, finished: 24, count: 6, depth: 1 },
      gives: "ok",
      because: "the second pleat's inner fold, at 6 + 2 + 1",
    },
    {
      given: { join: 11, finished: 24, count: 6, depth: 1 },
      gives: "check: the join 11 in from the beginning shows; 2 in sooner, at 9 in",
      because: "between the second pleat's placement line at 10 and the third fold at 14",
    },
    {
      given: { join: 1, finished: 24, count: 6, depth: 1 },
      gives: "check: the join 1 in from the beginning shows, and no pleat comes before it",
      because: "the first fold is at 2 in",
    },
  ],
});
