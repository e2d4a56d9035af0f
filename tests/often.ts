/** How often a test repeats itself with other random figures. */

/** A fourth of what is wanted, so that a run of all tests stays short; WHOLE=1 repeats in full. */
export const often = (wanted: number): number => (process.env.WHOLE ? wanted : Math.ceil(wanted / 4));
