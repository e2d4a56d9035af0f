/** Whole columns and rows cost HyperFormula what is in them. */
import type { Inside, RangeInside } from "./inside.ts";

/**
 * Whole columns or rows as HyperFormula links them to their cells: to those that hold something. It would make a
 * vertex of each blank cell. A cell that is filled later is linked when it is filled.
 */
export const filledOf = (range: RangeInside): RangeInside =>
  Object.create(range, {
    addresses: {
      value: (graph: Inside["dependencyGraph"]) =>
        range.addresses(graph).filter((at) => graph.getCell(at) !== undefined),
    },
  });
