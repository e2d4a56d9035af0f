import { CHART_WIDTHS, CHART_YARDS } from "../cutting/width-chart.ts";
import { type CallContext, define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The chart's column for a width: the nearest within 1 1/2 in, or a refusal with the widths there are. */
function column(name: string, width: number, { cm, say }: CallContext): number {
  const inch = cm(2.54);
  const away = CHART_WIDTHS.map(([from, to]) => Math.max(from * inch - width, width - to * inch, 0));
  const best = away.indexOf(Math.min(...away));
  if (away[best]! <= 1.5 * inch * (1 + 1e-9)) return best;
  const widths = CHART_WIDTHS.map(([, to]) => say(to * inch));
  throw new Refusal(
    (say) => phrase`${name} must be near one of the chart's widths (${widths.join(", ")}), not ${say(width)}`,
  );
}

/**
 * The length of another cloth as the cooperative-extension width chart prints it: the first line
 * of the chart that has at least `length` under the width `from`, read under the width `to`. In
 * the book's unit, in eighths of a yard. A width counts as the chart's nearest when it is within
 * 1 1/2 in of it. Add a quarter of a yard for a large difference, one-way cloth or cut-on sleeves.
 */
export const WIDTH_CHART = define({
  name: "WIDTH_CHART",
  summary: "What the published width chart gives for the same garment on cloth of another width.",
  source:
    "the fabric width conversion chart of the American cooperative extension services, as their leaflets print it",
  words: "convert fabric width yardage conversion table 45 60 inch",
  takes: {
    length: { kind: "length", about: "length needed on the first cloth", from: 0, to: 1000 },
    from: { kind: "length", about: "width of the first cloth", from: 80, to: 175 },
    to: { kind: "length", about: "width of the other cloth", from: 80, to: 175 },
  },
  returns: "length",
  alike: { "from, to": "the other cloth may be wider or narrower" },
  compute({ length, from, to }, context) {
    const { measure, cm } = context;
    const yard = cm(91.44);
    const [first, other] = [column("from", from, context), column("to", to, context)];
    if (length === 0) return measure("other_length", "no length is needed", 0);
    const line = CHART_YARDS.find((row) => row[first]! * yard >= length * (1 - 1e-9));
    if (!line)
      throw new Refusal(
        (say) =>
          phrase`length must be at most ${say(CHART_YARDS.at(-1)![first]! * yard, length)}, the chart's last line for that width, not ${say(length, CHART_YARDS.at(-1)![first]! * yard)}`,
      );
    measure("chart_length", "the chart's next length for the first cloth", line[first]! * yard);
    return measure(
      "other_length",
      "the chart's length for the other cloth in that line",
      line[other]! * yard,
    );
  },
  draw({ from, to }, { chart_length = 0, other_length = 0 }) {
    return drawStrips(
      { length: chart_length, width: from, label: phrase`first cloth`, lengthShows: "chart_length" },
      { length: other_length, width: to, label: phrase`other cloth`, lengthShows: "other_length" },
    );
  },
  examples: [
    {
      given: { length: 112.5, from: 45, to: 54 },
      gives: 94.5,
      because: "the chart: 3 1/8 yd of 44-45 in is 2 5/8 yd of 52-54 in",
    },
    {
      given: { length: 100, from: 36, to: 60 },
      gives: 63,
      because: "the chart's next line is 2 7/8 yd, on 58-60 in 1 3/4 yd",
    },
    {
      given: { length: 205, from: 90, to: 150 },
      gives: 125.73,
      unit: "cm",
      because: "205 cm is just under 2 1/4 yd; on 58-60 in 1 3/8 yd",
    },
  ],
});
