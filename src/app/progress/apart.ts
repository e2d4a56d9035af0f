/** Work on a whole book that a worker does while the page says so: it can be stopped, and begun again where nothing is heard of it. */
import type { AnswerTo, BookOrder } from "../../worker/book-work.ts";
import { type BookWorker, doBookWork } from "../../worker/book-work-client.ts";
import { showWork } from "./ongoing.ts";

/** The answer to an order, or null where its maker has stopped the work. Rejects when the work fails. */
export async function doneApart<Order extends BookOrder>(
  order: Order,
  what: string,
  make?: () => BookWorker,
): Promise<AnswerTo<Order> | null> {
  for (;;) {
    const ending = new AbortController();
    let isAgain = false;
    const end = showWork({
      what,
      onStop: () => ending.abort(),
      onAgain: () => {
        isAgain = true;
        ending.abort();
      },
    });
    try {
      const answer = await doBookWork(order, ending.signal, make);
      if (answer !== null || !isAgain) return answer;
    } finally {
      end();
    }
  }
}
