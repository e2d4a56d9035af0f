import { define } from "../define.ts";

/**
 * Whether a measurement was taken too long ago to cut by, or bears a date that has not come yet:
 * "ok", or a sentence. Ages are told in whole days. The 90 days taken when none are told are a
 * habit, not a law: bodies in training, growing or with child change faster. Source: common
 * practice.
 */
export const AGE_CHECK = define({
  name: "AGE_CHECK",
  summary: "Whether a measurement is too old to cut by.",
  source: "common practice",
  words: "date old stale measured when how long ago again",
  takes: {
    taken: { kind: "days", about: "the day it was taken", from: 0, to: 200000 },
    today: { kind: "days", about: "the day it is used, such as TODAY()", from: 0, to: 200000 },
    days: { kind: "days", about: "how many days it may be old", from: 0, to: 4000, otherwise: 90 },
  },
  returns: "verdict",
  alike: { "taken, today": "a date that has not come yet is in the verdict itself" },
  compute({ taken, today, days }, { step }) {
    const age = step("age", "INT(today) - INT(taken)", Math.floor(today) - Math.floor(taken));
    const old = `look: taken ${age} days ago, ${days} are allowed; please measure again before cutting`;
    const early = "look: it is dated later than today; please check the date";
    return step(
      "verdict",
      'IF(age < 0; "look: it is dated later than today; please check the date"; IF(age > days; "look: taken " & age & " days ago, " & days & " are allowed; please measure again before cutting"; "ok"))',
      age < 0 ? early : age > days ? old : "ok",
    );
  },
  examples: [
    { given: { taken: 46023, today: 46083 }, gives: "ok", because: "60 days of 90" },
    {
      given: { taken: 46023, today: 46083, days: 30 },
      gives: "look: taken 60 days ago, 30 are allowed",
      because: "a growing wearer, measured two months ago",
    },
    {
      given: { taken: 46084, today: 46083 },
      gives: "look: it is dated later than today",
      because: "a slip in the date",
    },
  ],
});
