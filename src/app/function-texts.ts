/** The texts of the sewing functions that the page loads with the help (`src/setup/function-texts.ts`). */
import "./function-words.ts";
import type { Declaration } from "../../functions/define.ts";
import { inLanguage } from "../../functions/said-of-function.ts";

type Texts = Pick<Declaration, "name" | "source" | "words" | "alike" | "examples">;

const files = import.meta.glob<Record<string, Texts>>("../../functions/*/[A-Z]*.ts", {
  eager: true,
  query: "?texts",
});

const texts: ReadonlyMap<string, Texts> = new Map(
  Object.values(files)
    .flatMap((file) => Object.values(file))
    .map((one) => [one.name, one]),
);

/** The declaration with its texts, whether or not the page's start brought them, in the reader's language. */
export const withTexts = <D extends Declaration>(declaration: D): D =>
  inLanguage({ ...declaration, ...texts.get(declaration.name) });
