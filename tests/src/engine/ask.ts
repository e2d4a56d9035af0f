/** Asking a small book by the names of its cells, and the slow way round: a new engine for every setting. */
import type { Unit } from "../../../functions/units.ts";
import type { Place } from "../../../src/book/address.ts";
import { type } from "../../../src/book/edit.ts";
import { lookUp } from "../../../src/book/names.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { QuestionEngine } from "../../../src/engine/question-engine.ts";
import { type Solution, solve } from "../../../src/engine/solve.ts";
import { finish, type Watched, watchAt } from "../../../src/engine/sweep.ts";
import type { OpenSpan, Target } from "../../../src/engine/target.ts";
import { isProblem, type Problem, type VariedCell, variedCellAt } from "../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../src/lay/desk.ts";

export function cell(book: Book, name: string): Place {
  const place = lookUp(book, name);
  if (!place) throw new Error(`no cell ${name}`);
  return place;
}

function sound<T extends object>(answer: T): Exclude<T, Problem> {
  if (isProblem(answer)) throw new Error(answer.problem);
  return answer as Exclude<T, Problem>;
}

export const variedCell = (book: Book, name: string): VariedCell =>
  sound(variedCellAt(book, cell(book, name)));

/** One engine for each unit, following each book in turn: building one takes far longer than calculating a small book. */
const engines = new Map<Unit, Engine>();

export function watch(book: Book, name: string): Watched {
  const engine = engines.get(book.unit) ?? new Engine(book, layDesk);
  engines.set(book.unit, engine);
  engine.become(book);
  return sound(watchAt(engine, cell(book, name)));
}

export const questionEngineOf = (
  book: Book,
  varied: readonly string[],
  watched: readonly string[],
): QuestionEngine =>
  new QuestionEngine(
    book,
    layDesk,
    varied.map((name) => variedCell(book, name)),
    watched.map((name) => cell(book, name)),
  );

/** The value of a cell when others are typed so, by calculating the whole book from nothing. */
export function afresh(book: Book, typed: Readonly<Record<string, number>>, name: string): unknown {
  const typings = Object.entries(typed).map(([one, figure]) => ({
    ...cell(book, one),
    typed: String(figure),
  }));
  const engine = new Engine(type(book, typings), layDesk);
  const { value, problem } = engine.view(cell(book, name));
  engine.destroy();
  return problem?.is === "error" ? problem.sentence : value;
}

/** Solves; a problem comes back as its sentence. */
export function solved(
  book: Book,
  varied: readonly string[],
  make: string,
  aim: Target,
  spans: readonly OpenSpan[],
  least = false,
): Solution | string {
  const answer = finish(
    solve(questionEngineOf(book, varied, [make]), { spans, make: watch(book, make), aim, least }),
  );
  return isProblem(answer) ? answer.problem : answer;
}
