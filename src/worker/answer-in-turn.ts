/** The worker's side of a ReadingClient: orders in, answers out, in the order of asking. */

export function answerInTurn<Order, Answer>(answer: (order: Order) => Answer | Promise<Answer>): void {
  let before: Promise<unknown> = Promise.resolve();
  self.onmessage = ({ data: { id, order } }: MessageEvent<{ id: number; order: Order }>) => {
    before = before
      .then(() => answer(order))
      .then(
        (answered) => self.postMessage({ id, answer: answered }),
        (reason) =>
          self.postMessage({ id, failed: reason instanceof Error ? reason.message : String(reason) }),
      );
  };
}
