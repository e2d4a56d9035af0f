/** Builds a HyperFormula although some cells or names make it throw: those are left out and reported. */
import type { HyperFormula } from "hyperformula";

/** The most builds that are tried to find what is to be left out. */
const MOST_BUILDS = 400;

/**
 * `make` builds without the things given. Where it throws, the search looks for the fewest things that
 * must be left out; when it can't find them, all are left out. Throws only when `make` fails even then.
 */
export function buildWithout<T>(
  listed: () => readonly T[],
  make: (without: ReadonlySet<T>) => HyperFormula,
): { readonly hf: HyperFormula; readonly without: ReadonlySet<T> } {
  const without = new Set<T>();
  let builds = 0;
  const attempt = (leave: ReadonlySet<T>): HyperFormula | null => {
    builds += 1;
    try {
      return make(leave);
    } catch {
      return null;
    }
  };
  const works = (leave: ReadonlySet<T>): boolean => {
    const hf = attempt(leave);
    hf?.destroy();
    return hf !== null;
  };
  const whole = attempt(without);
  if (whole) return { hf: whole, without };
  const things = listed();

  /** Finds the things of a list that throw by themselves, by halving the list. */
  const search = (list: readonly T[]): void => {
    if (list.length === 0) return;
    const only = new Set(list);
    if (builds < MOST_BUILDS && works(new Set(things.filter((one) => !only.has(one))))) return;
    if (list.length === 1 || builds >= MOST_BUILDS) {
      for (const one of list) without.add(one);
      return;
    }
    const half = list.length >> 1;
    search(list.slice(0, half));
    search(list.slice(half));
  };
  search(things);

  // Things that throw only together with others: of the shortest beginning of the list that throws, the last thing is left out.
  for (let hf = attempt(without); builds < MOST_BUILDS; hf = attempt(without)) {
    if (hf) return { hf, without };
    const rest = things.filter((one) => !without.has(one));
    let [fine, throws] = [0, rest.length];
    while (throws - fine > 1) {
      const middle = (fine + throws) >> 1;
      if (works(new Set([...without, ...rest.slice(middle)]))) fine = middle;
      else throws = middle;
    }
    if (rest.length === 0) break;
    without.add(rest[throws - 1]!);
  }
  return { hf: make(new Set(things)), without: new Set(things) };
}
