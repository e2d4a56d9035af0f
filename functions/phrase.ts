/**
 * The sentences of the program in the language of its reader. English stands where a sentence is used,
 * as a template: phrase`Saved as ${file}`. `npm run strings` collects these templates for translators.
 */

/** A part of a sentence that depends on how many there are. */
export interface Plural {
  readonly number: number;
  /** What English says of exactly 1, and of any other number; `#` stands for the number. */
  readonly one: string;
  readonly other: string;
}

/** Words that are made only when a sentence needs them, such as the name of one cell among thousands. */
export type Words = string | (() => string);

/** What may stand in a sentence: a number, the maker's own words, or another sentence. */
export type PhraseValue = Words | number | Plural;

/**
 * A translated sentence: texts, the index of a value that stands between them, or a choice by the number
 * of a value. The index of a plural stands for its number.
 */
export type Translation = readonly (string | number | Choice)[];

/** Ways to say a part of a sentence. */
export interface Choice {
  /** The index of the value. */
  readonly by: number;
  /** By an exact number such as "=0", or by a plural category of the language: "one", "few", "other". */
  readonly ways: Readonly<Record<string, Translation>>;
}

/** The sentences of a language other than English, by the keys of the English ones (`keyOf`). */
export interface Language {
  /** The language's tag, such as "de" or "ar" (BCP 47). */
  readonly tag: string;
  readonly direction: "ltr" | "rtl";
  readonly phrases: Readonly<Record<string, string | Translation>>;
}

/** What says the sentences in another language than English (`speech.ts`, which only readers of other languages load). */
export interface Speaker {
  readonly language: Language;
  /** The parts of a sentence; null where the language has no translation of it. */
  readonly parts: (texts: TemplateStringsArray, values: readonly unknown[]) => readonly unknown[] | null;
  /** A value among words of the language. */
  readonly isolated: (words: string) => string;
  readonly translated: (text: string) => string;
  /** Keeps what a written text is for its reader. */
  readonly keepWords: (text: string, words: string) => void;
  readonly rewritten: (text: string, other: string, change: (words: string) => string) => void;
  readonly asRead: (text: string) => string;
}

let speaker: Speaker | null = null;

/** Gives all sentences from now on to this speaker; null for English. What was said before stays as it is. */
export function speakWith(one: Speaker | null): void {
  speaker = one;
}

/** The language of the sentences, for another thread to speak; null for English. */
export const spokenLanguage = (): Language | null => speaker?.language ?? null;

/** For phrase`…`: words that depend on a number. In English `#` in them is the number: plural(3, "1 piece", "# pieces"). */
export const plural = (number: number, one: string, other: string): Plural => ({ number, one, other });

/** Whether a value of a sentence is a plural. */
export const isPlural = (value: unknown): value is Plural =>
  typeof value === "object" && value !== null && "other" in value && "one" in value;

/** Letters written from right to left. */
export const FROM_RIGHT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/**
 * Words that may be written in the other direction than the sentence are isolated, so that they do not
 * turn it round (Unicode Standard Annex 9: FSI and PDI).
 */
const isolated = (words: string): string =>
  speaker ? speaker.isolated(words) : FROM_RIGHT.test(words) ? `\u2068${words}\u2069` : words;

/** A value as it stands in a sentence, which is one line whatever was typed; elements stay what they are. */
export const shown = <Value>(value: Value): Value | string =>
  typeof value === "function"
    ? shown(value() as string)
    : typeof value === "number" || typeof value === "string"
      ? isolated(inLine(asRead(String(value))))
      : value;

const inLine = (text: string): string => (/[\n\r]/.test(text) ? text.replace(/\s*[\n\r]\s*/g, " ") : text);

const inEnglish = <Value>(
  texts: readonly string[],
  values: readonly Value[],
  show: (value: Value) => Value | string,
): (string | Value)[] =>
  texts.flatMap((text, i) => {
    if (i >= values.length) return [text];
    const value = values[i]!;
    if (!isPlural(value)) return [text, show(value)];
    const way = value.number === 1 ? value.one : value.other;
    return [text, way.replaceAll("#", String(value.number))];
  });

/** The parts of a sentence in which other things than words stand, such as elements of the page. */
export function phraseParts<Value>(
  texts: TemplateStringsArray,
  values: readonly (Value | PhraseValue)[],
): (string | Value)[] {
  return (speaker?.parts(texts, values) ?? inEnglish(texts, values, shown)) as (string | Value)[];
}

/** A sentence in the reader's language: phrase`Saved as ${file}`. */
export const phrase = (texts: TemplateStringsArray, ...values: readonly PhraseValue[]): string =>
  phraseParts<never>(texts, values).join("");

/**
 * A text that is the answer of a cell, or a part of one, in English whoever reads it: formulas compare such texts, files
 * hold them, and a book answers the same to every reader. Where it is shown, `asRead` gives the reader's words.
 */
export function written(texts: TemplateStringsArray, ...values: readonly PhraseValue[]): string {
  const english = inEnglish(texts, values, (value) => {
    const one = typeof value === "function" ? value() : value;
    return typeof one === "string" ? inLine(one) : one;
  }).join("");
  speaker?.keepWords(english, phrase(texts, ...values));
  return english;
}

/** The same for a text that stands in a table of the program. */
export function writtenIn(text: string): string {
  speaker?.keepWords(text, translated(text));
  return text;
}

/** Says that a written text stands in the book as another one, such as with decimal commas; `change` makes the same of any words. */
export const rewritten = (text: string, other: string, change: (words: string) => string): void =>
  speaker?.rewritten(text, other, change);

/** A written text in the reader's language; any other text as it is. */
export const asRead = (text: string): string => (speaker ? speaker.asRead(text) : text);

/** A text without values that stands in a table of the program, in the reader's language. */
export const translated = (text: string): string => (speaker ? speaker.translated(text) : text);
