/** Numbers written for people: rounded to significant digits, without zeros at the end. */

/** The number nearest to `value` that has at most `digits` significant digits. */
export const toDigits = (value: number, digits: number): number => Number(value.toPrecision(digits));

/** A number as text with at most `digits` significant digits: 1/3 is "0.333333", 2.50 is "2.5". */
export const numberText = (value: number, digits = 6): string => String(toDigits(value, digits));
