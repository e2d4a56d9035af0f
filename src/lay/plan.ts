/**
 * The door to the lay planner: `quickLay` answers at once, and `checkLay` is the independent judge. A
 * `Search` (search.ts) goes on from there; the page leaves it to its workers, so it has a door of its own.
 */
export { isProved } from "./answer.ts";
export { checkLay } from "./check.ts";
export { quickLay, quickLayUntil } from "./quick.ts";
