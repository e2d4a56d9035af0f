/** How trials are called where they are read. */

import { phrase } from "../../functions/phrase.ts";
import { AS_IT_STANDS } from "./trials.ts";

/** A title as its reader reads it. */
export const titleText = (title: string): string => (title === AS_IT_STANDS ? phrase`as it stands` : title);
