/** What a sewing function says of itself and of its arguments, in the language of its reader. */
import type { BlockForm, Declaration, Takes } from "./define.ts";
import { translated } from "./phrase.ts";

const eachAbout = <T extends { readonly about: string }>(
  all: Readonly<Record<string, T>>,
): Record<string, T> =>
  Object.fromEntries(
    Object.entries(all).map(([name, one]) => [name, { ...one, about: translated(one.about) }]),
  );

const takesInLanguage = (takes: Takes): Takes =>
  Object.fromEntries(
    Object.entries(eachAbout(takes)).map(([name, take]) => [
      name,
      take.list ? { ...take, list: { ...take.list, columns: eachAbout(take.list.columns) } } : take,
    ]),
  );

const formInLanguage = (form: BlockForm): BlockForm => ({
  ...form,
  takes: takesInLanguage(form.takes),
  columns: eachAbout(form.columns),
  examples: form.examples.map((one) => ({ ...one, because: translated(one.because) })),
});

/** The declaration with its texts in the reader's language; without a speaker, as it is. */
export function inLanguage<D extends Declaration>(declaration: D): D {
  const { summary, source, words, cautions, takes, block, twoBlocks, examples = [] } = declaration;
  return {
    ...declaration,
    summary: translated(summary),
    source: translated(source),
    takes: takesInLanguage(takes),
    examples: examples.map((one) => ({ ...one, because: translated(one.because) })),
    ...(words && { words: translated(words) }),
    ...(cautions && { cautions: translated(cautions) }),
    ...(block && { block: formInLanguage(block) }),
    ...(twoBlocks && { twoBlocks: formInLanguage(twoBlocks) }),
  };
}
