/** Which problems have one cause. */
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import type { PointedAt } from "./pointed.ts";
import { areasOf, isSingle } from "./references.ts";

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
  /** The cells that are blank, hold a text or are doubted by themselves. */
  const wrong = new Set<string>();
  const held = new Set<string>();
  for (const problem of problems) {
    const { place, is, at } = problem;
    if (is === "blank" || is === "text" || (is === "unusual" && at.length === 0)) wrong.add(placeKey(place));
    else if (is === "unusual") doubtful.set(placeKey(place), problem);
    if (isAbout(problem) && at.length === 1) held.add(placeKey(at[0]!));
  }
  for (const key of wrong) held.add(key);
  /** What verdicts say of one cell and of no other. */
  const alone = new Set(
    problems.flatMap(({ is, place }) => {
      const all = is === "verdict" ? pointed(place) : [];
      return all.length === 1 ? [sayingKey(all[0]!)] : [];
    }),
  );
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
    const only = at.length === 1 ? placeKey(at[0]!) : null;
    if (is === "verdict" && only !== null && wrong.has(only)) return `held ${only}`;
    // A verdict about one measurement may say that another is to be taken again: all such verdicts have one cause.
    const all = pointed(place);
    // What is said of several cells may be said of one of them by another verdict, which tells which it is.
    const shared =
      is === "verdict" && all.length > 1 ? all.map(sayingKey).find((key) => alone.has(key)) : undefined;
    if (shared !== undefined) return shared;
    const said = all.map((one) => one.sentence);
    const saying = is === "verdict" && said.length === 1 ? said[0]! : withoutFunction(sentence, is);
    return said.length === 1 && at.length === 1 && is === "verdict"
      ? sayingKey(all[0]!)
      : `${saying} ${at.map(placeKey).join(" ")}`;
  };
  return (problem) => keyOf(problem, new Set([placeKey(problem.place)]));
}

const sayingKey = ({ at, sentence }: PointedAt<Place>): string => `${sentence} ${placeKey(at)}`;

/** What is unusual in an answer, without the name of the function that says it. */
const withoutFunction = (sentence: string, is: Problem["is"]): string =>
  is === "unusual" ? sentence.replace(/^[A-Z_]+: /, "") : sentence;

type Pointed = (place: Place) => readonly PointedAt<Place>[];

/**
 * Of problems with one cause, the one that is listed for all of them. A verdict may say of a cell what stops or is doubted in
 * other formulas: it is their cause, and is listed wherever it stands, before all the one in the row of the cell that it is about.
 * A doubt may be meant and then hides no error: the error is listed.
 * A figure that a function refuses, or that a verdict says no body has, is the cause of whatever is said of formulas that rest on it.
 */
export function causes<P extends Problem>(book: Book, inOrder: readonly P[], pointed: Pointed): Causes<P> {
  const verdicts = verdictsOf(pointed, inOrder);
  const verdictFor = ({ place, is, sentence, at }: P): Problem | undefined => {
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
  const byItself = (check: P): string => saidBy.get(causeOf(check)) ?? causeOf(check);
  const refused = refusedFigures(book, inOrder, byItself);
  /** By the keys of the formulas that take a figure of which a verdict says that no body has it, the cause of that. */
  const impossible = new Map<string, string>();
  for (const check of inOrder)
    if (check.is === "unusual" && verdictFor(check)) impossible.set(placeKey(check.place), byItself(check));
  const behindOf = ({ place, at, stopped }: P): string | null => {
    if (stopped) return null;
    const cause = impossible.size > 0 ? causeBehind(book, place, impossible) : null;
    // A figure that is refused by itself has no other cause.
    const isOwn = refused.size === 0 || at.some((one) => refused.has(placeKey(one)));
    return cause ?? (isOwn ? null : causeBehind(book, place, refused));
  };
  const found = inOrder.map((check) => {
    const behind = behindOf(check);
    return { check, cause: behind ?? byItself(check), rank: behind === null ? rankOf(check) : RESTS };
  });
  const firsts = new Map<string, (typeof found)[number]>();
  for (const one of found) {
    const first = firsts.get(one.cause);
    if (!first || one.rank < first.rank) firsts.set(one.cause, one);
  }
  const listed = new Map(found.map(({ check, cause }) => [check, firsts.get(cause)!.check]));
  const firstOf = (problem: P) => listed.get(problem)!;
  const isTyped = ({ page, row, column }: Place) => !isFormula(typedAt(book, page, row, column));
  const atOf = (first: P): readonly Place[] => {
    if (first.is !== "error" || first.at.some(isTyped)) return first.at;
    const doubted = inOrder.filter((one) => one.is === "unusual" && firstOf(one) === first);
    const all = [...first.at, ...doubted.flatMap(({ at }) => at)];
    return [...new Map(all.map((place) => [placeKey(place), place])).values()];
  };
  return { firstOf, atOf };
}

interface Causes<P> {
  /** Of the problems with the same cause as this one, the one that is listed. */
  readonly firstOf: (problem: P) => P;
  /** Where a listed problem leads. What is doubtful behind an error about worked-out cells may be its cause: the error leads there too. */
  readonly atOf: (problem: P) => readonly Place[];
}

/** Which of the problems with one cause is listed: the one of the lowest rank, and of several the first. */
const rankOf = ({ is, place, at }: Problem): number => {
  if (is === "error") return 2;
  if (is !== "verdict") return 3;
  return at.some(({ page, row }) => page === place.page && row === place.row) ? 0 : 1;
};
const RESTS = 4;

/** By the key of each typed figure that a formula refuses, the cause of that problem. */
function refusedFigures<P extends Problem>(
  book: Book,
  problems: readonly P[],
  causeOf: (problem: P) => string,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const problem of problems) {
    const { is, at, stopped } = problem;
    const [one] = at;
    if (is !== "error" || stopped || !one || at.length > 1 || found.has(placeKey(one))) continue;
    if (!isFormula(typedAt(book, one.page, one.row, one.column))) found.set(placeKey(one), causeOf(problem));
  }
  return found;
}

/** The most cells that are looked at for one problem. */
const MOST_CELLS = 200;

/** The first of these causes in the cells behind a formula, followed through single cells; null for none. */
function causeBehind(book: Book, place: Place, causes: ReadonlyMap<string, string>): string | null {
  const seen = new Set<string>();
  const waiting = [place];
  for (let next = waiting.pop(); next && seen.size < MOST_CELLS; next = waiting.pop()) {
    const key = placeKey(next);
    if (seen.has(key)) continue;
    seen.add(key);
    const cause = causes.get(key);
    if (cause !== undefined) return cause;
    const typed = typedAt(book, next.page, next.row, next.column);
    if (isFormula(typed))
      for (const area of areasOf(book, formulaTree(typed), next.page))
        if (isSingle(area)) waiting.push({ page: area.page, row: area.top, column: area.left });
  }
  return null;
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
