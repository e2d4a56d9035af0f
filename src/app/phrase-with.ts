/** Sentences in which elements of the page stand. */
import { createElement, Fragment, type ReactElement } from "react";
import { type PhraseValue, phraseParts } from "../../functions/phrase.ts";

/** A sentence with elements among its words, in the reader's language: phraseWith`Press ${<kbd>F1</kbd>} for help`. */
export const phraseWith = (
  texts: TemplateStringsArray,
  ...values: readonly (PhraseValue | ReactElement)[]
): ReactElement => createElement(Fragment, null, ...phraseParts<ReactElement>(texts, values));
