/**
 * Reads the small formulas in which a declaration says which arguments are usual. A formula may
 * hold OpenFormula's arithmetic and comparison operators, brackets, texts, argument names, and
 * MAX, MIN, SUM, ABS, AND, OR, NOT and IF. Each formula is parsed once into a function of the arguments.
 */
import { remember } from "./memo.ts";

export type RuleValue = number | string | boolean | readonly (number | string | boolean)[];
export type ArgumentValues = Readonly<Record<string, RuleValue>>;
type Work = (names: ArgumentValues) => RuleValue;

export interface Rule {
  /** Whether the rule holds. */
  readonly holds: (names: ArgumentValues) => boolean;
  /** The argument names in it, each once, in order. */
  readonly names: readonly string[];
  /** The two sides when the rule is a single comparison, else null: the text and the value of each side. */
  readonly sides: readonly [Side, Side] | null;
}

export interface Side {
  readonly text: string;
  readonly value: (names: ArgumentValues) => RuleValue;
}

const SIGNS = /\s*(?:(\d+(?:\.\d+)?)|"([^"]*)"|([A-Za-z_][A-Za-z0-9_]*)|(<=|>=|<>|[-+*/^<>=();]))/y;
const COMPARISONS = new Set(["<", "<=", ">", ">=", "=", "<>"]);

const number = (value: RuleValue): number => {
  if (typeof value === "number") return value;
  throw new Error(`a number is needed in this rule, not ${JSON.stringify(value)}`);
};
const figures = (values: readonly RuleValue[]): number[] =>
  values.flatMap((value) => (Array.isArray(value) ? value : [value])).map(number);

const FUNCTIONS: Record<string, (...values: RuleValue[]) => RuleValue> = {
  MAX: (...values) => Math.max(...figures(values)),
  MIN: (...values) => Math.min(...figures(values)),
  SUM: (...values) => figures(values).reduce((sum, one) => sum + one, 0),
  ABS: (value) => Math.abs(number(value!)),
  AND: (...values) => values.every(Boolean),
  OR: (...values) => values.some(Boolean),
  NOT: (value) => !value,
  IF: (test, then, otherwise) => (test ? then! : otherwise!),
};

/** Numbers that differ only by a rounding error of the arithmetic count as equal. */
const isNearlyEqual = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

function compare(sign: string, a: RuleValue, b: RuleValue): boolean {
  const equal = typeof a === "number" && typeof b === "number" ? isNearlyEqual(a, b) : a === b;
  if (sign === "=") return equal;
  if (sign === "<>") return !equal;
  const [x, y] = [number(a), number(b)];
  if (sign === "<") return x < y && !equal;
  if (sign === ">") return x > y && !equal;
  return equal || (sign === "<=" ? x < y : x > y);
}

const OPERATORS: Record<string, (a: number, b: number) => number> = {
  "+": (a, b) => a + b, "-": (a, b) => a - b, "*": (a, b) => a * b, "/": (a, b) => a / b, "^": (a, b) => a ** b,
}; // biome-ignore format: a table

/** The operators by precedence, the weakest first. */
const STRENGTHS = [[...COMPARISONS], ["+", "-"], ["*", "/"], ["^"]];

interface Token {
  readonly is: "number" | "text" | "name" | "sign";
  readonly text: string;
  readonly at: number;
  readonly end: number;
}

function tokensOf(rule: string): Token[] {
  const list: Token[] = [];
  SIGNS.lastIndex = 0;
  while (SIGNS.lastIndex < rule.length) {
    const at = SIGNS.lastIndex;
    const found = SIGNS.exec(rule);
    if (!found) throw new Error(`this rule can not be read from "${rule.slice(at)}" on: ${rule}`);
    const [, figure, text, name, sign] = found;
    const is =
      figure !== undefined ? "number" : text !== undefined ? "text" : name !== undefined ? "name" : "sign";
    list.push({ is, text: figure ?? text ?? name ?? sign!, at, end: SIGNS.lastIndex });
  }
  return list;
}

function readRule(rule: string): Rule {
  const tokens = tokensOf(rule);
  const names = new Set<string>();
  let next = 0;
  const expect = (text: string) => {
    if (tokens[next]?.text !== text) throw new Error(`"${text}" is missing in the rule ${rule}`);
    next += 1;
  };
  let sides: readonly [Side, Side] | null = null;

  const operation = (strength: number): Work => {
    if (strength === STRENGTHS.length) return operand();
    const start = tokens[next]?.at ?? 0;
    let evaluate = operation(strength + 1);
    while (tokens[next]?.is === "sign" && STRENGTHS[strength]!.includes(tokens[next]!.text)) {
      const sign = tokens[next]!;
      next += 1;
      const [left, right] = [evaluate, operation(strength + 1)];
      if (COMPARISONS.has(sign.text)) {
        const text = (from: number, to: number) => rule.slice(from, to).trim();
        sides = [
          { text: text(start, sign.at), value: left },
          { text: text(sign.end, tokens[next - 1]!.end), value: right },
        ];
        evaluate = (given) => compare(sign.text, left(given), right(given));
      } else {
        const count = OPERATORS[sign.text]!;
        evaluate = (given) => count(number(left(given)), number(right(given)));
      }
    }
    return evaluate;
  };

  const operand = (): Work => {
    const token = tokens[next];
    if (!token) throw new Error(`the rule ${rule} ends too soon`);
    next += 1;
    if (token.is === "number") return () => Number(token.text);
    if (token.is === "text") return () => token.text;
    if (token.text === "-") {
      const work = operand();
      return (given) => -number(work(given));
    }
    if (token.text === "(") {
      const work = operation(0);
      expect(")");
      return work;
    }
    if (token.is === "sign") throw new Error(`"${token.text}" has no place in the rule ${rule}`);
    if (tokens[next]?.text !== "(") {
      names.add(token.text);
      return (given) => given[token.text]!;
    }
    const called = FUNCTIONS[token.text];
    if (!called) throw new Error(`${token.text} is no function of a rule: ${rule}`);
    next += 1;
    const args: Work[] = [];
    while (tokens[next]?.text !== ")") {
      if (args.length > 0) expect(";");
      args.push(operation(0));
    }
    expect(")");
    return (given) => called(...args.map((arg) => arg(given)));
  };

  const work = operation(0);
  if (next < tokens.length) throw new Error(`the rule ${rule} goes on after its end`);
  const whole =
    tokens.filter(({ text }) => COMPARISONS.has(text)).length === 1 && !/^(IF|AND|OR|NOT)\(/.test(rule);
  return { holds: (given) => work(given) === true, names: [...names], sides: whole ? sides : null };
}

/** Kept because a declaration's rules are the same text at every call; there are a few hundred in all. */
const rules = remember<string, Rule>(1000);

/** The rule of a text; an error, for whoever writes a declaration, when it can't be read. */
export const ruleOf = (text: string): Rule => rules(text, () => readRule(text));
