/** The note of a cell that holds an example of Ellwand's, until something else is typed in it. */
import { phrase } from "../../functions/phrase.ts";

export const EXAMPLE_NOTE = phrase`An example: type your own over it.`;
