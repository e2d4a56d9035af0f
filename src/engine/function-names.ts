/** The names of all functions that formulas know, built in or for sewing. */
import { HyperFormula } from "hyperformula";
import { isLate } from "./late.ts";
import { register } from "./register.ts";

register();

const known = new Set(HyperFormula.getRegisteredFunctionNames("enGB"));

/** Whether formulas know a function of this name, written in capitals. */
export const isFunction = (name: string): boolean => known.has(name) || isLate(name);
