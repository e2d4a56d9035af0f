/** The parts inside of HyperFormula that the engine uses and HyperFormula does not document. */

export interface CellAddress {
  readonly sheet: number;
  readonly row: number;
  readonly col: number;
}

export interface State {
  readonly formulaAddress: CellAddress;
  readonly formulaVertex?: never;
}

export interface Ast {
  readonly type: string;
  readonly procedureName?: string;
  readonly args?: readonly Ast[];
  /** The first cell, column or row of a range; on the sheet of the formula it has no sheet. */
  readonly start?: { readonly sheet?: number };
}

export interface Parsed {
  readonly ast: unknown;
  readonly errors: readonly unknown[];
  readonly dependencies: readonly unknown[];
  readonly hasVolatileFunction: boolean;
  readonly hasStructuralChangeFunction: boolean;
}

/** The parts of HyperFormula's interpreter that the guards use. */
export interface Inside {
  evaluateAst(ast: Ast, state: State): unknown;
  readonly arraySizePredictor: { checkArraySize(ast: unknown, at: unknown): unknown };
  readonly arithmeticHelper: {
    eq(left: unknown, right: unknown): boolean;
    lt(left: unknown, right: unknown): boolean;
    gt(left: unknown, right: unknown): boolean;
    normalizeString(text: string): string;
    eqMatcherFunction(pattern: string): (value: unknown) => boolean;
    neqMatcherFunction(pattern: string): (value: unknown) => boolean;
    searchString(pattern: string, text: string): number;
  };
  readonly serialization: { readonly exporter: { cellValueRounding(value: number): number } };
  readonly functionRegistry: { readonly functions: ReadonlyMap<string, readonly [string, PluginInside]> };
  readonly dependencyGraph: {
    clearDirtyVertices(): void;
    getCell(at: CellAddress): object | undefined;
    readonly graph: GraphInside;
    readonly rangeMapping: { findSmallerRange(range: RangeInside): unknown };
    readonly lazilyTransformingAstService: {
      readonly parser: { parse(text: string, at: CellAddress): Parsed };
    };
  };
}

/** Which cells and ranges rest on which: by the number of each, the numbers of its dependents. */
export interface GraphInside {
  addEdge(from: unknown, to: unknown): void;
  getNodeIdIfNotNumber(node: unknown): number | undefined;
  readonly edgesSparseArray: readonly number[][];
}

export interface RangeInside {
  width(): number;
  height(): number;
  addresses(graph: Inside["dependencyGraph"]): CellAddress[];
}

export interface PluginInside {
  calculateSingleCellOfResultArray(...args: unknown[]): unknown;
}

/** A key for maps and sets of HyperFormula's cell addresses. */
export const addressKey = ({ sheet, row, col }: CellAddress): string => `${sheet}.${row}.${col}`;
