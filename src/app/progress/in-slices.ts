/** Work in slices: between two of them the browser paints and hears keys. */

/** How long one slice may take, in milliseconds. */
const SLICE = 8;

/** Ends the running task. A timer would wait longer, in a page out of sight for a whole second. */
export const nextTask = (): Promise<void> =>
  new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });

/** All that `made` gives one after another. What takes less than one slice is made within the running task. */
export async function inSlices<T>(
  made: Iterable<T>,
  pause: () => Promise<void>,
  now: () => number = () => performance.now(),
): Promise<T[]> {
  const all: T[] = [];
  let begun = now();
  for (const one of made) {
    all.push(one);
    if (now() - begun < SLICE) continue;
    await pause();
    begun = now();
  }
  return all;
}
