/**
 * The fabric width conversion chart of the American cooperative extension services: yards needed
 * for one and the same garment on cloths of eight widths, a garment a row. The cells agree in
 * several copies of the leaflet.
 */

/** Widths in inches, from and to. */
export const CHART_WIDTHS: readonly (readonly [from: number, to: number])[] = [
  [35, 36],
  [39, 39],
  [41, 41],
  [44, 45],
  [50, 50],
  [52, 54],
  [58, 60],
  [66, 66],
];

/** Yards, in the order of the widths. */
export const CHART_YARDS: readonly (readonly number[])[] = [
  [1.75, 1.5, 1.5, 1.375, 1.25, 1.125, 1, 0.875],
  [2, 1.75, 1.75, 1.625, 1.5, 1.375, 1.25, 1.125],
  [2.25, 2, 2, 1.75, 1.625, 1.5, 1.375, 1.25],
  [2.5, 2.25, 2.25, 2.125, 1.75, 1.75, 1.625, 1.5],
  [2.875, 2.5, 2.5, 2.25, 2, 1.875, 1.75, 1.625],
  [3.125, 2.75, 2.75, 2.5, 2.25, 2, 1.875, 1.75],
  [3.375, 3, 2.875, 2.75, 2.375, 2.25, 2, 1.875],
  [3.75, 3.25, 3.125, 2.875, 2.625, 2.375, 2.25, 2.125],
  [4.25, 3.5, 3.375, 3.125, 2.75, 2.625, 2.375, 2.25],
  [4.5, 3.75, 3.625, 3.375, 3, 2.75, 2.625, 2.5],
  [4.75, 4, 3.875, 3.625, 3.25, 2.875, 2.75, 2.625],
  [5, 4.25, 4.125, 3.875, 3.375, 3.125, 2.875, 2.75],
];
