import { define } from "../define.ts";
import { written } from "../phrase.ts";
import { toCheck } from "../verdict.ts";
import { FAR_APART, isPlausibleDay, refuseUnlikelyToday } from "../wearers/plausible-day.ts";

/**
 * Whether a measurement was taken too long ago to cut by, or has a date in the future: "ok", or a
 * sentence. Ages are in whole days. "Today" is a day from 2000 to 2100; of dates more than ten years apart one is
 * likely a slip. The limit of 90 days, when `days` is left out, is a habit, not a law: bodies in training, growing or
 * pregnant change faster. Source: common practice.
 */
export const AGE_CHECK = define({
  name: "AGE_CHECK",
  summary: "Whether a measurement is too old to cut by.",
  source: "common practice",
  words: "date old stale measured when how long ago again",
  takes: {
    taken: { kind: "days", about: "the day the measurement was taken", from: 0, to: 200000 },
    today: { kind: "days", about: "the day the measurement is used, such as TODAY()", from: 0, to: 200000 },
    days: { kind: "days", about: "the greatest age allowed, in days", from: 0, to: 4000, otherwise: 90 },
  },
  returns: "verdict",
  alike: { "taken, today": "a date that has not come yet is in the verdict itself" },
  compute({ taken, today, days }, { step, points }) {
    refuseUnlikelyToday(today);
    const age = step("age", "INT(today) - INT(taken)", Math.floor(today) - Math.floor(taken));
    const far = written`today is more than ten years from the day of the measurement; please check both dates`;
    const isFar = Math.abs(age) > Math.max(days, FAR_APART);
    // The day that all measurements are compared with is the likelier slip, unless the other is no day of a measurement.
    if (isFar) points({ argument: isPlausibleDay(taken) ? "today" : "taken", cell: 0 }, far);
    return step(
      "verdict",
      `IF(ABS(age) > MAX(days; ${FAR_APART}); "check: ${far}"; ` +
        'IF(age < 0; "check: the measurement is dated later than today; please check the date"; IF(age > days; "check: taken " & age & " days ago, " & days & " are allowed; please measure again before cutting"; "ok")))',
      isFar
        ? toCheck(far)
        : age < 0
          ? toCheck(written`the measurement is dated later than today; please check the date`)
          : age > days
            ? toCheck(
                written`taken ${age} days ago, ${days} are allowed; please measure again before cutting`,
              )
            : "ok",
    );
  },
  examples: [
    { given: { taken: 46023, today: 46083 }, gives: "ok", because: "60 days old, and 90 are allowed" },
    {
      given: { taken: 46023, today: 46083, days: 30 },
      gives: "check: taken 60 days ago, 30 are allowed",
      because: "a growing wearer, measured two months ago",
    },
    {
      given: { taken: 46084, today: 46083 },
      gives: "check: the measurement is dated later than today",
      because: "the date was mistyped",
    },
  ],
});
