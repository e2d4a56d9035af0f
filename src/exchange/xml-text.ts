/** Texts as XML has them: signs that XML can't hold are left out, and spaces are kept. */

/** What no XML may hold (XML 1.0, 2.2), lone halves of a pair among them. */
const FORBIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is left out
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** A text without the signs that no XML may hold. */
export const allowed = (text: string): string => text.replace(FORBIDDEN, "");

/** A text between tags or within quotes. */
export const escaped = (text: string): string => allowed(text).replace(/[&<>"]/g, (sign) => SIGNS[sign]!);

/** Attributes in their order; a line break within one is kept by its number. */
export const attributes = (all: Readonly<Record<string, string>>): string =>
  Object.entries(all)
    .map(
      ([name, value]) =>
        `${name}="${escaped(value).replace(/[\t\n\r]/g, (sign) => `&#${sign.charCodeAt(0)};`)}"`,
    )
    .join(" ");

/** A text as paragraphs of ISO/IEC 26300-3, 5.1.3 and 6.1: one for each line, runs of spaces and tabs as elements. */
export const paragraphs = (text: string): string =>
  text
    .split(/\r\n?|\n/)
    .map((line) => {
      const kept = escaped(line)
        .replace(/^ +| {2,}| +$/g, (spaces) => `<text:s text:c="${spaces.length}"/>`)
        .replaceAll("\t", "<text:tab/>");
      return `<text:p>${kept}</text:p>`;
    })
    .join("");
