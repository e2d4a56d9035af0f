import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { SURVEYS } from "../survey/body-data.ts";
import { measuringNote, percentile, requireMeasure } from "../survey/survey.ts";

/**
 * The value of a measurement below which a share of adult women or men lie, in the book's unit:
 * interpolated on straight lines between the survey's percentiles 1 to 99. For stock and chorus
 * costumes that must close on most wearers. Source: functions/survey/body-data.ts.
 */
export const BODY_PERCENTILE = define({
  name: "BODY_PERCENTILE",
  summary:
    "The waist, or other measurement, below which a share of adult women or men lie: for stock costumes.",
  source: "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public release, NATICK/TR-15/007",
  words: "stock hire chorus sizes range adjustable percent of people median typical average woman man",
  takes: {
    term: { kind: "text", about: "which measurement, such as waist girth" },
    share: {
      kind: "share",
      about: "the share of people who measure less, such as 0.95",
      from: 0.01,
      to: 0.99,
    },
    data: { kind: "text", about: "women's or men's measurements", choices: ["female", "male"] },
  },
  returns: "length",
  compute({ term, share, data }, { measure, cm }) {
    const asked = requireMeasure(term);
    const survey = SURVEYS[data];
    const [, , least, most] = survey.summaries[asked];
    const size = cm(0.1);
    measure("people", "people measured", survey.people);
    measure("least", "the smallest measurement", least! * size);
    measure("most", "the largest measurement", most! * size);
    const note = measuringNote(asked);
    return measure(
      "figure",
      () =>
        note
          ? phrase`interpolated between the survey's two nearest percentiles; ${note}`
          : phrase`interpolated between the survey's two nearest percentiles`,
      percentile(survey, asked, share) * size,
    );
  },
  draw(_, { least = 0, most = 0, figure = 0 }) {
    const tall = most / 20;
    return [
      stroke([[0, 0], [most, 0]], "guide"),
      stroke([[least, -tall / 2], [least, tall / 2]], "guide", { label: phrase`smallest` }),
      stroke([[most, -tall / 2], [most, tall / 2]], "guide", { label: phrase`largest` }),
      stroke([[figure, -tall], [figure, tall]], "seam"),
      dimension([0, 2 * tall], [figure, 2 * tall], { shows: "figure" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { term: "waist girth", share: 0.95, data: "female" },
      gives: 104,
      unit: "cm",
      because: "the survey's 95th percentile; a bell curve would say 102.5",
    },
    {
      given: { term: "waist girth", share: 0.5, data: "female" },
      gives: 85.2,
      unit: "cm",
      because: "the survey's median",
    },
  ],
  cautions:
    "Soldiers of 2010 to 2012, fitter and younger than the public: allow for larger wearers. Not for children.",
});
