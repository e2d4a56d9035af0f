/** File names that every machine takes, one for each title. */

/** Names that Windows keeps to itself, with or without an ending. */
const TAKEN = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/** Letters, digits, "_" and "-" of each title, at most 60; titles that would give the same file name on some machine get a number. */
export function fileNames(titles: readonly string[], ending: string): string[] {
  const used = new Set<string>();
  return titles.map((title) => {
    const plain = title
      .normalize("NFC")
      .replace(/[^\p{L}\p{N}_-]+/gu, "-")
      .replace(/^-+|-+$/g, "");
    const [...letters] = plain;
    const short = letters.slice(0, 60).join("");
    const stem = short === "" || TAKEN.test(short) ? `piece-${short}`.replace(/-$/, "") : short;
    let name = stem;
    for (let i = 2; used.has(name.toLowerCase()); i += 1) name = `${stem}-${i}`;
    used.add(name.toLowerCase());
    return `${name}${ending}`;
  });
}
