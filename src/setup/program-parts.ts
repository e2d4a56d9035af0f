/** The parts of a program, as Vite's parser gives them to the rules of the build. */
import { parseSync } from "vite";

export interface Part {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

const isPart = (value: unknown): value is Part =>
  typeof value === "object" && value !== null && "type" in value && "start" in value;

export const parsed = (code: string, file = "module.mjs"): Part =>
  parseSync(file, code).program as unknown as Part;

/** A name that stands for a value or a member; "" for anything else. */
export const nameOf = (part: unknown): string =>
  isPart(part) && part.type === "Identifier" ? String(part.name) : "";

/** The parts that a part is made of, each with the field that holds it. */
export function* partsIn(part: Part): Iterable<readonly [field: string, part: Part]> {
  for (const field in part) {
    const value = part[field];
    if (isPart(value)) yield [field, value];
    else if (Array.isArray(value)) for (const one of value) if (isPart(one)) yield [field, one];
  }
}
