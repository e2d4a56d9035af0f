/**
 * The functions that the page loads after its start. Only the page's build puts them here
 * (src/setup/late-functions.ts); everywhere else every function is there from the beginning.
 */
import type { FunctionPluginDefinition } from "hyperformula";
import type { DeclaringFiles } from "../../functions/catalogue.ts";

/** The sewing functions, by the paths of their files. */
export const declarations: DeclaringFiles = {};

/** The built-in functions. */
export const plugins: readonly FunctionPluginDefinition[] = [];
