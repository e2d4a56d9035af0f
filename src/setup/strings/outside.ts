/** Finds English on the page that stands outside the catalogue: words that a reader sees and a translator does not. */
import { type ESTree, parseSync } from "vite";
import { isLabel, walk, withinMeasured } from "./messages.ts";

type Node = ESTree.Node;

/** Attributes and properties of components that a reader sees or hears. */
const HEARD: ReadonlySet<string> = new Set([
  ...[
    "aria-label",
    "aria-description",
    "aria-roledescription",
    "aria-valuetext",
    "title",
    "placeholder",
    "alt",
  ],
  ...["label", "none", "heading", "act", "what", "text", "open"],
]);

/** Two words beside one another, or one that ends like a sentence. */
const SENTENCE = /\p{L}{2,}[,;:]? \p{L}{2,}|\p{L}{2,}(?: ?…|[.:] ?)$/u;

/** Paths of drawings, selectors, fonts and queries of the browser, which have words beside one another too. */
const NO_SENTENCE =
  /^[MmL] ?[-\d]|^ellwand|^[A-Z_]+\.[a-z]|^\(|^[.:[]|\[[\w-]+[\]=]|sans-serif|^\w+(?:-\w+)+|^(?:translate|rotate|scale|url|rgb|color-mix|calc|min)\(/;

/** Functions whose texts are for the browser. */
const FOR_THE_BROWSER = /^(?:querySelector(?:All)?|closest|matches|matchMedia|find|handOn)$/;

const isText = (node: Node): boolean =>
  node.type === "TemplateLiteral" || (node.type === "Literal" && typeof node.value === "string");

const wordsOf = (node: Node): string =>
  node.type === "TemplateLiteral"
    ? node.quasis.map(({ value }) => value.cooked).join("§")
    : node.type === "Literal" && typeof node.value === "string"
      ? node.value
      : "";

/** The texts of a file that should be a phrase`…`, each with its line. */
export function outside(file: string, code: string): string[] {
  const { program } = parseSync(file, code);
  const found: string[] = [];
  const note = ({ start }: Node, words: string) =>
    found.push(`${file}:${code.slice(0, start).split("\n").length} ${words.replace(/\s+/g, " ").trim()}`);
  walk(program, (node, around) => {
    if (node.type === "JSXText") {
      if (/\p{L}{2}/u.test(node.value)) note(node, node.value);
      return;
    }
    if (!isText(node)) return;
    const words = wordsOf(node);
    if (!/\p{L}{2}/u.test(words)) return;
    const place = placeOf(node, around);
    if (place === "code") return;
    if (place === "page" ? true : SENTENCE.test(words) && !NO_SENTENCE.test(words)) note(node, words);
  });
  return found;
}

/** What says its text to the reader in functions/: a refusal, and what a call says of its answer. */
const SAYS = /^(?:Refusal|toCheck|doubt|estimates|points)$/;

/** The sentences and labels that a file of functions/ says without a phrase`…` or a written`…`, each with its line. */
export function saidOutside(file: string, code: string): string[] {
  const { program } = parseSync(file, code);
  const found: string[] = [];
  walk(program, (node, around) => {
    if (!isText(node) || placeOf(node, around) === "code") return;
    const words = wordsOf(node);
    const isSaid = around.some(
      (one) =>
        (one.type === "NewExpression" || one.type === "CallExpression") &&
        one.callee.type === "Identifier" &&
        SAYS.test(one.callee.name),
    );
    // The sentence of a measured figure is translated as it stands; with values in it or made later, it is a phrase.
    const measured = withinMeasured(node, around) ?? [];
    const isMade =
      node.type === "TemplateLiteral" || measured.some(({ type }) => type === "ArrowFunctionExpression");
    const isLeft = measured.length > 0 && isMade && /\p{L}{2}/u.test(words);
    // So is the label of a shape.
    const labels = isLabel(around) && /\p{L}{2}/u.test(words);
    if ((isSaid && SENTENCE.test(words)) || isLeft || labels)
      found.push(`${file}:${code.slice(0, node.start).split("\n").length} ${words}`);
  });
  return found;
}

/** Where a text stands: in the page for certain, in code that is no text of the page, or somewhere between. */
function placeOf(node: Node, around: readonly Node[]): "page" | "code" | "between" {
  const parent = around.at(-1)!;
  if (parent.type === "TaggedTemplateExpression" || parent.type.startsWith("TS")) return "code";
  if (/^(?:Import|Export)/.test(parent.type) || parent.type === "SwitchCase") return "code";
  if (parent.type === "BinaryExpression" && parent.operator !== "+") return "code";
  if (parent.type === "MemberExpression" || (parent.type === "Property" && parent.key === node))
    return "code";
  if (parent.type === "CallExpression" && (parent.arguments as Node[]).includes(node)) {
    const { callee } = parent;
    const name =
      callee.type === "Identifier"
        ? callee.name
        : callee.type === "MemberExpression" && callee.property.type === "Identifier"
          ? callee.property.name
          : "";
    // The forms of a plural are in its sentence.
    if (name === "plural" || FOR_THE_BROWSER.test(name)) return "code";
  }
  // What a text is a value of: only choices and additions stand between.
  for (const [i, one] of around.toReversed().entries()) {
    if (one.type === "JSXAttribute") return HEARD.has(String(one.name.name)) ? "page" : "code";
    if (one.type === "JSXExpressionContainer") {
      if (/^JSX(?:Element|Fragment)$/.test(around.at(-2 - i)?.type ?? "")) return "page";
      continue;
    }
    if (!/^(?:Conditional|Logical|Binary)Expression$|^TemplateLiteral$/.test(one.type)) break;
    if (one.type === "ConditionalExpression" && one.test === (around.at(-i) ?? node)) break;
  }
  return "between";
}
