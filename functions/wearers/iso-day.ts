/** A day as the engine counts it, days since 1899-12-30, as ISO 8601 writes it; the number itself when it is no day of these centuries. */
export const isoDay = (day: number): string =>
  day > 0 && day < 200_000
    ? new Date(Math.round(Math.floor(day) - 25_569) * 86_400_000).toISOString().slice(0, 10)
    : String(day);
