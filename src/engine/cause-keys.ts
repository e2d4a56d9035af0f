/** Which problems have one cause. */
import { type Place, placeKey } from "../book/address.ts";
import type { PointedAt } from "./pointed.ts";

/** A problem as far as its cause is concerned. */
interface Problem {
  readonly place: Place;
  readonly is: "error" | "verdict" | "unusual" | "unchosen" | "blank" | "text";
  readonly sentence: string;
  readonly stopped: boolean;
  readonly at: readonly Place[];
}

/**
 * The same key for problems of one cause. A cell that is blank, holds a text, or is refused or doubted by itself is the
 * cause of every error and doubt that is about it; of a formula with a doubtful answer the cause is that of its own doubt. Errors,
 * doubts and verdicts that say the same about the same cells have one cause too. Every other problem has its own key.
 * `pointed` lists what a formula says about cells.
 */
export function causeKeys(
  problems: readonly Problem[],
  pointed: (place: Place) => readonly PointedAt<Place>[],
): (problem: Problem) => string {
  const isAbout = ({ is, stopped, at }: Problem) =>
    (is === "error" || is === "unusual") && !stopped && at.length > 0;
  const doubtful = new Map<string, Problem>();
  const held = new Set<string>();
  for (const problem of problems) {
    const { place, is, at } = problem;
    if (is === "blank" || is === "text") held.add(placeKey(place));
    else if (is === "unusual" && at.length === 0) held.add(placeKey(place));
    else if (is === "unusual") doubtful.set(placeKey(place), problem);
    if (isAbout(problem) && at.length === 1) held.add(placeKey(at[0]!));
  }
  const keyOf = (problem: Problem, above: ReadonlySet<string>): string => {
    const { place, is, sentence, at, stopped } = problem;
    if (stopped) return placeKey(place);
    if (is === "blank" || is === "text" || (is === "unusual" && at.length === 0))
      return `held ${placeKey(place)}`;
    if (at.length === 0) return placeKey(place);
    if (isAbout(problem)) {
      const own = at.map(placeKey);
      const behind = own.find((key) => doubtful.has(key) && !above.has(key));
      if (behind !== undefined)
        return keyOf(doubtful.get(behind)!, new Set([...above, placeKey(place), behind]));
      const cause = own.find((key) => held.has(key));
      if (cause !== undefined) return `held ${cause}`;
      if (own.length === 1) return `held ${own[0]!}`;
    }
    // A verdict about one measurement may say that another is to be taken again: all such verdicts have one cause.
    const said = pointed(place).map((one) => one.sentence);
    const saying = is === "verdict" && said.length === 1 ? said[0]! : withoutFunction(sentence, is);
    return `${saying} ${at.map(placeKey).join(" ")}`;
  };
  return (problem) => keyOf(problem, new Set([placeKey(problem.place)]));
}

/** What is unusual in an answer, without the name of the function that says it. */
const withoutFunction = (sentence: string, is: Problem["is"]): string =>
  is === "unusual" ? sentence.replace(/^[A-Z_]+: /, "") : sentence;

type Pointed = (place: Place) => readonly PointedAt<Place>[];

/** The same, where a verdict may say of a cell what stops or is doubted in other formulas: it is their cause, for it may say more. */
export function causes(inOrder: readonly Problem[], pointed: Pointed): (problem: Problem) => string {
  const verdicts = verdictsOf(pointed, inOrder);
  const verdictFor = ({ place, is, sentence, at }: Problem): Problem | undefined => {
    if (at.length !== 1 || (is !== "error" && is !== "unusual")) return undefined;
    if (is === "error") return verdicts.get(saidKey(sentence, at[0]!));
    // What is unusual in an answer begins with the name of the function that says it.
    const said = pointed(place)[0]?.sentence;
    const verdict = said === undefined ? undefined : verdicts.get(saidKey(said, at[0]!));
    return verdict?.sentence.includes(said!) ? verdict : undefined;
  };
  const causeOf = causeKeys(inOrder, pointed);
  /** The causes that a verdict says, by the keys that other problems have from them. */
  const saidBy = new Map<string, string>();
  for (const check of inOrder) {
    const verdict = verdictFor(check);
    if (verdict) saidBy.set(causeOf(check), causeOf(verdict));
  }
  const keyOf = (check: Problem): string => {
    const own = causeOf(check);
    return saidBy.get(own) ?? own;
  };
  return keyOf;
}

const saidKey = (sentence: string, at: Place): string => `${sentence} ${placeKey(at)}`;

/** The verdicts that say something about a cell of a list, by what the first of them says about which cell. */
function verdictsOf(pointed: Pointed, all: readonly Problem[]): ReadonlyMap<string, Problem> {
  const found = new Map<string, Problem>();
  for (const check of all) {
    if (check.is !== "verdict" || check.at.length === 0) continue;
    for (const { at, sentence } of pointed(check.place)) {
      const key = saidKey(sentence, at);
      if (!found.has(key)) found.set(key, check);
    }
  }
  return found;
}
