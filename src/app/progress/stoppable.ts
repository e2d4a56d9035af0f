/** Long work that is done in slices, with a button that stops it. */
import { nextTask } from "../files/in-slices.ts";
import { showWork } from "./ongoing.ts";

/** How long one slice may take, in milliseconds: between two of them the browser paints and hears the button. */
const SLICE = 30;

/** Does all of it; false when it was stopped. Where a slice fails, what follows does the work at once, and says why it can't. */
export async function doneInSlices(what: string, slices: Generator<unknown, void>): Promise<boolean> {
  let isStopped = false;
  const onStop = () => {
    isStopped = true;
  };
  const end = showWork({ what, onStop });
  try {
    for (let begun = performance.now(); !slices.next().done; ) {
      if (performance.now() - begun < SLICE) continue;
      await nextTask();
      if (isStopped) {
        slices.return();
        return false;
      }
      begun = performance.now();
    }
  } catch {
    // The engine is as it was.
  } finally {
    end();
  }
  return true;
}
