/**
 * A solution over laid cloth, corrected: quick lays say where the answer is, then the lays at the
 * answer and near it are searched for, all equally long, and the answer is chosen among these.
 */
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import type { EqualLays } from "./equal-lays.ts";
import { leastSearchedOf, uncertaintyOf } from "./laid.ts";
import { numberOf, QuestionEngine } from "./question-engine.ts";
import { ahead, conclude, type Solution, settingsFor } from "./solve.ts";
import { type Row, sweep } from "./sweep.ts";
import { missOf, type SolveRequest } from "./target.ts";
import { isProblem, type VariedCell } from "./varied-cell.ts";

/** Besides the answer and its neighbours, the most settings that a search may yet bring to do it. */
const MOST_HOPEFUL = 12;
/** The most settings in all, however often the answer moves. */
const MOST_NEAR = 60;

interface Solving {
  readonly book: Book;
  readonly varied: readonly VariedCell[];
  readonly request: SolveRequest;
}

type Setting = readonly number[];

const keyOf = (figures: Setting): string => figures.join(" ");

/** The solution after each round of searches; undefined where there is nothing to tell yet. */
export function* refinedSolutions(
  { book, varied, request }: Solving,
  first: Solution,
  lays: EqualLays,
  rounds: readonly number[],
): Generator<Solution | undefined, void> {
  const parts = settingsFor(book, varied, request);
  if (isProblem(parts)) return;
  const settings = parts.flat();
  const answered = first.found ?? first.nearest;
  const near = new Map<string, Setting>();
  const add = (list: readonly Setting[]): void => {
    for (const figures of list) near.set(keyOf(figures), figures);
  };
  add([answered.figures, ...neighboursOf(settings, answered.figures), ...hopeful(first, answered, request)]);

  /** Reads the settings near the answer with the lays of a desk, and makes something of the rows. */
  const read = function* <T>(desk: EqualLays["desk"], make: (engine: QuestionEngine, rows: Row[]) => T) {
    const engine = new QuestionEngine(book, desk, varied, [request.make.place]);
    try {
      const rows: Row[] = [];
      for (const row of sweep(engine, [...near.values()].toSorted(ahead))) {
        rows.push(row);
        yield undefined;
      }
      return make(engine, rows);
    } finally {
      engine.destroy();
    }
  };

  for (const seconds of rounds) {
    for (;;) {
      yield* read(lays.enlist, () => null);
      yield* lays.round(seconds);
      const solution = yield* read(lays.desk, (engine, rows) => {
        const searched = new Set(rows);
        const others = first.rows.filter(({ figures }) => !near.has(keyOf(figures)));
        const all = [...others, ...rows].toSorted((a, b) => ahead(a.figures, b.figures));
        const solved = conclude(engine, request, all, leastSearchedOf(lays.lays), (row) => searched.has(row));
        // The plot shows lays of one effort only.
        return isProblem(solved) ? { ...first, found: null, sentence: solved.problem } : { ...solved, rows };
      });
      const { figures } = solution.found ?? solution.nearest;
      const beside = neighboursOf(settings, figures).filter((one) => !near.has(keyOf(one)));
      if (beside.length === 0) {
        yield solution;
        break;
      }
      if (near.size >= MOST_NEAR) {
        const only = phrase`only the ${near.size} steps nearest to it were searched`;
        yield { ...solution, sureness: [solution.sureness, only].filter(Boolean).join("; ") };
        break;
      }
      add(beside);
    }
  }
}

/** The settings beside one in the list: a step of one varied cell up or down. */
function neighboursOf(settings: readonly Setting[], figures: Setting): Setting[] {
  return figures.flatMap((figure, i) => {
    const line = settings.filter((one) => one.every((other, k) => k === i || other === figures[k]));
    const at = line.findIndex((one) => one[i] === figure);
    return [line[at - 1], line[at + 1]].filter((one) => one !== undefined);
  });
}

/** The settings that miss the aim by less than a longer search may change, those that miss least. */
function hopeful({ rows }: Solution, answer: Row, { aim }: SolveRequest): Setting[] {
  const share = uncertaintyOf({ by: "quick" });
  const best = missOf(answer, aim) ?? 0;
  const missing = rows.flatMap((row) => {
    const miss = missOf(row, aim);
    const made = Math.abs(numberOf(row.readings[0]) ?? 0);
    if (miss === null || ("value" in aim && miss === 0)) return [];
    const over = "value" in aim ? miss : miss - best;
    return over <= share * made ? [{ figures: row.figures, over }] : [];
  });
  return missing
    .toSorted((a, b) => a.over - b.over)
    .slice(0, MOST_HOPEFUL)
    .map(({ figures }) => figures);
}
