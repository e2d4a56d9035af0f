/** Solve for: which figure of a typed cell, or of two, brings another cell to where it should be. */
import { phrase } from "../../../functions/phrase.ts";
import type { Target } from "../../engine/target.ts";
import type { VariedCell } from "../../engine/varied-cell.ts";
import { Guard } from "../faults/Guard.tsx";
import type { Asking } from "./asking.ts";
import { Calculating } from "./Calculating.tsx";
import { Choose } from "./Choose.tsx";
import { keyOf } from "./choices.ts";
import { FigureField } from "./FigureField.tsx";
import { Heat } from "./Heat.tsx";
import { LaidNote } from "./LaidNote.tsx";
import { Plot } from "./Plot.tsx";
import type { Trying } from "./trying.ts";
import { type SolveState, useSolve } from "./useSolve.ts";

const AIMS: Record<Target["is"], string> = {
  atmost: phrase`at most`,
  atleast: phrase`at least`,
  equal: phrase`exactly`,
  lowest: phrase`the smallest possible`,
  highest: phrase`the largest possible`,
};

interface Part {
  readonly solve: SolveState;
}

export function Solve(asking: Asking) {
  const solve = useSolve(asking);
  const { book, make, choices, first, second } = solve;
  const key = (cell: VariedCell | null) => (cell ? keyOf(book, cell.place) : "");
  return (
    <form
      className="solve"
      onSubmit={(event) => {
        event.preventDefault();
        solve.ask();
      }}
    >
      <Goal solve={solve} />
      {make && (
        <Choose
          book={book}
          label={phrase`by changing`}
          of={choices}
          value={key(first)}
          none={phrase`choose a typed cell`}
          onChoose={solve.chooseFirst}
        />
      )}
      {first && <Ends cell={first} solve={solve} />}
      {first && (
        <Choose
          book={book}
          label={phrase`and`}
          of={choices.filter((one) => one !== first)}
          value={key(second)}
          none={phrase`no other`}
          onChoose={solve.chooseSecond}
        />
      )}
      {second && <Ends cell={second} solve={solve} />}
      <Find solve={solve} />
      <Found solve={solve} trying={asking.trying} />
      <Proof solve={solve} />
    </form>
  );
}

/** The cell to bring to a target, and the target. */
function Goal({ solve }: Part) {
  const { book, makes, make, aim, hasValue, value } = solve;
  const makeKey = make ? keyOf(book, make.place) : "";
  return (
    <div className="solve-row">
      <Choose
        book={book}
        label={phrase`Make`}
        of={makes}
        value={makeKey}
        none={phrase`choose a cell`}
        onChoose={solve.chooseMake}
      />
      <span className="choose">
        <label htmlFor="solve-aim">{phrase`be`}</label>
        <select
          id="solve-aim"
          value={aim}
          onChange={(event) => solve.setAim(event.target.value as Target["is"])}
        >
          {Object.entries(AIMS).map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
      </span>
      {hasValue && make && (
        <FigureField
          key={makeKey}
          book={book}
          label={phrase`Value`}
          kind={make.kind}
          value={value}
          open="…"
          onFigure={solve.setValue}
        />
      )}
    </div>
  );
}

/** The range and the step of a varied cell. */
function Ends({ cell, solve }: Part & { cell: VariedCell }) {
  const { book } = solve;
  const { kind } = cell;
  const span = solve.spanOf(cell);
  const end = (label: string, value: number | undefined, name: "from" | "to") => (
    <FigureField
      book={book}
      label={label}
      kind={kind}
      value={value}
      open={phrase`any`}
      onFigure={(figure) => solve.setSpan(cell, { ...span, [name]: figure })}
    />
  );
  return (
    <div className="slider-ends">
      {end(phrase`From`, span.from, "from")}
      {end(phrase`To`, span.to, "to")}
      <FigureField
        book={book}
        label={phrase`Step`}
        kind={kind === "days" ? "figure" : kind}
        value={span.step ?? cell.step}
        onFigure={(step) => solve.setSpan(cell, { ...span, step })}
      />
    </div>
  );
}

function Find({ solve }: Part) {
  return (
    <div className="acts">
      <span className="choose">
        <label htmlFor="solve-end">{phrase`Give`}</label>
        <select
          id="solve-end"
          value={solve.least ? "least" : "most"}
          onChange={(event) => solve.setLeast(event.target.value === "least")}
        >
          <option value="most">{phrase`the largest value that works`}</option>
          <option value="least">{phrase`the smallest value that works`}</option>
        </select>
      </span>
      <button type="submit" className="keep" disabled={!solve.canAsk}>{phrase`Find`}</button>
    </div>
  );
}

/** The solution in words, how sure it is, and the act that previews it. */
function Found({ solve, trying }: Part & { trying: Trying }) {
  const { answer, solution, answered } = solve;
  const preview = () => {
    const { figures } = solution!.found ?? solution!.nearest;
    trying.tryAll(answered.map((cell, i) => [cell, figures[i]!]));
  };
  return (
    <>
      <Calculating answer={answer} />
      <div role="status" aria-busy={answer.busy}>
        {answer.problem && <p className="look">{answer.problem}</p>}
        {solution && <p className={solution.found ? "found" : "look"}>{solution.sentence}</p>}
        {solution?.sureness && <p className="aside">{phrase`This answer: ${solution.sureness}.`}</p>}
        {solution && <LaidNote laid={answer.laid} refining={answer.refining} decimal={solve.book.decimal} />}
      </div>
      {solution && (
        <div className="acts">
          <button type="button" onClick={preview}>
            {solution.found ? phrase`Preview` : phrase`Preview the nearest`}
          </button>
        </div>
      )}
    </>
  );
}

/** The settings looked at, as a plot or a table. */
function Proof({ solve: { book, question, solution, answered } }: Part) {
  const [first] = answered;
  if (!solution || !question || !first || solution.rows.length < 2) return null;
  const { make, aim } = question;
  return (
    <div className="plots">
      <Guard name={phrase`The plot of ${make.label}`} of={solution}>
        {answered.length > 1 ? (
          <Heat book={book} varied={answered} watched={make} index={0} rows={solution.rows} />
        ) : (
          <Plot
            book={book}
            cell={first}
            watched={make}
            index={0}
            rows={solution.rows}
            thresholds={null}
            at={(solution.found ?? solution.nearest).figures[0]!}
            target={"value" in aim ? aim.value : null}
          />
        )}
      </Guard>
    </div>
  );
}
