/** All sewing functions, found by folder. A file dropped into a family's folder is in the catalogue. */
import type { Declaration } from "./define.ts";

export type Family =
  | "tape"
  | "body"
  | "flare"
  | "pleats"
  | "curves"
  | "bodice"
  | "legs"
  | "cloth"
  | "notions"
  | "fitting";

export type CataloguedFunction = Declaration & { readonly family: Family };

/** What the files of functions export, by their paths. */
export type DeclaringFiles = Readonly<Record<string, Readonly<Record<string, Declaration>>>>;

/** The page's build leaves out those that are loaded after its start (src/setup/late-functions.ts). */
const files: DeclaringFiles = import.meta.glob("./*/[A-Z]*.ts", { eager: true });

const declared = new Map<string, CataloguedFunction>();

/** How often functions were added. */
let editions = 0;

/** By name, sorted. */
export const catalogue: ReadonlyMap<string, CataloguedFunction> = declared;

/**
 * Gives what `make` makes of the catalogue. It is made when it is first asked for, and made anew when functions
 * were added since, so that nothing goes on without the functions that the page loads after its start.
 */
export function ofCatalogue<T>(make: () => T): () => T {
  let made: { readonly edition: number; readonly value: T } | undefined;
  return () => {
    if (made?.edition !== editions) made = { edition: editions, value: make() };
    return made.value;
  };
}

/** Puts the declarations of more files into the catalogue, in their order. */
export function addToCatalogue(more: DeclaringFiles): void {
  const added = Object.entries(more).flatMap(([path, file]) =>
    Object.values(file).map((declaration) => ({ ...declaration, family: path.split("/")[1] as Family })),
  );
  const all = [...declared.values(), ...added].sort((a, b) => (a.name < b.name ? -1 : 1));
  editions += 1;
  declared.clear();
  for (const one of all) declared.set(one.name, one);
}

addToCatalogue(files);
