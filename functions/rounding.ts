/** Whole counts of pleats and tucks from a division that is seldom exact: the maker chooses which way to round. */
import type { Take } from "./define.ts";
import { roundDownToWhole, roundUpToWhole } from "./whole-number.ts";

export const ROUNDING = {
  kind: "text",
  about: "which whole number to take when it does not come out even",
  choices: ["nearest", "down", "up"],
  otherwise: "nearest",
} as const satisfies Take;

export type Rounding = "nearest" | "down" | "up";

export const roundCount = (value: number, rounding: Rounding): number =>
  rounding === "up" ? roundUpToWhole(value) : roundDownToWhole(rounding === "down" ? value : value + 0.5);

/** The same as a formula over a step or argument `value` and an argument `rounding`. */
export const roundCountRule = (value: string): string =>
  `IF(rounding = "up"; ROUNDUP(ROUND(${value}; 8); 0); INT(ROUND(${value} + IF(rounding = "down"; 0; 0.5); 8)))`;
