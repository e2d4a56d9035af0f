/** What a function does with a list, in the words of a sentence. */
import { phrase } from "../../functions/phrase.ts";

const DOES: Record<string, string> = {
  SUM: phrase`adds up`, AVERAGE: phrase`averages`, MAX: phrase`takes the greatest of`, MIN: phrase`takes the least of`, PRODUCT: phrase`multiplies`,
}; // biome-ignore format: a table

export const doesWithList = (name: string): string => DOES[name] ?? phrase`works with`;
