/** The version of a garment, which stands at the end of its book's title: "Peplum, version 2". The first book has none. */
import { LONGEST } from "./shape.ts";

const VERSION = /, version (\d+)$/;

/** "version 2"; "" for the first version. */
export const versionText = (title: string): string => {
  const [, number] = VERSION.exec(title) ?? [];
  return number === undefined ? "" : `version ${number}`;
};

export const withoutVersion = (title: string): string => title.replace(VERSION, "");

/** The title of this version. A title that is too long loses its end, never its version. */
export const withVersion = (title: string, number: number): string =>
  `${withoutVersion(title).slice(0, LONGEST.title - 16)}, version ${number}`;
