/** Reads a large book's file in a worker, so that the page goes on and the reading can be stopped. */
import { phrase } from "../../../functions/phrase.ts";
import { type Reading, readBook } from "../../book/read.ts";
import { doBookWork } from "../../worker/book-work-client.ts";
import { showWork } from "../progress/ongoing.ts";

export async function readLarge(file: Blob, name: string): Promise<Reading> {
  const stopping = new AbortController();
  const end = showWork({ what: phrase`Reading “${name}”`, onStop: () => stopping.abort() });
  try {
    const reading = await doBookWork({ is: "read", file }, stopping.signal);
    return reading ?? { reason: phrase`it was stopped` };
  } catch {
    // Without a worker the page reads the file itself.
    return readBook(await file.text());
  } finally {
    end();
  }
}
