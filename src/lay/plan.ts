/**
 * The one door to the lay planner: `quickLay` answers at once, a `Search` goes on from there, and
 * `checkLay` is the independent judge of both.
 */
export { checkLay } from "./check.ts";
export { isProved } from "./improve.ts";
export { quickLay, quickLayUntil, shortfall } from "./quick.ts";
export { Search, type SearchOptions, type Slice } from "./search.ts";
