/** An order of formulas in which each comes after those that it rests on. */

export interface Order {
  readonly order: readonly number[];
  /** By formula, the number of the circle it is part of; formulas that are part of none are missing. */
  readonly circles: ReadonlyMap<number, number>;
}

/**
 * Puts formulas, numbers below `size`, in order, and finds the circles among them, with Tarjan's algorithm for
 * strongly connected components. `restsOf` lists the formulas that a formula names.
 */
export function orderOf(
  formulas: readonly number[],
  size: number,
  restsOf: (formula: number) => readonly number[],
): Order {
  const order: number[] = [];
  const circles = new Map<number, number>();
  const found = new Int32Array(size);
  const lowest = new Int32Array(size);
  const isOpen = new Uint8Array(size);
  const open: number[] = [];
  const stack: { readonly formula: number; readonly rests: readonly number[]; next: number }[] = [];
  let count = 0;
  const enter = (formula: number): void => {
    count += 1;
    found[formula] = count;
    lowest[formula] = count;
    isOpen[formula] = 1;
    open.push(formula);
    stack.push({ formula, rests: restsOf(formula), next: 0 });
  };
  const leave = (formula: number, rests: readonly number[]): void => {
    const below = stack.at(-1)?.formula;
    if (below !== undefined) lowest[below] = Math.min(lowest[below]!, lowest[formula]!);
    if (lowest[formula] !== found[formula]) return;
    const circle = open.splice(open.lastIndexOf(formula));
    for (const one of circle) {
      isOpen[one] = 0;
      order.push(one);
      if (circle.length > 1 || rests.includes(formula)) circles.set(one, formula);
    }
  };
  for (const first of formulas) {
    if (found[first] === 0) enter(first);
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      const { formula, rests } = top;
      const rest = rests[top.next];
      top.next += 1;
      if (rest === undefined) {
        stack.pop();
        leave(formula, rests);
      } else if (found[rest] === 0) enter(rest);
      else if (isOpen[rest]) lowest[formula] = Math.min(lowest[formula]!, found[rest]!);
    }
  }
  return { order, circles };
}
