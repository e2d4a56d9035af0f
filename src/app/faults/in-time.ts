/**
 * The answer to `work`, or an error when the milliseconds are over: a page that waits for an answer
 * which never comes shows nothing. An answer that comes too late is handed to `late`.
 */

import { phrase } from "../../../functions/phrase.ts";

export function inTime<T>(work: Promise<T>, milliseconds: number, late?: (answer: T) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    let over = false;
    const timer = setTimeout(() => {
      over = true;
      reject(new Error(phrase`it did not answer within ${Math.round(milliseconds / 1000)} seconds`));
    }, milliseconds);
    work
      .then(
        (answer) => (over ? late?.(answer) : resolve(answer)),
        (reason) => reject(reason),
      )
      .finally(() => clearTimeout(timer));
  });
}

/** The reason inside anything that was thrown, without the full stop at its end. */
export function reasonOf(fault: unknown): string {
  const reason = (fault instanceof Error ? fault.message || fault.name : String(fault)).replace(/\.$/, "");
  return /dynamically imported|importing a module|preload/i.test(reason)
    ? phrase`a part of the page's program could not be loaded; check that the server is running and reload the page`
    : reason;
}
