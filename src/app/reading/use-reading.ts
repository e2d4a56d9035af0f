/** A file of another program while it is looked at: read in a worker, and read anew at each change of the order. */

import { useCallback, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { ReadingClient } from "../../worker/reading-client.ts";

interface Refused {
  readonly refusal: string;
  /** Its worker has ended: another may read the file. */
  readonly ended?: true;
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
  /** Whether the worker has ended before it could answer. */
  readonly ended: boolean;
  /** Has another worker read the file in the way that was asked for last. */
  readonly again: () => void;
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
  const [ended, setEnded] = useState(false);
  const hear = useCallback((next: Answer | Refused) => {
    setReading(false);
    setRefusal("refusal" in next ? next.refusal : null);
    setEnded("refusal" in next && next.ended === true);
    if (!("refusal" in next)) setAnswer(next);
  }, []);
  const begun = useCallback(() => {
    setReading(true);
    setEnded(false);
  }, []);
  const ask = useCallback(
    (order: Order) => {
      begun();
      running.current!.ask(order, hear);
    },
    [begun, hear],
  );
  const again = useCallback(() => {
    begun();
    running.current?.again(hear);
  }, [begun, hear]);
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
  return { answer, refusal, reading, ask, ended, again };
}
