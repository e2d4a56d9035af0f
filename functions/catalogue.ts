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

/** By name, sorted. */
export const catalogue: ReadonlyMap<string, CataloguedFunction> = declared;

/** Puts the declarations of more files into the catalogue, in their order. */
export function addToCatalogue(more: DeclaringFiles): void {
  const added = Object.entries(more).flatMap(([path, file]) =>
    Object.values(file).map((declaration) => ({ ...declaration, family: path.split("/")[1] as Family })),
  );
  const all = [...declared.values(), ...added].sort((a, b) => (a.name < b.name ? -1 : 1));
  declared.clear();
  for (const one of all) declared.set(one.name, one);
}

addToCatalogue(files);
