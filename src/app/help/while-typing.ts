/** What the help opens with while a formula is being typed. */
import type { Caret } from "../grid/caret.ts";
import { entryOf } from "./entries.ts";

/** The function whose name the caret is in, else the one whose argument it is in; null for neither. */
export function helpWhileTyping(caret: Caret | null): string | null {
  const names = caret ? [caret.word.toUpperCase(), caret.call] : [];
  return names.find((name) => name && entryOf(name)) ?? null;
}
