/**
 * Comparisons of a figure with a limit that was worked out. A conversion of units or a sum may have moved either by
 * rounding: such figures count as equal, so that a call is refused in inches exactly when it is refused in centimetres.
 */

/** By how much rounding may move a figure, as a share of the largest figure that it was worked out from. */
const ROUNDING = 1e-9;

/** Whether a figure is below a limit. A small difference of large figures is rounded like these: name them in `of`. */
export const isBelow = (figure: number, limit: number, ...of: readonly number[]): boolean =>
  figure < limit - ROUNDING * Math.max(...[figure, limit, ...of].map(Math.abs));

/** Whether a figure is above a limit. */
export const isAbove = (figure: number, limit: number, ...of: readonly number[]): boolean =>
  isBelow(limit, figure, ...of);
