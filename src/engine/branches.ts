/**
 * Functions that choose among their arguments: IF, IFS, IFERROR, IFNA, SWITCH, CHOOSE. Only the
 * chosen branch is calculated, so that a cell never rests on a lay that its answer does not use.
 */
import { CellError } from "hyperformula";

/** How the value of an argument is read; `E` is whatever stands for an error. */
export interface Reading {
  /** The value of the argument at a position, counted from 0. It is calculated only when it is asked for. */
  readonly value: (position: number) => unknown;
  /** The type of an error such as "VALUE" or "NA"; null for a value that is no error. */
  readonly errorType: (value: unknown) => string | null;
  readonly isEqual: (a: unknown, b: unknown) => boolean;
}

/** Answers with the positions of the arguments that the answer needs; null when that can't be known beforehand. */
type Choice = (count: number, reading: Reading) => readonly number[] | null;

const isTrue = (value: unknown): boolean | null => {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  // The engine's sign for an empty cell, and null where it has left the engine.
  if (typeof value === "symbol" || value === null) return false;
  if (typeof value === "string") {
    const word = value.toUpperCase();
    return word === "TRUE" ? true : word === "FALSE" || word === "" ? false : null;
  }
  return typeof value === "object" && "val" in value ? isTrue(value.val) : null;
};

const unless =
  (isReplaced: (type: string | null) => boolean): Choice =>
  (count, { value, errorType }) => {
    if (count !== 2) return null;
    const first = value(0);
    if (errorType(first) === null && typeof first === "object" && first !== null && !("val" in first))
      return null;
    return isReplaced(errorType(first)) ? [0, 1] : [0];
  };

const CHOICES: Readonly<Record<string, Choice>> = {
  IF: (count, { value }) => {
    if (count < 2 || count > 3) return null;
    const condition = isTrue(value(0));
    return condition === null ? null : condition ? [0, 1] : count === 3 ? [0, 2] : [0];
  },
  IFS: (count, { value }) => {
    if (count % 2 !== 0) return null;
    const needed: number[] = [];
    for (let at = 0; at < count; at += 2) {
      const condition = isTrue(value(at));
      if (condition === null) return null;
      needed.push(at);
      if (condition) return [...needed, at + 1];
    }
    return needed;
  },
  IFERROR: unless((type) => type !== null),
  IFNA: unless((type) => type === "NA"),
  SWITCH: (count, { value, errorType, isEqual }) => {
    if (count < 3 || !isPlain(value(0))) return null;
    const needed = [0];
    let at = 1;
    for (; at + 1 < count; at += 2) {
      const key = value(at);
      needed.push(at);
      if (errorType(key) !== null) continue;
      if (!isPlain(key)) return null;
      if (isEqual(value(0), key)) return [...needed, at + 1];
    }
    return at < count ? [...needed, at] : needed;
  },
  CHOOSE: (count, { value }) => {
    const number = value(0);
    return typeof number === "number" && Number.isInteger(number) && number >= 1 && number < count
      ? [0, number]
      : null;
  },
};

const isPlain = (value: unknown): boolean =>
  typeof value === "number" || typeof value === "string" || typeof value === "boolean";

/** Whether a function, its name in capitals, chooses among its arguments. */
export const isChoosing = (name: string): boolean => Object.hasOwn(CHOICES, name);

/** The positions of the arguments that the answer of a call needs, or null when all of them are. */
export const neededArguments = (
  name: string,
  count: number,
  reading: Reading,
): ReadonlySet<number> | null => {
  const needed = isChoosing(name) ? CHOICES[name]!(count, reading) : null;
  return needed && new Set(needed);
};

/** A node of HyperFormula's formulas, as far as it is used here. */
interface Node {
  readonly type: string;
  readonly procedureName?: string;
  readonly args?: readonly Node[];
}

/**
 * A call with 0 in the place of each argument that its answer does not need. Other arguments that
 * had to be calculated to find out are replaced by their values: a number's node gives back
 * whatever value it holds.
 */
export function withNeededArguments<T extends Node>(
  call: T,
  valueAt: (arg: Node) => unknown,
  isEqual: Reading["isEqual"],
): T {
  const { procedureName: name, args } = call;
  if (!isChoosing(name!)) return call;
  const values = new Map<number, unknown>();
  const value = (at: number): unknown => {
    if (!values.has(at)) values.set(at, valueAt(args![at]!));
    return values.get(at);
  };
  const errorType = (one: unknown) => (one instanceof CellError ? one.type : null);
  const needed = neededArguments(name!, args!.length, { value, errorType, isEqual });
  const chosen = args!.map((arg, at) => {
    if (arg.type === "EMPTY") return arg;
    if (values.has(at)) return { type: "NUMBER", value: values.get(at) };
    return !needed || needed.has(at) ? arg : { type: "NUMBER", value: 0 };
  });
  return { ...call, args: chosen };
}
