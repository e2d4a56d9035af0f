import { asBlock } from "../block.ts";
import { comparedName } from "../compared-name.ts";
import { define } from "../define.ts";
import { written } from "../phrase.ts";
import { shortened } from "../verdict.ts";
import { CHART, readChart, rowsOf } from "../wearers/chart.ts";
import type { Fault } from "../wearers/fault.ts";
import { refuseUnlikelyToday } from "../wearers/plausible-day.ts";
import { AGE_ASKED, neededOf, rowFaults } from "../wearers/row-faults.ts";

const SORTS = ["all", "unmeasured", "doubtful", "ok"] as const;

/** So many wearers of a long list are named in the line of all. */
const MOST_NAMED = 20;

/**
 * How the wearers of a chart stand, in one text: those who have a row without any figure, those of whom
 * WEARER_CHECK finds something doubtful, missing or too old, and those who are ok; or the names of one of these
 * sorts, or "nobody" where no wearer is of that sort. Each wearer counts once, the unmeasured before the doubtful. It is no verdict: the
 * rows have theirs. Source: common practice.
 */
export const CHART_SUMMARY = define({
  name: "CHART_SUMMARY",
  summary: "Who of a chart's wearers is unmeasured, whose figures are doubtful, and how many are ok.",
  source: "common practice; what is doubtful is that of WEARER_CHECK",
  words: "cast chart overview at a glance who is unmeasured doubtful measure again count roles company list",
  takes: {
    chart: CHART,
    which: {
      kind: "text",
      about: "all for one line about every wearer, or one of unmeasured, doubtful and ok for their names",
      choices: SORTS,
      otherwise: "all",
    },
    ...AGE_ASKED,
    needed: {
      kind: "text",
      about: 'measurements that each wearer must have in some row, such as "bust girth, waist girth"',
      otherwise: null,
    },
  },
  returns: "text",
  compute({ chart: block, which, today, days, needed }, { measure, ...words }) {
    refuseUnlikelyToday(today);
    const chart = readChart(block);
    const names = new Map<string, string>();
    for (const { wearer } of chart.rows)
      if (wearer !== "" && !names.has(comparedName(wearer))) names.set(comparedName(wearer), wearer);
    const found: Record<"unmeasured" | "doubtful" | "ok", string[]> = {
      unmeasured: [],
      doubtful: [],
      ok: [],
    };
    const wanted = { today, days, needed: [] };
    for (const wearer of names.values()) {
      const rows = rowsOf(chart, wearer);
      const faults: Fault[] = rows.flatMap((row) => rowFaults(chart, row, rows, wanted, words));
      faults.push(...neededOf(chart, rows, needed));
      const sort = faults.some(({ sort }) => sort === "unmeasured")
        ? "unmeasured"
        : faults.length > 0
          ? "doubtful"
          : "ok";
      found[sort].push(wearer);
    }
    const { unmeasured, doubtful, ok } = found;
    measure("wearers", "wearers of the chart", names.size);
    measure("unmeasured", "those with a row without figures", unmeasured.length);
    measure("doubtful", "those with something doubtful, missing or too old", doubtful.length);
    measure("ok", "those who are ok", ok.length);
    const list = (some: readonly string[]) => (some.length === 0 ? written`nobody` : some.join(", "));
    if (which !== "all") return measure("names", "their names", list(found[which]));
    const some = (names: readonly string[]) =>
      list(shortened(names, MOST_NAMED, (count) => written`${count} more`));
    return measure(
      "line",
      "all wearers in one line",
      written`${names.size} wearers: ${ok.length} ok; unmeasured: ${some(unmeasured)}; doubtful: ${some(doubtful)}`,
    );
  },
  examples: [
    {
      given: {
        chart: asBlock(
          [
            ...["Wearer", "Worn beneath", "Taken on", "Waist girth", "Hip girth"],
            ...["the widow", "shift", 46_146, 76, 100],
            ...["the fool", "shirt", 46_146, null, null],
            ...["the bell-ringer", "shirt", 46_000, 86, 98],
          ],
          5,
          [],
        ),
        today: 46_160,
      },
      unit: "cm",
      gives: "3 wearers: 1 ok; unmeasured: the fool; doubtful: the bell-ringer",
      because: "the fool's row has no figure, and the bell-ringer's are 160 days old, 90 are allowed",
    },
    {
      given: {
        chart: asBlock(["Wearer", "Worn beneath", "Waist girth", "the widow", "shift", 76], 3, []),
        which: "unmeasured",
      },
      unit: "cm",
      gives: "nobody",
      because: "the only wearer has a figure",
    },
  ],
});
