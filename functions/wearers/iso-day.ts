import { remember } from "../memo.ts";

/** A day as the engine counts it, days since 1899-12-30, as ISO 8601 writes it; the number itself when it is no day of these centuries. */
export const isoDay = (day: number): string =>
  day > 0 && day < 200_000 ? daysWritten(Math.floor(day), () => written(Math.floor(day))) : String(day);

/** Kept because every figure that is taken from a chart names its day. */
const daysWritten = remember<number, string>(500);

const written = (day: number): string => new Date((day - 25_569) * 86_400_000).toISOString().slice(0, 10);
