/**
 * Whole counts out of divisions that are not exact: a figure within 5 billionths of a whole number
 * is that number. A spreadsheet writes this as ROUNDUP(ROUND(x; 8); 0) and INT(ROUND(x; 8)).
 */
const near = (value: number): number => Number(value.toFixed(8));

export const roundUpToWhole = (value: number): number => Math.ceil(near(value)) + 0;

export const roundDownToWhole = (value: number): number => Math.floor(near(value)) + 0;
