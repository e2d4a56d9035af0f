/** A place in the plane: x across the grain, y along it, in whatever unit the caller uses. */
export type Point = readonly [x: number, y: number];
