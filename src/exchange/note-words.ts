/** Words in the notes of a written spreadsheet that are known again when it is read. */

/** How the lines of a note begin that caution, the same in every language. */
export const CARE = "Take care: ";

/** What a note says of a cell without an answer, the same in every language. */
export const NO_ANSWER = "it has no answer in Ellwand";
