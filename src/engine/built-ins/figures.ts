/** Built-in functions of single figures: rounding, roots, remainders and angles. */
import type { BuiltIn } from "./built-in.ts";

const PLACES = "how many decimal places; 0 for whole numbers, −1 for tens; 0 when left out";

export const FIGURES: readonly BuiltIn[] = [
  {
    name: "ROUND",
    summary: "Rounds a figure to the nearest whole number or decimal place.",
    words: "nearest whole decimal places off",
    takes: { figure: "the figure", "[places]": PLACES },
    examples: [
      {
        formula: "=ROUND(waist / 3; 1)",
        gives: "9 1/4",
        because: "28 / 3 is 9.333…, 9.3 to one decimal place, shown to the nearest 1/8",
      },
      { formula: "=ROUND(7 / 3; 0)", gives: "2", because: "2.333… is nearest to 2" },
    ],
    cautions: "for marks of the tape, such as 1/8 in, use ROUND_TAPE.",
  },
  {
    name: "ROUNDUP",
    summary: "Rounds a figure up to the next whole number or decimal place, away from 0.",
    words: "round up next whole more always up ceiling",
    takes: { figure: "the figure", "[places]": PLACES },
    examples: [{ formula: "=ROUNDUP(7 / 3; 0)", gives: "3", because: "2.333… panels are 3 whole ones" }],
  },
  {
    name: "ROUNDDOWN",
    summary: "Rounds a figure down to the next whole number or decimal place, towards 0.",
    words: "round down less always down floor cut off",
    takes: { figure: "the figure", "[places]": PLACES },
    examples: [{ formula: "=ROUNDDOWN(8 / 3; 0)", gives: "2", because: "2.666… without its decimals" }],
  },
  {
    name: "CEILING",
    summary: "Rounds a figure up to the next multiple of a step, such as the next quarter yard.",
    words: "round up to a multiple step quarter next",
    takes: { figure: "the figure", step: "the step" },
    examples: [{ formula: "=CEILING(116 3/4; 9)", gives: "117", because: "13 quarter yards of 9 in" }],
  },
  {
    name: "FLOOR",
    summary: "Rounds a figure down to a multiple of a step.",
    words: "round down to a multiple step",
    takes: { figure: "the figure", step: "the step" },
    examples: [{ formula: "=FLOOR(116 3/4; 9)", gives: "108", because: "12 quarter yards of 9 in" }],
  },
  {
    name: "MROUND",
    summary: "Rounds a figure to the nearest multiple of a step.",
    words: "round to the nearest step multiple half quarter",
    takes: { figure: "the figure", step: "the step" },
    examples: [{ formula: "=MROUND(waist / 3; 1/2)", gives: "9 1/2", because: "9.333… is nearest to 9 1/2" }],
  },
  {
    name: "INT",
    summary: "The whole part of a figure: the next whole number below it.",
    words: "whole number part without fraction",
    takes: { figure: "the figure" },
    examples: [{ formula: "=INT(116 3/4 / 36)", gives: "3", because: "three whole yards" }],
  },
  {
    name: "MOD",
    summary: "What remains of a figure after it is divided into whole parts.",
    words: "remainder left over rest after division",
    takes: { figure: "the figure", divisor: "how large each part is" },
    examples: [{ formula: "=MOD(38; 6)", gives: "2", because: "6 goes 6 times into 38, and 2 remain" }],
  },
  {
    name: "ABS",
    summary: "A figure without its minus sign: how far apart two figures are.",
    words: "absolute difference without sign positive how far apart",
    takes: { figure: "the figure" },
    examples: [{ formula: "=ABS(waist - hip)", gives: "12", because: "28 − 40 is −12" }],
  },
  {
    name: "SQRT",
    summary: "The square root of a figure: the side of a square of that area.",
    words: "square root diagonal side of a square",
    takes: { figure: "the figure, 0 or more" },
    examples: [{ formula: "=SQRT(144)", gives: "12", because: "12 × 12 is 144" }],
  },
  {
    name: "PI",
    summary: "The number 3.14159…: a circle's way round divided by its breadth.",
    words: "circle circumference radius diameter round 3.14 3.1416",
    takes: {},
    examples: [
      {
        formula: "=waist / (2 * PI())",
        gives: "4 1/2",
        because: "the radius of a circle of 28 in is 4.456… in",
      },
    ],
  },
  {
    name: "RADIANS",
    summary: "Turns an angle in degrees into radians, which SIN, COS and TAN take.",
    words: "degrees angle convert sine cosine tangent trigonometry",
    takes: { degrees: "the angle in degrees" },
    examples: [{ formula: "=10 * SIN(RADIANS(30))", gives: "5", because: "the sine of 30° is a half" }],
  },
];
