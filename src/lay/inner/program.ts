/** The inner loop of a search: all that works in its memory. `Program` (room.ts) says what each function does. */
export { depth } from "./depth.ts";
export { clampY, range, snap } from "./fit.ts";
export { judge, lookEverywhere, lookNear, lossOf, put, settle } from "./judge.ts";
export { move } from "./move.ts";
export { random } from "./random.ts";
