/** The sentences that stand in the code, as messages for translators. */
import { type ESTree, parseSync } from "vite";
import type { Plural } from "../../../functions/phrase.ts";
import { keyOf } from "../../../functions/speech.ts";

/** A sentence of the program. */
export interface Message {
  /** What the program finds its translation by. */
  readonly key: string;
  /** The English sentence in the ICU message format, with a name for each value, without the blanks at its ends. */
  readonly id: string;
  /** The blanks that stand before and after it. */
  readonly blanks: readonly [before: string, after: string];
  /** The names of the values by their places in the template. */
  readonly names: readonly string[];
  /** The files it stands in. */
  readonly files: readonly string[];
  /** What a sewing function says of itself, which the page loads with the first part that shows it. */
  readonly late?: true;
  /** What the code says of it to translators, in a comment above it that begins with "For translators:". */
  readonly hint?: string;
}

/** A fault in how a sentence is written in the code, with its place. */
export class Unfit extends Error {}

/** The tags whose templates are sentences. */
const TAGS: ReadonlySet<string> = new Set(["phrase", "phraseWith", "written"]);

/** Tables of the program whose texts are translated where they are shown, by `translated`: the fields that hold texts, or all texts of several words but formulas. */
export const TABLES: Readonly<Record<string, readonly string[] | "sentences">> = {
  "functions/arguments.ts": [
    ...[
      "length",
      "area",
      "count",
      "share",
      "angle",
      "days",
      "money",
      "figure",
      "flag",
      "text",
      "piece",
      "edge",
    ],
    "block",
  ],
  "functions/cautions.ts": "sentences",
  "functions/survey/outlier.ts": "sentences",
  "functions/survey/survey.ts": ["unlike"],
  "functions/wearers/": ["sort"],
  "functions/bodice/BODICE_FOUNDATION.ts": ["says"],
  "functions/cloth/BIAS_YIELD.ts": ["says"],
  "functions/legs/BREECHES_FOUNDATION.ts": ["says"],
  "functions/seams/": ["noun"],
  "functions/cutting/stock-form.ts": ["noun"],
  "src/engine/built-ins/choosing": "sentences",
  "src/engine/built-ins/figures": "sentences",
  "src/engine/built-ins/lists-and-texts": "sentences",
  "src/engine/built-ins/sums": "sentences",
  "src/app/help/topics/": ["title", "name", "summary", "words", "says", "table"],
  "src/app/help/shortcuts.ts": ["keys", "does"],
};

/** What a sewing function says of itself and of its arguments. `inLanguage` of functions/said-of-function.ts translates it. */
const HELP: ReadonlySet<string> = new Set(["summary", "about", "because", "source", "cautions", "words"]);

/** Files with texts that several functions have in their help. */
export const SHARED = ["functions/cautions.ts", "functions/sources.ts"];

type Node = ESTree.Node;

/** Calls `visit` for a node and all within it, with the nodes around it, the nearest last. */
export function walk(
  node: unknown,
  visit: (node: Node, around: readonly Node[]) => void,
  around: readonly Node[] = [],
) {
  if (typeof node !== "object" || node === null) return;
  if (Array.isArray(node)) {
    for (const one of node) walk(one, visit, around);
    return;
  }
  const isNode = "type" in node && typeof node.type === "string";
  if (isNode) visit(node as Node, around);
  const within = isNode ? [...around, node as Node] : around;
  for (const part of Object.values(node)) walk(part, visit, within);
}

/** Text as the ICU message format has it: braces are quoted, and apostrophes that would begin a quotation are doubled. */
export const quoted = (text: string): string => text.replace(/'(?=[{}#']|$)/g, "''").replace(/[{}]/g, "'$&'");

/** A name for the value of an expression: "book.title" is title, "reasonOf(fault)" is fault. */
function nameOf(node: Node): string {
  switch (node.type) {
    case "Identifier":
      return node.name;
    case "MemberExpression": {
      const { property, object } = node;
      if (property.type !== "Identifier" || node.computed) return nameOf(object);
      return property.name === "length" || property.name === "size" ? nameOf(object) : property.name;
    }
    case "TSNonNullExpression":
    case "TSAsExpression":
    case "ChainExpression":
    case "AwaitExpression":
      return nameOf("argument" in node ? node.argument : node.expression);
    case "BinaryExpression":
      return node.left.type === "Literal" ? nameOf(node.right) : nameOf(node.left as Node);
    case "LogicalExpression":
      return nameOf(node.left);
    case "CallExpression": {
      const [first] = node.arguments;
      if (node.callee.type === "MemberExpression" && node.callee.object.type !== "Identifier")
        return nameOf(node.callee.object);
      if (
        node.callee.type === "MemberExpression" &&
        !["Math", "String", "Number"].includes(nameOf(node.callee.object))
      )
        return nameOf(node.callee.object);
      return first ? nameOf(first) : nameOf(node.callee);
    }
    case "JSXElement": {
      const named = node.children.find(({ type }) => type === "JSXExpressionContainer");
      const { name } = node.openingElement;
      return named?.type === "JSXExpressionContainer" && named.expression.type !== "JSXEmptyExpression"
        ? nameOf(named.expression as Node)
        : name.type === "JSXIdentifier"
          ? name.name.toLowerCase()
          : "value";
    }
    default:
      return "value";
  }
}

/** The same name for the same expression, another for every other: "cell", "cell2". */
function distinct(names: readonly string[], sources: readonly string[]): string[] {
  const given = new Map<string, string>();
  return names.map((name, i) => {
    const source = sources[i]!;
    const known = given.get(source);
    if (known !== undefined) return known;
    const taken = [...given.values()];
    let free = name;
    for (let next = 2; taken.includes(free); next += 1) free = `${name}${next}`;
    given.set(source, free);
    return free;
  });
}

const staticText = (node: Node | undefined): string | null =>
  node?.type === "Literal" && typeof node.value === "string"
    ? node.value
    : node?.type === "TemplateLiteral" && node.expressions.length === 0
      ? node.quasis[0]!.value.cooked
      : null;

/** The nodes from the sentence of a measured figure, the second argument of `measure`, down to a node of it; null for a node of no such sentence. */
export function withinMeasured(node: Node, around: readonly Node[]): readonly Node[] | null {
  const all = [...around, node];
  const at = all.findLastIndex(
    (one, i) =>
      one.type === "CallExpression" &&
      calledName(one.callee) === "measure" &&
      one.arguments[1] === all[i + 1],
  );
  return at < 0 ? null : all.slice(at + 1);
}

/** Whether a text is the sentence of a measured figure as it stands, or one of the choices of it: Working translates it. */
const isMeasured = (node: Node, around: readonly Node[]): boolean =>
  withinMeasured(node, around)
    ?.slice(0, -1)
    .every((one) => one.type === "ConditionalExpression") ?? false;

/** Whether a text with these nodes around it is the label of a shape, or one of the choices of it. */
export function isLabel(around: readonly Node[]): boolean {
  const owner = around.findLast(({ type }) => type !== "ConditionalExpression");
  return owner?.type === "Property" && owner.key.type === "Identifier" && owner.key.name === "label";
}

const calledName = (callee: Node): string | null =>
  callee.type === "Identifier"
    ? callee.name
    : callee.type === "MemberExpression" && callee.property.type === "Identifier"
      ? callee.property.name
      : null;

const HINT = "For translators:";

/** What translators are told of the labels of shapes. */
const IN_A_DRAWING = "words in a drawing.";

/** The texts that a file exports by name. */
export function constantsOf(file: string, code: string): [name: string, text: string][] {
  return parseSync(file, code).program.body.flatMap((statement) =>
    statement.type === "ExportNamedDeclaration" && statement.declaration?.type === "VariableDeclaration"
      ? statement.declaration.declarations.flatMap(({ id, init }): [string, string][] => {
          const text = staticText(init ?? undefined);
          return id.type === "Identifier" && text !== null ? [[id.name, text]] : [];
        })
      : [],
  );
}

/** A text of the help of a sewing function, with the shared texts in it written out; null for anything else. */
function helpText(node: Node, around: readonly Node[], shared: ReadonlyMap<string, string>): string | null {
  const owner = around.at(-1);
  if (owner?.type !== "Property" || owner.value !== node || owner.key.type !== "Identifier") return null;
  if (!HELP.has(owner.key.name)) return null;
  if (node.type === "Identifier") return shared.get(node.name) ?? null;
  if (node.type !== "TemplateLiteral") return staticText(node);
  const texts = node.expressions.map((one) => (one.type === "Identifier" ? shared.get(one.name) : undefined));
  if (texts.includes(undefined)) return null;
  return node.quasis.map(({ value }, i) => value.cooked! + (texts[i] ?? "")).join("");
}

/** The sentences of one file of code; `shared` are texts by the names of their constants. */
export function messagesOf(
  file: string,
  code: string,
  shared: ReadonlyMap<string, string> = new Map(),
): Message[] {
  const { program, errors, comments } = parseSync(file, code);
  if (errors.length > 0) throw new Unfit(`${file}: ${errors[0]!.message}`);
  const found: Message[] = [];
  const fields = Object.entries(TABLES).find(([path]) => file.startsWith(path))?.[1];
  walk(program, (node, around) => {
    if (fields && node.type === "Literal" && typeof node.value === "string" && /\p{L}/u.test(node.value)) {
      const field = around.findLast(({ type }) => type === "Property") as ESTree.ObjectProperty | undefined;
      const isText =
        fields === "sentences"
          ? / /.test(node.value) && !node.value.startsWith("=") && around.at(-1)?.type !== "ImportDeclaration"
          : field?.key.type === "Identifier" && fields.includes(field.key.name);
      if (isText) found.push({ ...trimmed(quoted(node.value)), key: node.value, names: [], files: [file] });
    }
    const help = file.startsWith("functions/") ? helpText(node, around, shared) : null;
    if (help !== null)
      found.push({ ...trimmed(quoted(help)), key: help, names: [], files: [file], late: true });
    if (node.type === "Literal" && typeof node.value === "string" && isMeasured(node, around))
      found.push({ ...trimmed(quoted(node.value)), key: node.value, names: [], files: [file] });
    if (node.type !== "TaggedTemplateExpression") return;
    if (node.tag.type !== "Identifier" || !TAGS.has(node.tag.name)) return;
    // A comment is for the sentences of the next line of code.
    const hint = comments.findLast(({ value, end }) => {
      const between = code.slice(end, node.start);
      return value.trim().startsWith(HINT) && end < node.start && !between.trimStart().includes("\n");
    });
    const isDrawn = file.startsWith("functions/") && isLabel(around);
    const said = hint ? hint.value.trim().slice(HINT.length).trim() : isDrawn ? IN_A_DRAWING : "";
    found.push({
      ...messageOf(file, code, node.quasi),
      ...(said && { hint: said }),
    });
  });
  return found;
}

/** A translator need not see the blanks by which a sentence is parted from what stands beside it. */
function trimmed(id: string): Pick<Message, "id" | "blanks"> {
  const [, before = "", inner = "", after = ""] = /^(\s*)(.*?)(\s*)$/s.exec(id)!;
  return { id: inner, blanks: [before, after] };
}

function messageOf(
  file: string,
  code: string,
  { quasis, expressions, start }: ESTree.TemplateLiteral,
): Message {
  const sourceOf = ({ start, end }: Node) => code.slice(start, end);
  const pluralCall = (node: Node) =>
    node.type === "CallExpression" && node.callee.type === "Identifier" && node.callee.name === "plural"
      ? node
      : null;
  const numbers = expressions.map((one) => (pluralCall(one)?.arguments[0] ?? one) as Node);
  const names = distinct(numbers.map(nameOf), numbers.map(sourceOf));
  const values = expressions.map((one): Plural | null => {
    const call = pluralCall(one);
    if (!call) return null;
    const [form, other] = [staticText(call.arguments[1]), staticText(call.arguments[2])];
    if (form === null || other === null)
      throw new Unfit(
        `${file}:${code.slice(0, start).split("\n").length}: the forms of a plural must be texts without values`,
      );
    return { number: 0, one: form, other };
  });
  const texts = quasis.map(({ value }) => value.cooked!);
  const id = texts
    .map((text, i) => {
      if (i >= expressions.length) return quoted(text);
      const value = values[i];
      const slot = value
        ? `{${names[i]}, plural, one {${quoted(value.one)}} other {${quoted(value.other)}}}`
        : `{${names[i]}}`;
      return quoted(text) + slot;
    })
    .join("");
  return { ...trimmed(id), key: keyOf(texts, values), names, files: [file] };
}

/** Each sentence once, in the order of its first file. Where the names of its values differ from place to place, those that come first in the alphabet stay. */
export function merged(all: readonly Message[]): Message[] {
  const byKey = new Map<string, Message>();
  for (const one of all) {
    const known = byKey.get(one.key);
    if (!known) byKey.set(one.key, one);
    else {
      const { id, names } = one.id < known.id ? one : known;
      const files = [...new Set([...known.files, ...one.files])].sort();
      const hint = [known.hint, one.hint].filter((text, i, all) => text && all.indexOf(text) === i).join(" ");
      const { late, ...first } = known;
      byKey.set(one.key, {
        ...first,
        id,
        names,
        files,
        ...(late && one.late && { late }),
        ...(hint && { hint }),
      });
    }
  }
  return [...byKey.values()];
}
