/** A file of another program while it is looked at: read in a worker, and read anew at each change of the order. */

import { useCallback, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { ReadingClient } from "../../worker/reading-client.ts";

interface Refused {
  readonly refusal: string;
}

/** How large a file may be, and the sentence about a larger one. Its size is known without reading it. */
export interface Most {
  readonly bytes: number;
  readonly tooLarge: (bytes: number) => string;
}

export interface Reading<Order, Answer> {
  /** The last answer that was no refusal; null until there is one. */
  readonly answer: Answer | null;
  /** Why the file can't be read, or not in the way that is asked for. */
  readonly refusal: string | null;
  /** Whether an answer is awaited. */
  readonly reading: boolean;
  readonly ask: (order: Order) => void;
}

/** `begin` makes the first order of the file's bytes; `client` begins the worker, which ends with the dialog. */
export function useReading<Order extends object, Answer extends object>(
  file: File,
  most: Most,
  client: () => ReadingClient<Order, Answer | Refused>,
  begin: (bytes: Uint8Array) => Order,
): Reading<Order, Answer> {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [reading, setReading] = useState(true);
  const running = useRef<ReadingClient<Order, Answer | Refused> | null>(null);
  const ask = useCallback((order: Order) => {
    setReading(true);
    running.current!.ask(order, (next) => {
      setReading(false);
      setRefusal("refusal" in next ? next.refusal : null);
      if (!("refusal" in next)) setAnswer(next);
    });
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a file is read once
  useEffect(() => {
    const refuse = (reason: string) => {
      setReading(false);
      setRefusal(reason);
    };
    if (file.size > most.bytes) return refuse(most.tooLarge(file.size));
    const own = client();
    running.current = own;
    let gone = false;
    file.arrayBuffer().then(
      (bytes) => {
        if (!gone) ask(begin(new Uint8Array(bytes)));
      },
      () =>
        gone ||
        refuse(
          phrase`the browser could not read it; check that the file still exists and that you may read it`,
        ),
    );
    return () => {
      gone = true;
      own.close();
    };
  }, [file]);
  return { answer, refusal, reading, ask };
}
