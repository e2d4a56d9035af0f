/** The day on which figures are used. A slip there would say of every measurement that its date is wrong. */

import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The first days of 2000 and of 2101, counted as the engine counts dates. */
const [FIRST, END] = [36_526, 73_416];

/** Days by which two dates may lie apart before both are doubtful: ten years. */
export const FAR_APART = 3653;

/** Whether a day is one on which a living wearer may have been measured. */
export const isPlausibleDay = (day: number): boolean => day >= FIRST && day < END;

/** Refuses a "today" that is no day of this century. */
export function refuseUnlikelyToday(today: number | null): void {
  if (today !== null && !isPlausibleDay(today))
    throw new Refusal(
      phrase`today is not a day from 2000 to 2100: type it as year, month, day, such as 2026-05-20`,
      { argument: "today", cell: 0 },
    );
}
