/** The elements of an SVG file, from its XML. The parser expands no entities of the file and fetches nothing. */

import { parseXml, XmlElement, XmlText } from "@rgrove/parse-xml";
import { phrase } from "../../../functions/phrase.ts";

export interface SvgElement {
  /** The name without the prefix that the file gives the names of SVG; other names keep their prefix. */
  readonly name: string;
  /** An attribute by its name; a prefix counts as part of the name. */
  readonly attribute: (name: string) => string | undefined;
  /** Every attribute, in the order of the file. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  /** All text within. */
  readonly text: string;
}

/** The most elements that are read, those that `use` repeats counted each time. */
export const MOST_ELEMENTS = 200_000;

/** The root of the file, or a sentence that says why the file is not SVG. */
export function readElements(text: string): SvgElement | { readonly refusal: string } {
  let root: XmlElement | null;
  try {
    root = parseXml(text.replace(/^\ufeff/, ""), { ignoreUndefinedEntities: true }).root;
  } catch (reason) {
    const { message, line, column } = reason as Error & { line?: number; column?: number };
    const what = message
      .split("\n")[0]!
      .replace(/\s*\(line \d+, column \d+\)$/, "")
      .slice(0, 120);
    const fault = what.replace(/\p{Cc}/gu, " ");
    return {
      refusal:
        line === undefined || column === undefined
          ? phrase`it is not a valid SVG file: its XML is wrong (${fault})`
          : phrase`it is not a valid SVG file: its XML is wrong at line ${line}, column ${column} (${fault})`,
    };
  }
  const [, prefix = "", local] = /^(?:([^:]*):)?(.*)$/.exec(root?.name ?? "") ?? [];
  if (!root || local !== "svg")
    return {
      refusal: phrase`it is not an SVG file: its first element is ${(root?.name ?? "").slice(0, 40)}, not svg`,
    };
  return elementOf(root, prefix === "" ? "" : `${prefix}:`);
}

function elementOf(element: XmlElement, prefix: string): SvgElement {
  const { name, attributes, children } = element;
  return {
    name:
      prefix !== "" && name.startsWith(prefix)
        ? name.slice(prefix.length)
        : prefix === ""
          ? name
          : `:${name}`,
    attribute: (wanted) => attributes[wanted],
    attributes,
    get children() {
      return children.flatMap((child) => (child instanceof XmlElement ? [elementOf(child, prefix)] : []));
    },
    get text() {
      return children.map((child) => (child instanceof XmlText ? child.text : "")).join("");
    },
  };
}
