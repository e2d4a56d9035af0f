/**
 * Leaves parts of the libraries out of the page that nothing in it can reach. Each part is replaced by a
 * module that fails loudly, so that a later use is noticed at once.
 */
import type { Plugin } from "vite";

/** For a function that must not be called: what it says when it is. */
const absent = (name: string): string =>
  `export const ${name} = () => { throw new Error("${name} is not built into this page: see src/setup/lean-libraries.ts"); };`;

/** The modules that are replaced, by the end of their paths, and the code in their place. */
const REPLACED: readonly (readonly [path: RegExp, code: string])[] = [
  // The grid's stylesheet is a file of its own; this is its second copy, inside the library's script.
  [/handsontable\/styles\/handsontableStyles\.mjs$/, 'export default ""'],
  // Themes that are objects, with their icons and colours: ours is a class of src/app/grid/grid.css.
  [
    /handsontable\/themes\/theme\/index\.mjs$/,
    "export const mainTheme = null, classicTheme = null, horizonTheme = null",
  ],
  [
    /handsontable\/themes\/engine\/index\.mjs$/,
    ["createTheme", "createThemeManager", "isThemeOverrideEmpty"].map(absent).join("\n"),
  ],
  // What the grid's own menu, which the page does not have, would say of hidden rows.
  [/handsontable\/plugins\/hiddenRows\/contextMenuItem\/(?:hide|show)Row\.mjs$/, "export default null"],
  // The engine's own descriptions of its functions, which nothing asks for: those of Ellwand are in src/engine/built-ins.
  [
    /hyperformula\/es\/interpreter\/functionMetadata\/index\.mjs$/,
    "export const FUNCTION_DOCS = Object.create(null)",
  ],
  // The grid's own words are those of its menus and forms, which the page does not have.
  [/handsontable\/i18n\/languages\/en-US\.mjs$/, 'export default { languageCode: "en-US" }'],
  // Reads bought keys of the engine; Ellwand uses it under the GPL (src/engine/instance.ts).
  [
    /hyperformula\/es\/license\/handsontable-license-key-parser\/readLicense\.mjs$/,
    absent("readEntitlementLicense"),
  ],
  // Which functions a bought key of the engine allows: the GPL allows all.
  [
    /hyperformula\/es\/license\/functionCapabilities\.mjs$/,
    "export const FUNCTION_CAPABILITY_TABLE = new Map()",
  ],
  // The engine's index of columns is an option that Ellwand does not set.
  [
    /hyperformula\/es\/Lookup\/ColumnIndex\.mjs$/,
    'export class ColumnIndex { constructor() { throw new Error("ColumnIndex is not built into this page: see src/setup/lean-libraries.ts"); } }',
  ],
  // How a parser goes on behind a fault: the engine's parser stops at the first one.
  [
    /chevrotain\/lib_esm\/src\/parse\/parser\/traits\/recoverable\.js$/,
    `export const EOF_FOLLOW_KEY = {}, IN_RULE_RECOVERY_EXCEPTION = "InRuleRecoveryException";
${["attemptInRepetitionRecovery", "InRuleRecoveryException"].map(absent).join("\n")}
export class Recoverable {
  initRecoverable({ recoveryEnabled }) {
    if (recoveryEnabled) attemptInRepetitionRecovery();
    this.recoveryEnabled = false;
    this.firstAfterRepMap = {};
    this.resyncFollows = {};
  }
  attemptInRepetitionRecovery() {}
  getHumanReadableRuleStack() { return this.RULE_STACK.map((name) => this.shortRuleNameToFullName(name)); }
}`,
  ],
  // The tree of all signs of a text: the engine's parser makes its own trees.
  [
    /chevrotain\/lib_esm\/src\/parse\/parser\/traits\/tree_builder\.js$/,
    `${absent("makeTree")}
export class TreeBuilder {
  initTreeBuilder({ outputCst }) {
    if (outputCst !== false) makeTree();
    this.outputCst = false;
    this.LAST_EXPLICIT_RULE_STACK = [];
    this.CST_STACK = [];
    this.manyInternal = this.manyInternalNoCst;
    this.orInternal = this.orInternalNoCst;
    this.optionInternal = this.optionInternalNoCst;
    this.atLeastOneInternal = this.atLeastOneInternalNoCst;
    this.manySepFirstInternal = this.manySepFirstInternalNoCst;
    this.atLeastOneSepFirstInternal = this.atLeastOneSepFirstInternalNoCst;
  }
  cstInvocationStateUpdate() {}
  cstFinallyStateUpdate() {}
  cstPostTerminal() {}
  cstPostNonTerminal() {}
  cstPostRule() {}
  getLastExplicitRuleShortName() { return this.RULE_STACK[this.RULE_STACK.length - 1]; }
  getPreviousExplicitRuleShortName() { return this.RULE_STACK[this.RULE_STACK.length - 2]; }
  getLastExplicitRuleOccurrenceIndex() { return this.RULE_OCCURRENCE_STACK[this.RULE_OCCURRENCE_STACK.length - 1]; }
}`,
  ],
];

/** The code in the place of a module that is left out; null for any other module. */
export const replacement = (id: string): string | null =>
  REPLACED.find(([path]) => path.test(id))?.[1] ?? null;

/** The sum that bought keys of the grid are checked by; a page that is built without such a key never asks for it. */
const KEY_SUM = /handsontable\/utils\/entitlementLicenseKey\/sha512\.mjs$/;

/** What is cut out of a library's module, by the end of the module's path. */
const CUT: readonly (readonly [path: RegExp, from: string, to: string])[] = [
  // The checks of a grammar and of its signs, which are the same at each start: the tests run with them.
  [
    /chevrotain\/lib_esm\/src\/parse\/parser\/parser\.js$/,
    "if (isEmpty(resolverErrors) && _this.skipValidations === false) {",
    "_this.definitionErrors.push.apply(_this.definitionErrors, validationErrors); // mutability for the win?\n                }",
  ],
  [
    /chevrotain\/lib_esm\/src\/scan\/lexer_public\.js$/,
    'if (_this.config.skipValidations === false) {\n                _this.TRACE_INIT("performRuntimeChecks"',
    "_this.config.lineTerminatorCharacters));\n                });\n            }",
  ],
  [
    /chevrotain\/lib_esm\/src\/scan\/lexer_public\.js$/,
    'if (_this.config.skipValidations === false) {\n                        _this.TRACE_INIT("validatePatterns"',
    "validatePatterns(currModDef, allModeNames));\n                        });\n                    }",
  ],
  // What these checks would say.
  [
    /chevrotain\/lib_esm\/src\/parse\/errors_public\.js$/,
    "    buildDuplicateFoundError: function (topLevelRule, duplicateProds) {",
    'is already defined in the grammar: ->" + options.grammarName + "<-";\n        return errMsg;\n    }',
  ],
];

/** The module without what is cut out of it, from the first text to the end of the second; fails where it is no longer as it was. */
export function cut(id: string, code: string): string | null {
  const cuts = CUT.filter(([path]) => path.test(id));
  if (cuts.length === 0) return null;
  return cuts.reduce((now, [, from, to]) => {
    const start = now.indexOf(from);
    const end = now.indexOf(to, start);
    if (start < 0 || end < 0) throw new Error(`${id} has changed: see src/setup/lean-libraries.ts (${from})`);
    return now.slice(0, start) + now.slice(end + to.length);
  }, code);
}

/** Classes of grid parts that are not registered in src/app/grid/plugins.ts: menus, filters, other editors and the like. */
const UNUSED =
  /\.(?:ht(?:Filters|DropdownMenu|ContextMenu|UI|ItemWrapper|Submenu|CustomMenu|Comment|SelectEditor|Checkbox|Autocomplete|NestedHeaders|Rowspan|HasRowspan|SearchResult)|ht-(?:multi-select|pagination|page-|notification|empty-data-state|loading|border-style)|ht_nest|collapsibleIndicator|changeType|columnSorting|sortAction|sort-\d|autocompleteEditor|listbox|pdf)/;

/** The parts of a text between the commas that stand in no brackets. */
function partsOf(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (const [at, sign] of [...text].entries()) {
    if (sign === "(" || sign === "[") depth += 1;
    else if (sign === ")" || sign === "]") depth -= 1;
    else if (sign === "," && depth === 0) {
      parts.push(text.slice(from, at));
      from = at + 1;
    }
  }
  return [...parts, text.slice(from)];
}

/** A selector without what it excludes: a rule for cells outside of menus is no rule of menus. */
function withoutExclusions(selector: string): string {
  const at = selector.indexOf(":not(");
  if (at < 0) return selector;
  let depth = 1;
  let end = at + ":not(".length;
  for (; depth > 0 && end < selector.length; end += 1)
    depth += Number(selector[end] === "(") - Number(selector[end] === ")");
  return selector.slice(0, at) + withoutExclusions(selector.slice(end));
}

/** The stylesheet without the rules of parts that the page does not have. */
export function usedStyles(css: string): string {
  let kept = "";
  let depth = 0;
  let from = 0;
  for (let at = 0; at < css.length; at += 1) {
    if (css[at] === "{") depth += 1;
    if (css[at] !== "}") continue;
    depth -= 1;
    if (depth > 0) continue;
    const rule = css.slice(from, at + 1);
    from = at + 1;
    const body = rule.indexOf("{");
    if (rule.trimStart().startsWith("@")) kept += rule;
    else {
      const used = partsOf(rule.slice(0, body)).filter((one) => !UNUSED.test(withoutExclusions(one)));
      if (used.length > 0) kept += used.join(",") + rule.slice(body);
    }
  }
  return kept + css.slice(from);
}

let isKeyGiven = false;

export const leanLibraries: Plugin = {
  name: "lean-libraries",
  enforce: "pre",
  configResolved({ env }) {
    isKeyGiven = env.VITE_HANDSONTABLE_KEY !== undefined;
  },
  load: (id) => (!isKeyGiven && KEY_SUM.test(id) ? absent("sha512") : replacement(id.replaceAll("\\", "/"))),
  transform: (code, id) =>
    /handsontable\/styles\/handsontable\.min\.css$/.test(id) ? { code: usedStyles(code), map: null } : null,
};

/** What is cut out comes after the other rules of the build, which read modules as they are on the disk. */
export const cutLibraries: Plugin = {
  name: "cut-libraries",
  apply: "build",
  transform(code, id) {
    const less = cut(id.replaceAll("\\", "/"), code);
    return less === null ? null : { code: less, map: null };
  },
};
