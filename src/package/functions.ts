/** What `import ... from "ellwand/functions"` gives: the sewing functions alone, with no dependency. */
export { type CataloguedFunction, catalogue, type Family } from "../../functions/catalogue.ts";
export type { Cell, Declaration, Example, Kind, Take } from "../../functions/define.ts";
export type { Shape } from "../../functions/drawing/shapes.ts";
export { exampleFormula, helpText, signature } from "../../functions/help.ts";
export type { Lay, LayQuestion, Planner } from "../../functions/lay.ts";
export {
  type Argument,
  type Explanation,
  explain,
  isRefused,
  type Refused,
  run,
  type Setting,
} from "../../functions/run.ts";
