/** Everything that the help can show: the topics of the page, the built-in functions, the sewing functions. */
import { type CataloguedFunction, catalogue } from "../../../functions/catalogue.ts";
import { builtIns } from "../../engine/built-ins/all.ts";
import type { BuiltIn } from "../../engine/built-ins/built-in.ts";
import { withTexts } from "../function-texts.ts";
import type { Searchable } from "./find.ts";
import { CHAPTERS } from "./topics/all.ts";
import type { Topic } from "./topics/topic.ts";

export type Entry = Searchable &
  (
    | { readonly is: "topic"; readonly topic: Topic }
    | { readonly is: "built-in"; readonly builtIn: BuiltIn }
    | { readonly is: "function"; readonly declaration: CataloguedFunction }
  );

const ofTopic = (topic: Topic): Entry => ({
  is: "topic",
  topic,
  name: topic.name,
  summary: topic.summary,
  words: topic.words,
  more: topic.says.join(" "),
});

const ofBuiltIn = (builtIn: BuiltIn): Entry => ({
  is: "built-in",
  builtIn,
  name: builtIn.name,
  summary: builtIn.summary,
  words: builtIn.words,
  more: Object.entries(builtIn.takes).flat().join(" "),
});

const ofFunction = (declaration: CataloguedFunction): Entry => ({
  is: "function",
  declaration,
  name: declaration.name,
  summary: declaration.summary,
  words: declaration.words ?? "",
  more: Object.entries(declaration.takes)
    .map(([name, { about }]) => `${name.replaceAll("_", " ")} ${about}`)
    .join(" "),
});

export const ENTRIES: readonly Entry[] = [
  ...CHAPTERS.flatMap(({ topics }) => topics).map(ofTopic),
  ...[...builtIns.values()].map(ofBuiltIn),
  ...[...catalogue.values()].map(withTexts).map(ofFunction),
];

const byName: ReadonlyMap<string, Entry> = new Map(ENTRIES.map((entry) => [entry.name, entry]));

/** The entry of that name, or undefined. */
export const entryOf = (name: string): Entry | undefined => byName.get(name);
