/** This tab among the others: a name of its own for as long as it lives, and which others are alive. */
import { inTime } from "../faults/in-time.ts";

const START = "ellwand.tab.";

/** This visit of this tab; a reload is another one. */
export const TAB = `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 8)}`;

/** Holds a lock with the tab's name until the tab is gone, however it goes. */
export function holdTab(): void {
  if ("locks" in navigator) navigator.locks.request(START + TAB, () => new Promise(() => {})).catch(() => {});
}

/** The tabs that are open now; null where the browser can't say: without locks, or when it does not answer. */
export async function tabsAlive(): Promise<ReadonlySet<string> | null> {
  if (!("locks" in navigator)) return null;
  try {
    const { held = [] } = await inTime(navigator.locks.query(), 2_000);
    const names = held.flatMap(({ name }) => (name?.startsWith(START) ? [name.slice(START.length)] : []));
    return new Set([...names, TAB]);
  } catch {
    return null;
  }
}
