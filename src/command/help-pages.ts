/** The help of every function as pages to read, made from the declarations: one Markdown file each, and a list. */

import type { CataloguedFunction } from "../../functions/catalogue.ts";
import {
  allowed,
  blockHelp,
  blockSignatures,
  exampleFormula,
  isDecided,
  kindText,
  listsHelp,
  signature,
} from "../../functions/help.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";

interface HelpPage {
  readonly path: string;
  readonly text: string;
}

/** "|" separates the cells of a Markdown table, so it must be written differently inside a cell. */
const cell = (text: string): string => text.replaceAll("|", "\\|");

function page(one: CataloguedFunction, unit: Unit): HelpPage {
  const takes = Object.entries(one.takes).map(
    ([name, take]) =>
      `| ${name} | ${cell(take.about)} | ${cell(allowed(take, unit))} | ${take.otherwise === undefined ? phrase`needed` : isDecided(take) ? phrase`may be left out` : cell(String(take.otherwise))} |`,
  );
  const examples = one.examples.map((example) => {
    const gives = typeof example.gives === "object" ? JSON.stringify(example.gives) : String(example.gives);
    return `| \`${cell(exampleFormula(one, example))}\` | ${cell(gives)} | ${example.unit ?? "in"} | ${cell(example.because)} |`;
  });
  const text = [
    `# ${one.name}`,
    "",
    one.summary,
    "",
    ...blockSignatures(one).map((line) => `    ${line}`),
    `    ${signature(one)}`,
    "",
    phrase`| argument | what it is | may be | when left out |`,
    "|---|---|---|---|",
    ...takes,
    "",
    phrase`Gives: ${kindText(one.returns)}.`,
    "",
    phrase`| example | gives | unit | why |`,
    "|---|---|---|---|",
    ...examples,
    "",
    ...listsHelp(one).map((line) => line.replace(/^ {2}/, "- ")),
    ...(one.block ? [...blockHelp(one.block, unit).map((line) => line.replace(/^ {2}/, "- ")), ""] : []),
    phrase`Source: ${one.source}.`,
    ...(one.cautions ? ["", phrase`Take care: ${one.cautions}`] : []),
    "",
  ].join("\n");
  return { path: `${one.family}/${one.name}.md`, text };
}

/** All pages, the list first. */
export function helpPages(all: Iterable<CataloguedFunction>, unit: Unit): HelpPage[] {
  const list = [...all];
  const families = [...new Set(list.map(({ family }) => family))];
  const lines = families.flatMap((family) => [
    `## ${family}`,
    "",
    ...list
      .filter((one) => one.family === family)
      .map((one) => `- [${one.name}](${family}/${one.name}.md): ${one.summary}`),
    "",
  ]);
  return [
    { path: "functions.md", text: [phrase`# The sewing functions`, "", ...lines].join("\n") },
    ...list.map((one) => page(one, unit)),
  ];
}
