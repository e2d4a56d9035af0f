/**
 * The names of the functions that the page loads after its start. Only the page's build writes them here
 * (src/setup/late-functions.ts); everywhere else every function is there from the beginning.
 */
export const LATE_NAMES: readonly string[] = [];
