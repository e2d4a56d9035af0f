/** Tables for other programs as comma-separated values: RFC 4180, and no text that a spreadsheet would work out. */

/** A figure as digits: nothing that a spreadsheet could run. */
const FIGURE = /^ *[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)? *$/;

/**
 * What a spreadsheet may take for a formula: a sign that begins one, in plain or in full width,
 * after blanks and invisible signs that it passes over; and a tab or a line break at the
 * beginning, which some programs drop. Source: OWASP, "CSV Injection".
 */
const FORMULA = /^(?:[\t\r\n]|[\s\p{C}]*[=+\-@＝＋－＠])/u;

/** Lines of fields as one text; each line ends with CR LF. A text that reads like a formula gets ' before it. */
export const csvText = (lines: readonly (readonly string[])[]): string =>
  lines.map((line) => `${line.map(field).join(",")}\r\n`).join("");

function field(text: string): string {
  const safe = FORMULA.test(text) && !FIGURE.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) || /^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
