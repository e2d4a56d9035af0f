/** Puts another state in place of the open book. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import type { Store } from "../../store/store.ts";
import { doLarge } from "../progress/large-steps.ts";

/**
 * Puts another state in place of the open book while that is still `former`, as one step that can be stopped where it
 * takes long. Returns null, or the sentence that refuses it.
 */
export async function replaceBook(
  store: Store,
  former: Book,
  book: Book,
  label: string,
): Promise<string | null> {
  let refusal: string | null = phrase`it was stopped`;
  await doLarge(store, phrase`In progress: ${label}`, () => {
    refusal =
      store.book === former
        ? store.run({ label, edit: () => book })
        : phrase`the book was changed in the meantime: try it once more`;
  });
  return refusal;
}
