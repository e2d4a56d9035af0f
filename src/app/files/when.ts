/** How the page says when something was saved. */

/** "10:38" today, else "4 May 2026, 10:38". */
export function whenText(at: number): string {
  const then = new Date(at);
  const time = then.toLocaleTimeString(undefined, { timeStyle: "short" });
  if (then.toDateString() === new Date().toDateString()) return time;
  return `${then.toLocaleDateString(undefined, { dateStyle: "medium" })}, ${time}`;
}
