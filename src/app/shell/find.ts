/** Finds functions by what a maker wants to do: "how much to cut for a ruffle". */
import type { CataloguedFunction } from "../../../functions/catalogue.ts";

/** Words that tell nothing about sewing. */
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

export const wordsIn = (text: string): string[] =>
  (text.toLowerCase().match(/[a-z0-9]+/g) ?? []).filter((word) => !EMPTY.has(word)).map(stem);

/** How much a word found there counts: what a function is called and searched by, before what it takes. */
const WEIGHTS = { name: 6, words: 5, summary: 3, takes: 1 } as const;

interface Entry {
  readonly declaration: CataloguedFunction;
  readonly fields: Readonly<Record<keyof typeof WEIGHTS, readonly string[]>>;
}

const entryOf = (declaration: CataloguedFunction): Entry => ({
  declaration,
  fields: {
    name: wordsIn(declaration.name.replaceAll("_", " ")),
    words: wordsIn(declaration.words ?? ""),
    summary: wordsIn(declaration.summary),
    takes: Object.entries(declaration.takes).flatMap(([name, { about }]) =>
      wordsIn(`${name.replaceAll("_", " ")} ${about}`),
    ),
  },
});

export class Finder {
  readonly #entries: readonly Entry[];

  constructor(declarations: Iterable<CataloguedFunction>) {
    this.#entries = [...declarations].map(entryOf);
  }

  /** The functions a question may mean, the likeliest first; all of them, by name, when it says nothing. */
  find(question: string): CataloguedFunction[] {
    const name = question.trim().toLowerCase().replaceAll(" ", "_");
    const asked = [...new Set(wordsIn(question.replaceAll("_", " ")))];
    if (asked.length === 0) {
      return this.#entries
        .map(({ declaration }) => declaration)
        .filter((one) => one.name.toLowerCase().startsWith(name));
    }
    const rarity = new Map(asked.map((word) => [word, this.#rarity(word)]));
    return this.#entries
      .map((entry) => {
        const starts = entry.declaration.name.toLowerCase().startsWith(name) ? 100 : 0;
        const score = asked.reduce((sum, word) => sum + rarity.get(word)! * scoreOf(entry, word), starts);
        return { entry, score };
      })
      .filter(({ score }) => score > 0)
      .sort((a, b) => b.score - a.score)
      .map(({ entry }) => entry.declaration);
  }

  /** A word that few functions know says more than one that many know. */
  #rarity(word: string): number {
    const known = this.#entries.filter((entry) => scoreOf(entry, word) > 0).length;
    return Math.log(1 + this.#entries.length / (1 + known));
  }
}

function scoreOf({ fields }: Entry, word: string): number {
  let score = 0;
  for (const [field, weight] of Object.entries(WEIGHTS)) {
    const words = fields[field as keyof typeof WEIGHTS];
    if (words.includes(word)) score += weight;
    else if (words.some((one) => one.startsWith(word))) score += weight / 2;
  }
  return score;
}
