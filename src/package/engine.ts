/**
 * What `import ... from "ellwand/engine"` gives: `register(HyperFormula)` adds every sewing
 * function to a HyperFormula of your own. HyperFormula is yours to install.
 *
 * The unit of length is inches unless the instance's `context` says otherwise:
 * `HyperFormula.buildEmpty({ ..., context: { unit: "cm" } })`.
 */
import type { HyperFormula } from "hyperformula";
import { register as registerWith } from "../engine/register.ts";
import { layDesk } from "../lay/desk.ts";

export { engineConfig } from "../engine/config.ts";

/** Adds all sewing functions to a HyperFormula class; instances built from then on know them. */
export function register(target: typeof HyperFormula): void {
  registerWith(target, { unit: "in", plan: (question) => layDesk(question, {}) });
}
