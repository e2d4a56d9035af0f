/**
 * What is used of the library dxf, which brings no types. It is CommonJS: its default export is the function
 * in some loaders, and in others the module, which has the function as its default.
 */

declare module "dxf/lib/parseString.js" {
  /** The sections of a DXF file; throws on groups that are not in pairs. */
  type Parse = (text: string) => {
    readonly header: { readonly insUnits?: number };
    readonly blocks: readonly unknown[];
    readonly entities: readonly unknown[];
  };
  const parse: Parse | { readonly default: Parse };
  export default parse;
}

declare module "dxf/lib/util/toPiecewiseBezier.js" {
  interface Point {
    readonly x: number;
    readonly y: number;
  }
  /** Knots of a spline of this order put in until every span is a Bézier curve; throws when the knots are not pinned. */
  type Pieces = (
    order: number,
    points: readonly Point[],
    knots: readonly number[],
  ) => { readonly controlPoints: readonly Point[] };
  const pieces: Pieces | { readonly default: Pieces };
  export default pieces;
}

declare module "dxf/lib/util/logger.js" {
  interface Logger {
    error: (...said: unknown[]) => void;
  }
  const logger: Logger | { readonly default: Logger };
  export default logger;
}
