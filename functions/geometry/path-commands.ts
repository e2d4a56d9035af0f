/** The commands of SVG path data, as they are written (W3C SVG 2, section 9.3.9: the grammar). */

/** A letter and the groups of numbers behind it: `L 1 2 3 4` is the letter L with the groups 1 2 and 3 4. */
export interface PathCommand {
  /** A capital letter is followed by places on the paper, a small one by places from where the pen is. */
  readonly letter: string;
  /** `Z` has no groups, every other letter has at least one. */
  readonly groups: readonly (readonly number[])[];
}

/** How many numbers one group of each letter has. */
const SIZES: Record<string, number> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };
const NUMBER = /[\s,]*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)/y;
const FLAG = /[\s,]*([01])/y;
const SPACE = /[\s,]*/y;

/** Whether a number of an arc's group, counted from 0, is a flag: 0 or 1, which needs no space behind it. */
const isFlag = (letter: string, i: number): boolean => letter === "A" && (i === 3 || i === 4);

/** Reads path data as commands. Throws an Error whose message says where the text stops making sense. */
export function readCommands(text: string): PathCommand[] {
  const commands: PathCommand[] = [];
  let at = 0;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) return null;
    at = pattern.lastIndex;
    return found[1] ?? "";
  };
  const group = (letter: string): number[] | null => {
    const numbers: number[] = [];
    for (let i = 0; i < SIZES[letter]!; i += 1) {
      const digits = take(isFlag(letter, i) ? FLAG : NUMBER);
      if (digits === null) {
        if (i === 0) return null;
        throw new Error(`path data stops short after "${letter} ${numbers.join(" ")}"`);
      }
      if (Math.abs(Number(digits)) > 1e9)
        throw new Error(`path data can not hold a figure as large as ${digits.slice(0, 12)}`);
      numbers.push(Number(digits));
    }
    return numbers;
  };
  for (take(SPACE); at < text.length; take(SPACE)) {
    const letter = text[at]!;
    const capital = letter.toUpperCase();
    if (!(capital in SIZES)) throw new Error(`path data can not hold "${text.slice(at, at + 12)}"`);
    if (commands.length === 0 && capital !== "M") throw new Error('path data must begin with "M"');
    at += 1;
    const groups: number[][] = [];
    if (capital !== "Z") {
      for (let next = group(capital); next; next = group(capital)) groups.push(next);
      if (groups.length === 0) throw new Error(`path data has no numbers after "${letter}"`);
    }
    commands.push({ letter, groups });
  }
  return commands;
}
