/**
 * Cells that very many formulas rest on, such as an ease that a whole table adds. Before HyperFormula notes that a
 * formula rests on a cell, it looks through all formulas that do so already, which costs the square of their number.
 * Here the formulas of such a cell are also kept as a set.
 */
import type { GraphInside } from "./inside.ts";

/** Of fewer dependents a set is not worth its room. */
const MANY = 32;

/** Lets the graph of an instance that is being built add dependents at once. */
export function indexDependents(graph: GraphInside): void {
  const add = graph.addEdge.bind(graph);
  /** By the list of a cell's dependents: all that are in it, and perhaps some that were taken out of it. */
  const sets = new WeakMap<readonly number[], { readonly ids: Set<number>; count: number }>();
  graph.addEdge = (from, to) => {
    const fromId = graph.getNodeIdIfNotNumber(from);
    const id = graph.getNodeIdIfNotNumber(to);
    const dependents = fromId === undefined ? undefined : graph.edgesSparseArray[fromId];
    if (!dependents || id === undefined || dependents.length < MANY) return add(from, to);
    let known = sets.get(dependents);
    if (known?.count !== dependents.length) {
      known = { ids: new Set(dependents), count: dependents.length };
      sets.set(dependents, known);
    }
    // Whether one of the set is still in the list is left to HyperFormula.
    if (known.ids.has(id)) add(from, to);
    else dependents.push(id);
    known.ids.add(id);
    known.count = dependents.length;
  };
}
