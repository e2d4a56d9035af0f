/** The commands of SVG path data, as they are written (W3C SVG 2, section 9.3.9: the grammar). */
import { phrase } from "../phrase.ts";

/** A letter and the groups of numbers behind it: `L 1 2 3 4` is the letter L with the groups 1 2 and 3 4. */
export interface PathCommand {
  /** A capital letter is followed by places on the paper, a small one by places from where the pen is. */
  readonly letter: string;
  /** `Z` has no groups, every other letter has at least one. */
  readonly groups: readonly (readonly number[])[];
}

/** How many numbers one group of each letter has. */
const SIZES: Record<string, number> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };
const SPACE = /[\s,]*/y;

/** Whether a number of an arc's group, counted from 0, is a flag: 0 or 1, which needs no space behind it. */
const isFlag = (letter: string, i: number): boolean => letter === "A" && (i === 3 || i === 4);

// Separate constants: each is a plain figure in the loops over the signs.
const ZERO = 48;
const NINE = 57;
const POINT = 46;
const PLUS = 43;
const MINUS = 45;
const BLANK = 32;
const COMMA = 44;
const CAPITAL_E = 69;
const SMALL_E = 101;

const isDigit = (code: number): boolean => code >= ZERO && code <= NINE;

/** Whole figures below this one and these powers of ten are exact in a double: their quotient is rounded once. */
const EXACT = 1e15;
const POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** Reads figures of path data one after the other. */
class Figures {
  at = 0;
  /** Where the number begins that was read last. */
  begin = 0;

  constructor(readonly text: string) {}

  skipSpace(): void {
    const { text } = this;
    let code = text.charCodeAt(this.at);
    while (code === BLANK || code === COMMA) code = text.charCodeAt(++this.at);
    if (code > BLANK && code < 127) return;
    SPACE.lastIndex = this.at;
    SPACE.test(text);
    this.at = SPACE.lastIndex;
  }

  /** The flag that comes next, which is 0 or 1; NaN when none does, and then nothing is read. */
  flag(): number {
    const before = this.at;
    this.skipSpace();
    const digit = this.text.charCodeAt(this.at) - ZERO;
    if (digit === 0 || digit === 1) {
      this.at += 1;
      return digit;
    }
    this.at = before;
    return Number.NaN;
  }

  /** The number that comes next; NaN when none does, and then nothing is read. */
  number(): number {
    const { text } = this;
    const before = this.at;
    this.skipSpace();
    this.begin = this.at;
    let at = this.at;
    const sign = text.charCodeAt(at);
    if (sign === PLUS || sign === MINUS) at += 1;
    let whole = 0;
    const first = at;
    let code = text.charCodeAt(at);
    for (; isDigit(code); code = text.charCodeAt(++at)) whole = 10 * whole + code - ZERO;
    const digits = at - first;
    let decimals = 0;
    if (code === POINT && (digits > 0 || isDigit(text.charCodeAt(at + 1)))) {
      const point = at;
      code = text.charCodeAt(++at);
      for (; isDigit(code); code = text.charCodeAt(++at)) whole = 10 * whole + code - ZERO;
      decimals = at - point - 1;
    }
    if (digits + decimals === 0) {
      this.at = before;
      return Number.NaN;
    }
    const power = this.powerAt(at);
    this.at = power ?? at;
    if (power !== null || whole >= EXACT || decimals >= POWERS.length)
      return Number(text.slice(this.begin, this.at));
    const figure = whole / POWERS[decimals]!;
    return sign === MINUS ? -figure : figure;
  }

  /** Where a power of ten ends that begins here, such as e-5; null when none does. */
  private powerAt(start: number): number | null {
    const { text } = this;
    const letter = text.charCodeAt(start);
    if (letter !== SMALL_E && letter !== CAPITAL_E) return null;
    let at = start + 1;
    const sign = text.charCodeAt(at);
    if (sign === PLUS || sign === MINUS) at += 1;
    if (!isDigit(text.charCodeAt(at))) return null;
    while (isDigit(text.charCodeAt(at))) at += 1;
    return at;
  }
}

/** Reads path data as commands. Throws an Error whose message says where the text stops making sense. */
export function readCommands(text: string): PathCommand[] {
  const commands: PathCommand[] = [];
  const figures = new Figures(text);
  const group = (letter: string): number[] | null => {
    const numbers: number[] = [];
    for (let i = 0; i < SIZES[letter]!; i += 1) {
      const figure = isFlag(letter, i) ? figures.flag() : figures.number();
      if (Number.isNaN(figure)) {
        if (i === 0) return null;
        throw new Error(phrase`path data stops short after "${letter} ${numbers.join(" ")}"`);
      }
      if (Math.abs(figure) > 1e9) {
        const digits = text.slice(figures.begin, figures.at);
        throw new Error(phrase`path data can not hold a figure as large as ${digits.slice(0, 12)}`);
      }
      numbers.push(figure);
    }
    return numbers;
  };
  for (figures.skipSpace(); figures.at < text.length; figures.skipSpace()) {
    const letter = text[figures.at]!;
    const capital = letter.toUpperCase();
    if (!(capital in SIZES))
      throw new Error(phrase`path data can not hold "${text.slice(figures.at, figures.at + 12)}"`);
    if (commands.length === 0 && capital !== "M") throw new Error(phrase`path data must begin with "M"`);
    figures.at += 1;
    const groups: number[][] = [];
    if (capital !== "Z") {
      for (let next = group(capital); next; next = group(capital)) groups.push(next);
      if (groups.length === 0) throw new Error(phrase`path data has no numbers after "${letter}"`);
    }
    commands.push({ letter, groups });
  }
  return commands;
}
