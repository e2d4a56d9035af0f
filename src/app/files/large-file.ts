/** Reads a large book's file in a worker, so that the page goes on and the reading can be stopped. */
import { phrase } from "../../../functions/phrase.ts";
import { type Reading, readBook } from "../../book/read.ts";
import { doneApart } from "../progress/apart.ts";

export async function readLarge(file: Blob, name: string): Promise<Reading> {
  try {
    const reading = await doneApart({ is: "read", file }, phrase`Reading “${name}”`);
    return reading ?? { reason: phrase`it was stopped` };
  } catch {
    // Without a worker the page reads the file itself.
    return readBook(await file.text());
  }
}
