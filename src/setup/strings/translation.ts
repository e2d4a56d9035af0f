/** A translator's sentence in the ICU message format, made ready for the program. */
import { type MessageFormatElement, parse, TYPE } from "@formatjs/icu-messageformat-parser";
import type { Translation } from "../../../functions/phrase.ts";

/**
 * The translation of a sentence whose values have the given names. Throws an error in a sentence when the
 * text is no ICU message, names a value that the English sentence has not, leaves one out, or uses a
 * format other than plural.
 */
export function translationOf(text: string, names: readonly string[]): string | Translation {
  let elements: MessageFormatElement[];
  try {
    elements = parse(text, { ignoreTag: true, requiresOtherClause: true });
  } catch (fault) {
    throw new Error(`“${text}” can't be read: ${fault instanceof Error ? fault.message : fault}`);
  }
  const used = new Set<number>();
  const indexOf = (name: string): number => {
    const index = names.indexOf(name);
    if (index < 0)
      throw new Error(
        `“${text}” uses {${name}}, and its values are ${names.map((one) => `{${one}}`).join(", ") || "none"}`,
      );
    used.add(index);
    return index;
  };
  const partsOf = (list: readonly MessageFormatElement[], number: number): Translation =>
    list.map((element) => {
      switch (element.type) {
        case TYPE.literal:
          return element.value;
        case TYPE.argument:
          return indexOf(element.value);
        case TYPE.pound:
          return number;
        case TYPE.plural: {
          const by = indexOf(element.value);
          if (element.offset || element.pluralType !== "cardinal")
            throw new Error(
              `“${text}” has a plural with an offset or of order; only plain plurals are understood`,
            );
          const ways = Object.entries(element.options).map(([way, { value }]) => [way, partsOf(value, by)]);
          return { by, ways: Object.fromEntries(ways) };
        }
        default:
          throw new Error(
            `“${text}” has a format that is not understood; only {name} and {name, plural, …} are`,
          );
      }
    });
  const parts = partsOf(elements, 0);
  const left = names.find((_, i) => !used.has(i) && names.indexOf(names[i]!) === i);
  if (left !== undefined) throw new Error(`“${text}” leaves out {${left}}`);
  return parts.every((part) => typeof part === "string") ? parts.join("") : parts;
}
