/** Finds what a maker wants to do among the entries of the help: "how much to cut for a ruffle". */

/** What can be found, and by which words. */
export interface Searchable {
  readonly name: string;
  /** One or two sentences. */
  readonly summary: string;
  /** Further words and phrases it is searched by. */
  readonly words: string;
  /** The rest of its text. */
  readonly more: string;
}

/** Words that tell nothing about what is wanted. */
const EMPTY = new Set(
  "a an and are as at be by can cut do does for from get have how i if in is it its make many me much my need of on one or that the their them there this to use want what when where which will with would you".split(
    " ",
  ),
);

/** A word without its commonest endings, so that "gathering" finds "gathered". */
export function stem(word: string): string {
  const short = word.replace(/(?:ing|ed|es|s)$/, "");
  return (short.length >= 3 ? short : word).replace(/(.)\1$/, "$1").replace(/e$/, "");
}

/** All words of a text, and the signs beside a length of cloth. */
const allWords = (text: string): string[] =>
  text
    .toLowerCase()
    .replaceAll("_", " ")
    .match(/[\p{L}\p{N}]+|[≈≤✓✎…]/gu) ?? [];

const stemsIn = (text: string): string[] =>
  allWords(text)
    .filter((word) => !EMPTY.has(word))
    .map(stem);

/** How much a word found there counts: what an entry is called and searched by, before the rest of its text. */
const WEIGHTS = { name: 6, words: 5, summary: 3, more: 1 } as const;
type FieldName = keyof typeof WEIGHTS;
const FIELDS = Object.keys(WEIGHTS) as FieldName[];

/** An entry that is called what was asked comes before all others, then those whose names begin so. */
const CALLED_SO = 200;
const BEGINS_SO = 100;

const together = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");

interface Prepared<T> {
  readonly entry: T;
  readonly called: string;
  readonly stems: Readonly<Record<FieldName, ReadonlySet<string>>>;
  /** All words of each field with a blank before, between and after them, to look for a phrase in; commas part phrases. */
  readonly run: Readonly<Record<FieldName, string>>;
}

const runOf = (text: string): string =>
  text
    .split(/[,.:;]/)
    .map((part) => ` ${allWords(part).map(stem).join(" ")} `)
    .join("|");

const each = <V>(entry: Searchable, make: (text: string) => V): Record<FieldName, V> =>
  Object.fromEntries(FIELDS.map((field) => [field, make(entry[field])])) as Record<FieldName, V>;

const prepare = <T extends Searchable>(entry: T): Prepared<T> => ({
  entry,
  called: together(entry.name),
  stems: each(entry, (text) => new Set(stemsIn(text))),
  run: each(entry, runOf),
});

export class Finder<T extends Searchable> {
  readonly #entries: readonly Prepared<T>[];

  constructor(entries: Iterable<T>) {
    this.#entries = [...entries].map(prepare);
  }

  /** The entries that a question may mean, the likeliest first; all of them when nothing is asked. */
  find(question: string): T[] {
    const called = together(question);
    const asked = [...new Set(stemsIn(question))];
    if (asked.length === 0 && called === "") return this.#entries.map(({ entry }) => entry);
    const phrase = allWords(question).map(stem);
    const rarity = new Map(asked.map((word) => [word, this.#rarity(word)]));
    return this.#entries
      .map((one) => {
        const score =
          (one.called === called
            ? CALLED_SO
            : called !== "" && one.called.startsWith(called)
              ? BEGINS_SO
              : 0) +
          phraseScore(one, phrase) +
          asked.reduce((sum, word) => sum + rarity.get(word)! * wordScore(one, word), 0);
        return { one, score };
      })
      .filter(({ score }) => score > 0)
      .sort((a, b) => b.score - a.score)
      .map(({ one }) => one.entry);
  }

  /** A word that few entries know says more than one that many know. */
  #rarity(word: string): number {
    const known = this.#entries.filter((one) => wordScore(one, word) > 0).length;
    return Math.log(1 + this.#entries.length / (1 + known));
  }
}

function wordScore({ stems }: Prepared<unknown>, word: string): number {
  let score = 0;
  for (const field of FIELDS) {
    if (stems[field].has(word)) score += WEIGHTS[field];
    else if ([...stems[field]].some((one) => one.startsWith(word))) score += WEIGHTS[field] / 2;
  }
  return score;
}

/** Where the whole question stands word for word, "cut on the bias", it counts as one word more than it has. */
function phraseScore({ run }: Prepared<unknown>, words: readonly string[]): number {
  if (words.length < 2) return 0;
  const phrase = ` ${words.join(" ")} `;
  return (
    (words.length + 1) *
    FIELDS.reduce((sum, field) => sum + (run[field].includes(phrase) ? WEIGHTS[field] : 0), 0)
  );
}
