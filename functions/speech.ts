/** Says the sentences of the program in a language other than English. */
import {
  type Choice,
  FROM_RIGHT,
  isPlural,
  type Language,
  type Speaker,
  shown,
  speakWith,
  type Translation,
} from "./phrase.ts";

/** Gives all sentences from now on in another language; null for English. What was said before stays as it is. */
export const speak = (language: Language | null): void => speakWith(language && speakerOf(language));

/** What a translation is found by: the English texts, with the forms of each plural and {} for each other value. */
export const keyOf = (texts: readonly string[], values: readonly unknown[]): string =>
  texts
    .map((text, i) => {
      const value = values[i];
      if (i >= values.length) return text;
      return `${text}{${isPlural(value) ? `${value.one}|${value.other}` : ""}}`;
    })
    .join("");

const FROM_LEFT = /[^\P{L}\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/** A figure of more than plain digits, such as "39 7/8" or "-3 °": its parts change places among words from right to left. */
const FIGURE = /\d\D|\D\d/;

/** Figures in the words of a translation: "39 7/8", "5 %". */
const MIXED = /\d+ (?:\d+\/\d+|%)/g;

/** The texts whose words are kept, the last ones that were written or shown: those of cells in sight are looked up again and again, and stay. */
const MOST_WORDS = 20_000;

function speakerOf(language: Language): Speaker {
  const { phrases, direction } = language;
  const rules = new Intl.PluralRules(language.tag);
  /** What was found for each template; null where the language has no translation of it. */
  const found = new WeakMap<TemplateStringsArray, Translation | null>();
  /** The reader's words for texts that are written in English. */
  const readers = new Map<string, string>();

  /** Words of a translation; the figures among them stay the right way round where it goes from right to left. */
  const worded = (words: string): string =>
    direction === "rtl" ? words.replace(MIXED, "\u2068$&\u2069") : words;

  function translationOf(texts: TemplateStringsArray, values: readonly unknown[]): Translation | null {
    const before = found.get(texts);
    if (before !== undefined) return before;
    const known = phrases[keyOf(texts, values)];
    const translation = known === undefined ? null : [known].flat();
    found.set(texts, translation);
    return translation;
  }

  const wayOf = ({ by, ways }: Choice, values: readonly unknown[]): Translation => {
    const number = numberOf(values[by]);
    return ways[`=${number}`] ?? ways[rules.select(number)] ?? ways.other!;
  };

  const inTranslation = (parts: Translation, values: readonly unknown[]): unknown[] =>
    parts.flatMap((part) => {
      if (typeof part === "string") return [worded(part)];
      if (typeof part !== "number") return inTranslation(wayOf(part, values), values);
      const value = values[part];
      return [isPlural(value) ? String(value.number) : shown(value)];
    });

  function keepWords(text: string, words: string): void {
    readers.delete(text);
    readers.set(text, words);
    if (readers.size > MOST_WORDS) readers.delete(readers.keys().next().value!);
  }

  function asRead(text: string): string {
    const words = readers.get(text);
    if (words === undefined) return text;
    keepWords(text, words);
    return words;
  }

  return {
    language,
    parts: (texts, values) => {
      const translation = translationOf(texts, values);
      return translation && inTranslation(translation, values);
    },
    isolated: (words) => {
      const isOtherWay =
        direction === "rtl" ? FROM_LEFT.test(words) || FIGURE.test(words) : FROM_RIGHT.test(words);
      return isOtherWay ? `\u2068${words}\u2069` : words;
    },
    translated: (text) => {
      const known = phrases[text];
      return typeof known === "string" ? worded(known) : text;
    },
    keepWords,
    asRead,
    // A verdict is shown without the word before its sentence as well.
    rewritten: (text, other, change) => {
      for (const start of [0, "check: ".length])
        keepWords(other.slice(start), change(asRead(text.slice(start))));
    },
  };
}

const numberOf = (value: unknown): number => (isPlural(value) ? value.number : Number(value));
