/** What is loaded behind the start, so that it opens without a wait: what is typed at once goes where it is meant to. */

import { withAllFunctions } from "../all-functions.ts";
import { loadLayBoard } from "../lay/load-board.ts";
import { loadArgumentPicture } from "../measured/load-picture.ts";

export const loadBegin = () => withAllFunctions(() => import("../begin/Begin.tsx"));
export const loadBooks = () => withAllFunctions(() => import("../files/Books.tsx"));
export const loadHelp = () => withAllFunctions(() => import("../help/Help.tsx"));

/** Loads it now. What does not come is asked for again when it is opened, and that says why. */
export function loadBehind(): void {
  for (const load of [loadLayBoard, loadArgumentPicture, loadHelp, loadBegin, loadBooks])
    load().catch(() => {});
}
