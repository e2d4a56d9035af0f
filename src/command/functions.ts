import { catalogue } from "../../functions/catalogue.ts";
import type { Declaration } from "../../functions/define.ts";
import {
  blockSignature,
  blockSignatures,
  exampleFormula,
  helpText,
  signature,
} from "../../functions/help.ts";
import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { inLanguage } from "../../functions/said-of-function.ts";
import { UNITS } from "../../functions/units.ts";
import { builtIns } from "../engine/built-ins/all.ts";
import { builtInText } from "../engine/built-ins/built-in.ts";
import { helpPages } from "./help-pages.ts";
import { readOptions, unitFrom } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  unit: {
    type: "string",
    default: "in",
    value: UNITS.join("|"),
    about: phrase`the unit in which ranges are written; inches when left out`,
  },
  ...JSON_OPTION,
  out: {
    type: "string",
    value: "DIR",
    about: phrase`writes a page of help for each function into this folder`,
  },
} as const satisfies VerbOptions;

export const functions: Verb = {
  name: "functions",
  usage: `[NAME] [--unit ${UNITS.join("|")}] [--json]  |  --out DIR [--unit ${UNITS.join("|")}]`,
  about: phrase`Lists the sewing functions, shows the help of one, or writes a page of help for each.`,
  options: OPTIONS,
  examples: ["functions SPREAD_PER_GAP", "functions --out help --unit cm"],
  writes: phrase`The list or the help on standard output; with --out, Markdown files in DIR.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const unit = unitFrom(values.unit);
    if (values.out !== undefined) {
      const pages = helpPages([...catalogue.values()].map(inLanguage), unit);
      for (const { path, text } of pages) io.write(`${values.out}/${path}`, text);
      io.out(
        phrase`${plural(pages.length, "# page", "# pages")} of help in ${values.out}, beginning with functions.md`,
      );
      return 0;
    }
    const name = positionals[0]?.toUpperCase();
    if (name === undefined) {
      const all = [...catalogue.values()];
      if (values.json) io.out(JSON.stringify(all.map(data), null, 2));
      else
        for (const one of all)
          io.out(
            [...blockSignatures(one), signature(one), `    ${inLanguage(one).summary}`]
              .flatMap((line) => line ?? [])
              .join("\n"),
          );
      return 0;
    }
    const builtIn = builtIns.get(name);
    if (builtIn) {
      io.out(values.json ? JSON.stringify(builtIn, null, 2) : builtInText(builtIn));
      return 0;
    }
    const found = catalogue.get(name);
    if (!found) {
      const near = nearestWord(name, [...catalogue.keys(), ...builtIns.keys()]);
      throw new Wrong(
        near
          ? phrase`no function is named ${name}; is ${near} meant?`
          : phrase`no function is named ${name}; "functions" lists them all`,
      );
    }
    io.out(values.json ? JSON.stringify(data(found), null, 2) : helpText(inLanguage(found), unit));
    return 0;
  },
};

function data(declaration: Declaration & { family?: string }) {
  const { name, family, summary, source, returns, takes, block, twoBlocks, usual, examples, cautions } =
    declaration;
  return {
    name,
    family,
    signature: signature(declaration),
    summary,
    source,
    returns,
    takes,
    ...(block ? { block: { signature: blockSignature(declaration), ...block } } : {}),
    ...(twoBlocks
      ? { twoBlocks: { signature: blockSignature({ name, block: twoBlocks }), ...twoBlocks } }
      : {}),
    ...(usual ? { usual } : {}),
    examples: examples.map((example) => ({
      formula: exampleFormula(declaration, example),
      gives: example.gives,
      unit: example.unit ?? "in",
      because: example.because,
    })),
    ...(cautions ? { cautions } : {}),
  };
}
