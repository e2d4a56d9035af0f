/**
 * Holds a lock under the worker's own name for as long as the worker lives. The browser gives it back when the worker
 * ends, however it ends, and not before: one that is busy for long holds it (`ended.ts` waits for it).
 */
if (self.name !== "")
  globalThis.navigator?.locks?.request(self.name, () => new Promise(() => {})).catch(() => {});
