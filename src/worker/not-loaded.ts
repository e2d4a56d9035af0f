/** Why a worker ended. */

import { phrase } from "../../functions/phrase.ts";

/** One whose program does not come fails without a word. */
const NOT_LOADED = phrase`a part of the page's program could not be loaded; check that the server is running and reload the page`;

/** The reason in a worker's error event, without the words that the browser puts before it. */
export const whyEnded = ({ message }: { readonly message?: string }): string =>
  message?.replace(/^Uncaught (?:\w*Error: )?/, "") || NOT_LOADED;
