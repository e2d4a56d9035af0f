/** Works out the next version of a book: where that takes long, in a worker that can be stopped. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { type NextVersion, nextVersion } from "../../engine/next-version.ts";
import { takesLong } from "../../engine/prepare.ts";
import { layDesk } from "../../lay/desk.ts";
import type { Store } from "../../store/store.ts";
import { doneApart } from "../progress/apart.ts";
import { shownWhile } from "../progress/ongoing.ts";

export async function nextVersionOf(
  book: Book,
  engine: Store["engine"],
): Promise<NextVersion | { readonly refusal: string }> {
  const what = phrase`Working out the next version`;
  if (!takesLong(engine, book, true)) return shownWhile(what, () => nextVersion(book, layDesk));
  return (await doneApart({ is: "next", book }, what)) ?? { refusal: phrase`it was stopped` };
}
