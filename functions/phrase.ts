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

interface Spoken extends Language {
  readonly rules: Intl.PluralRules;
}

let spoken: Spoken | null = null;
/** What was found for each template; null where the language has no translation of it. */
let kept = new WeakMap<TemplateStringsArray, Translation | null>();

/**
 * The reader's words for texts that are written in English, those of the last ones: the texts of cells that are
 * shown are looked up again and again, and stay.
 */
const readers = new Map<string, string>();
const MOST_WORDS = 20_000;

/** Gives all sentences from now on in another language; null for English. What was said before stays as it is. */
export function speak(language: Language | null): void {
  spoken = language && { ...language, rules: new Intl.PluralRules(language.tag) };
  kept = new WeakMap();
  readers.clear();
}

/** The language of the sentences, for another thread to speak; null for English. */
export const spokenLanguage = (): Language | null =>
  spoken && { tag: spoken.tag, direction: spoken.direction, phrases: spoken.phrases };

/** For phrase`…`: words that depend on a number. In English `#` in them is the number: plural(3, "1 piece", "# pieces"). */
export const plural = (number: number, one: string, other: string): Plural => ({ number, one, other });

const isPlural = (value: unknown): value is Plural =>
  typeof value === "object" && value !== null && "other" in value && "one" in value;

/** What a translation is found by: the English texts, with the forms of each plural and {} for each other value. */
export const keyOf = (texts: readonly string[], values: readonly unknown[]): string =>
  texts
    .map((text, i) => {
      const value = values[i];
      if (i >= values.length) return text;
      return `${text}{${isPlural(value) ? `${value.one}|${value.other}` : ""}}`;
    })
    .join("");

/** Letters written from right to left. */
const FROM_RIGHT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;
const FROM_LEFT = /[^\P{L}\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/** A figure of more than plain digits, such as "39 7/8" or "-3 °": its parts change places among words from right to left. */
const FIGURE = /\d\D|\D\d/;

/**
 * Words that may be written in the other direction than the sentence are isolated, so that they do not
 * turn it round (Unicode Standard Annex 9: FSI and PDI); figures too, where the sentence goes from right to left.
 */
function isolated(words: string): string {
  const isOtherWay =
    spoken?.direction === "rtl" ? FROM_LEFT.test(words) || FIGURE.test(words) : FROM_RIGHT.test(words);
  return isOtherWay ? `\u2068${words}\u2069` : words;
}

const MIXED = /\d+ \d+\/\d+/g;

/** Words of a translation; the figures among them stay the right way round where it goes from right to left. */
const worded = (words: string): string =>
  spoken?.direction === "rtl" ? words.replace(MIXED, "\u2068$&\u2069") : words;

/** The translation of a template; null where it stays English. */
function translationOf(texts: TemplateStringsArray, values: readonly unknown[]): Translation | null {
  if (!spoken) return null;
  let found = kept.get(texts);
  if (found === undefined) {
    const known = spoken.phrases[keyOf(texts, values)];
    found = known === undefined ? null : [known].flat();
    kept.set(texts, found);
  }
  return found;
}

const shown = <Value>(value: Value): Value | string =>
  typeof value === "function"
    ? shown(value() as string)
    : typeof value === "number" || typeof value === "string"
      ? isolated(asRead(String(value)))
      : value;

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

const inTranslation = <Value>(parts: Translation, values: readonly Value[]): (string | Value)[] =>
  parts.flatMap((part) => {
    if (typeof part === "string") return [worded(part)];
    const value = values[typeof part === "number" ? part : part.by]!;
    const number = isPlural(value) ? value.number : Number(value);
    if (typeof part !== "number") {
      const { ways } = part;
      const way = ways[`=${number}`] ?? ways[spoken!.rules.select(number)] ?? ways.other!;
      return inTranslation(way, values);
    }
    return [isPlural(value) ? String(number) : shown(value)];
  });

/** The parts of a sentence in which other things than words stand, such as elements of the page. */
export function phraseParts<Value>(
  texts: TemplateStringsArray,
  values: readonly (Value | PhraseValue)[],
): (string | Value)[] {
  const translation = translationOf(texts, values);
  const parts = translation ? inTranslation(translation, values) : inEnglish(texts, values, shown);
  return parts as (string | Value)[];
}

/** A sentence in the reader's language: phrase`Saved as ${file}`. */
export const phrase = (texts: TemplateStringsArray, ...values: readonly PhraseValue[]): string =>
  phraseParts<never>(texts, values).join("");

/**
 * A text that is the answer of a cell, or a part of one, in English whoever reads it: formulas compare such texts, files
 * hold them, and a book answers the same to every reader. Where it is shown, `asRead` gives the reader's words.
 */
export function written(texts: TemplateStringsArray, ...values: readonly PhraseValue[]): string {
  const english = inEnglish(texts, values, (value) => (typeof value === "function" ? value() : value)).join(
    "",
  );
  if (spoken) keepWords(english, phrase(texts, ...values));
  return english;
}

/** The same for a text that stands in a table of the program. */
export function writtenIn(text: string): string {
  keepWords(text, translated(text));
  return text;
}

/** Keeps what a written text is for its reader; for a text that was written otherwise, such as with decimal commas. */
export function keepWords(text: string, words: string): void {
  if (!spoken) return;
  readers.delete(text);
  readers.set(text, words);
  if (readers.size > MOST_WORDS) readers.delete(readers.keys().next().value!);
}

/** A written text in the reader's language; any other text as it is. */
export function asRead(text: string): string {
  const words = readers.get(text);
  if (words === undefined) return text;
  keepWords(text, words);
  return words;
}

/** A text without values that stands in a table of the program, in the reader's language. */
export function translated(text: string): string {
  const known = spoken?.phrases[text];
  return typeof known === "string" ? worded(known) : text;
}
