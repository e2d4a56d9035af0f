/** Whether something failed because the browser's storage is full. */
export function isFull(fault: unknown): boolean {
  if (!(fault instanceof Error)) return false;
  return fault.name === "QuotaExceededError" || isFull(fault.cause);
}
