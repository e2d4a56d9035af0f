/** The garments to begin with: every file in templates/garments/. */
import { phrase } from "../../../functions/phrase.ts";
import { type Garment, readGarment } from "../../book/garment.ts";
import { reasonOf } from "../faults/in-time.ts";

const files = import.meta.glob("../../../templates/garments/*.json", { query: "?raw", import: "default" });

export interface Offer {
  /** The name of the file. */
  readonly file: string;
  readonly reading: { readonly garment: Garment } | { readonly reason: string };
}

async function offer(path: string, load: () => Promise<unknown>): Promise<Offer> {
  const file = path.split("/").at(-1)!;
  try {
    return { file, reading: readGarment((await load()) as string) };
  } catch (fault) {
    return {
      file,
      reading: { reason: phrase`it could not be loaded (${reasonOf(fault)}); reload the page` },
    };
  }
}

/** All of them; one that can't be read comes with the reason. */
export const offers = (): Promise<Offer[]> =>
  Promise.all(Object.entries(files).map(([path, load]) => offer(path, load as () => Promise<unknown>)));
