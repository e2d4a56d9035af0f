import { asBlock } from "../block.ts";
import { define } from "../define.ts";
import { phrase, written, writtenIn } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { toCheck } from "../verdict.ts";
import { CHART, readChart, rowsOf, rowsOver } from "../wearers/chart.ts";
import type { Fault } from "../wearers/fault.ts";
import { layersIn, layersText } from "../wearers/layer-set.ts";
import { refuseUnlikelyToday } from "../wearers/plausible-day.ts";
import { AGE_ASKED, measurementsIn, missingOf, rowFaults } from "../wearers/row-faults.ts";

/** The verdict begins with the sort of the first fault, has the sentences of this many and counts the others; the cells of all are marked. */
const MOST_SAID = 3;

const verdictOf = (faults: readonly Fault[]): string => {
  if (faults.length === 0) return "ok";
  // Two rows alike have the same to say.
  const sentences = [...new Set(faults.map(({ sentence }) => sentence))];
  const said = sentences.slice(0, MOST_SAID);
  const more = sentences.length - said.length;
  const list = said.reduce((before, sentence) => written`${before}; also ${sentence}`);
  const sort = writtenIn(faults[0]!.sort);
  return toCheck(more > 0 ? written`${sort}: ${list}; and ${more} more` : written`${sort}: ${list}`);
};

/**
 * Whether a wearer's measurements in a chart are there and may be cut by: "ok", or what is doubtful, where,
 * and what to measure again. With `beneath` one row is checked, without it all rows of the wearer. The verdict names:
 * a row without figures, measurements of `needed` that are missing, figures that are no lengths, dates that
 * are missing, still to come or too old on `today`, figures that do not fit the wearer's others (as
 * MEASURE_CHECK, and only the figure to blame; over thick layers only those that layers do not change), a girth that is
 * smaller over more layers although none of them is laced, stays laced in different ways, two rows
 * alike, and figures that no body has. A chart's column "compare with" chooses the survey: female, male, either, or child:
 * a child's figures are compared with each other by an adult's shares. A
 * blank wearer gives an empty text, unless a row has figures and no wearer. Refuses a wearer or a layer set
 * that the chart does not have. Sources: functions/survey/body-data.ts; common practice.
 */
export const WEARER_CHECK = define({
  name: "WEARER_CHECK",
  summary: "Whether a wearer is measured, and which of the measurements should be taken again.",
  source:
    "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public release, NATICK/TR-15/007; common practice for dates and layers",
  words: "chart cast role unmeasured doubtful stale old laced stays verify plausible figures again",
  takes: {
    chart: CHART,
    wearer: { kind: "text", about: "whose measurements; a blank gives an empty text", otherwise: null },
    beneath: {
      kind: "text",
      about: "the layers of one row to check; all rows of the wearer when left out",
      otherwise: null,
    },
    ...AGE_ASKED,
    needed: {
      kind: "text",
      about:
        'measurements that must be there, such as "bust girth, waist girth, hip girth"; without beneath, in any row of the wearer',
      otherwise: null,
    },
  },
  returns: "verdict",
  compute({ chart: block, wearer, beneath, today, days, needed }, { measure, points, ...words }) {
    refuseUnlikelyToday(today);
    const chart = readChart(block);
    const wanted = {
      today,
      days,
      needed: measurementsIn(needed),
    };
    const name = (wearer ?? "").trim();
    const faults: Fault[] = [];
    if (name === "") {
      const nobody = chart.rows.find(
        (row) =>
          row.wearer === "" &&
          [...chart.measured.values()].some((column) => typeof row.cells[column] === "number"),
      );
      if (!nobody) return measure("verdict", "no wearer is named, and every figure of the chart has one", "");
      const at = { argument: "chart", cell: nobody.number * chart.wide + chart.columns.get("wearer")! };
      faults.push({
        sort: "doubtful",
        sentence: written`a row has figures and no wearer: write whose they are`,
        at: [at],
      });
    } else {
      const rows = rowsOf(chart, name);
      const one = (beneath ?? "").trim();
      const checked = one === "" ? rows : rowsOver(rows, layersIn(one));
      if (checked.length === 0)
        throw new Refusal(
          phrase`the chart has no row of ${rows[0]!.wearer} over ${layersText(layersIn(one))}`,
        );
      for (const row of checked)
        faults.push(
          ...rowFaults(chart, row, rows, { ...wanted, needed: one === "" ? [] : wanted.needed }, words),
        );
      if (one === "") faults.push(...missingOf(chart, rows, wanted.needed));
      measure("rows", "rows of the wearer that were checked", checked.length);
    }
    for (const { sentence, at } of faults) for (const cell of at) points(cell, sentence);
    measure("doubtful", "problems", faults.length);
    return measure("verdict", "the problems, or ok", verdictOf(faults));
  },
  examples: [
    {
      given: {
        chart: asBlock(
          [
            ...["Wearer", "Worn beneath", "Taken on", "Stature", "Bust girth", "Waist girth", "Hip girth"],
            ...["the widow", "shift", 46_146, 165, 94, 76, 100],
            ...["the fool", "shirt", 46_146, null, null, null, null],
          ],
          7,
          [],
        ),
        wearer: "the widow",
        today: 46_160,
        needed: "bust girth, waist girth, hip girth",
      },
      unit: "cm",
      gives: "ok",
      because: "two weeks old, and the four figures fit one another",
    },
    {
      given: {
        chart: asBlock(
          [
            ...["Wearer", "Worn beneath", "Taken on", "Stature", "Bust girth", "Waist girth", "Hip girth"],
            ...["the widow", "shift", 46_146, 165, 94, 31, 100],
          ],
          7,
          [],
        ),
        wearer: "the widow",
        beneath: "shift",
        today: 46_160,
        days: 30,
      },
      unit: "cm",
      gives: "check: doubtful: the widow over shift: waist girth of 31 cm is",
      because: "31 in written in a chart of centimetres",
    },
    {
      given: {
        chart: asBlock(
          [
            ...["Wearer", "Worn beneath", "Waist girth"],
            ...["the cook", "shift and stays", 28],
            ...["the cook", "shift, stays, petticoat", 27],
          ],
          3,
          [],
        ),
        wearer: "the cook",
      },
      gives:
        "check: doubtful: the waist girth of the cook over shift, stays and petticoat is 27 in, and over shift and stays 28 in: a girth does not shrink under petticoat",
      because: "common practice: only what is laced makes a girth smaller",
    },
  ],
  cautions:
    "The survey measured soldiers, adults of 2010 to 2012: a figure it finds odd may be quite right. Measure again, and believe the tape. Write child in the column compare with for children.",
});
