/** What the help opens with while a formula is being typed. */
import { catalogue } from "../../../functions/catalogue.ts";
import { builtIns } from "../../engine/built-ins/described.ts";
import type { Caret } from "../grid/caret.ts";

/** The function whose name the caret is in, else the one whose argument it is in; null for neither. */
export function helpWhileTyping(caret: Caret | null): string | null {
  const names = caret ? [caret.word.toUpperCase(), caret.call] : [];
  return names.find((name) => name && (catalogue.has(name) || builtIns.has(name))) ?? null;
}
