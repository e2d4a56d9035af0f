/** Brings the functions, and the descriptions of built-in ones, that the page does not load at its start. A worker imports this file before it calculates anything. */
import { HyperFormula } from "hyperformula";
import { addToCatalogue } from "../../functions/catalogue.ts";
import "./built-ins/all.ts";
import { cameLate } from "./late.ts";
import { declarations, plugins } from "./late-parts.ts";
import { register } from "./register.ts";

addToCatalogue(declarations);
for (const plugin of plugins) HyperFormula.registerFunctionPlugin(plugin);
register();
cameLate();
