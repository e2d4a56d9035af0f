/** Why a worker ended that said nothing: one whose program does not come fails without a word. */

import { phrase } from "../../functions/phrase.ts";

export const NOT_LOADED = phrase`a part of the page's program could not be loaded; check that the server is running and reload the page`;
