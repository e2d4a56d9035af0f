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

const files = import.meta.glob<Record<string, Declaration>>("./*/[A-Z]*.ts", { eager: true });

/** By name, sorted. */
export const catalogue: ReadonlyMap<string, CataloguedFunction> = new Map(
  Object.entries(files)
    .flatMap(([path, file]) =>
      Object.values(file).map((declaration) => ({ ...declaration, family: path.split("/")[1] as Family })),
    )
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((one) => [one.name, one]),
);
