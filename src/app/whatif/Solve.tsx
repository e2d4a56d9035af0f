/** Solve for: which figure of a typed cell, or of two, brings another cell to where it should be. */
import { useMemo, useState } from "react";
import { Upstream } from "../../engine/references.ts";
import type { OpenSpan, Target } from "../../engine/target.ts";
import type { VariedCell } from "../../engine/varied-cell.ts";
import type { Question } from "../../worker/question.ts";
import { Choose } from "./Choose.tsx";
import { keyOf, usualSpan, variedChoices, watchChoices } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { FigureField } from "./FigureField.tsx";
import { Heat } from "./Heat.tsx";
import { LaidNote } from "./LaidNote.tsx";
import { Plot } from "./Plot.tsx";
import { useAnswer } from "./useAnswer.ts";
import type { Asking } from "./WhatIf.tsx";

const AIMS: Record<Target["is"], string> = {
  atmost: "at most",
  atleast: "at least",
  equal: "exactly",
  lowest: "the smallest possible",
  highest: "the largest possible",
};

export function Solve({ store, place, trying, client }: Asking) {
  const book = useEditedBook(store);
  const [makeKey, setMakeKey] = useState("");
  const [keys, setKeys] = useState(["", ""]);
  const [is, setIs] = useState<Target["is"]>("atmost");
  const [value, setValue] = useState<number | undefined>(undefined);
  const [spans, setSpans] = useState<Readonly<Record<string, OpenSpan>>>({});
  const [least, setLeast] = useState(false);
  const [asked, setAsked] = useState<Question | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the engine follows the book
  const makes = useMemo(
    () => watchChoices(store.engine, place).filter(({ kind }) => kind !== "verdict" && kind !== "flag"),
    [book, place],
  );
  const make = makes.find((one) => keyOf(book, one.place) === makeKey) ?? null;
  const variedUnder = useMemo(() => {
    const upstream = make && new Upstream(book, [make.place]);
    return upstream ? variedChoices(book, place).filter((cell) => upstream.has(cell.place)) : [];
  }, [book, place, make]);
  const byKey = (key: string) => variedUnder.find((one) => keyOf(book, one.place) === key);
  const first = byKey(keys[0]!) ?? null;
  const second = (first && keys[1] !== keys[0] && byKey(keys[1]!)) || null;
  const varied = [first, second].filter((one): one is VariedCell => one !== null);
  const both = varied.length > 1;
  const spanOf = (cell: VariedCell): OpenSpan =>
    spans[keyOf(book, cell.place)] ?? (both ? usualSpan(cell, 12) : {});
  const sided = is === "atmost" || is === "atleast" || is === "equal";
  const answer = useAnswer(client, asked);
  // An answer about another book is none.
  const question = answer.question?.is === "solve" && answer.question.book === book ? answer.question : null;
  const solution = question && answer.solution;
  const foundCells = question
    ? question.varied.flatMap(
        (at) => variedChoices(book, at).find((cell) => keyOf(book, cell.place) === keyOf(book, at)) ?? [],
      )
    : [];

  const ask = () => {
    if (!make || varied.length === 0 || (sided && value === undefined)) return;
    const aim: Target = sided ? { is, value: value! } : { is: is as "lowest" | "highest" };
    setAsked({
      is: "solve",
      book,
      varied: varied.map((cell) => cell.place),
      spans: varied.map(spanOf),
      make,
      aim,
      least,
    });
  };

  return (
    <form
      className="solve"
      onSubmit={(event) => {
        event.preventDefault();
        ask();
      }}
    >
      <div className="solve-row">
        <Choose
          book={book}
          label="Make"
          of={makes}
          value={make ? makeKey : ""}
          none="choose a cell"
          onChoose={setMakeKey}
        />
        <span className="choose">
          <label htmlFor="solve-aim">be</label>
          <select id="solve-aim" value={is} onChange={(event) => setIs(event.target.value as Target["is"])}>
            {Object.entries(AIMS).map(([one, words]) => (
              <option key={one} value={one}>
                {words}
              </option>
            ))}
          </select>
        </span>
        {sided && make && (
          <FigureField
            key={makeKey}
            book={book}
            label="Value"
            kind={make.kind}
            value={value}
            open="…"
            onFigure={setValue}
          />
        )}
      </div>
      {make && (
        <Choose
          book={book}
          label="by changing"
          of={variedUnder}
          value={first ? keys[0]! : ""}
          none="choose a typed cell"
          onChoose={(key) => setKeys([key, keys[1]!])}
        />
      )}
      {first && (
        <Ends
          book={book}
          cell={first}
          span={spanOf(first)}
          onSpan={(span) => setSpans({ ...spans, [keyOf(book, first.place)]: span })}
        />
      )}
      {first && (
        <Choose
          book={book}
          label="and"
          of={variedUnder.filter((one) => one !== first)}
          value={second ? keys[1]! : ""}
          none="no other"
          onChoose={(key) => setKeys([keys[0]!, key])}
        />
      )}
      {second && (
        <Ends
          book={book}
          cell={second}
          span={spanOf(second)}
          onSpan={(span) => setSpans({ ...spans, [keyOf(book, second.place)]: span })}
        />
      )}
      <div className="acts">
        <span className="choose">
          <label htmlFor="solve-end">Give</label>
          <select
            id="solve-end"
            value={least ? "least" : "most"}
            onChange={(event) => setLeast(event.target.value === "least")}
          >
            <option value="most">the largest value that works</option>
            <option value="least">the smallest value that works</option>
          </select>
        </span>
        <button
          type="submit"
          className="keep"
          disabled={!make || varied.length === 0 || (sided && value === undefined)}
        >
          Find
        </button>
      </div>
      <div role="status" aria-busy={answer.busy}>
        {answer.busy && <p className="aside">Calculating …</p>}
        {answer.problem && <p className="look">{answer.problem}</p>}
        {solution && <p className={solution.found ? "found" : "look"}>{solution.sentence}</p>}
        {solution && <LaidNote seconds={answer.seconds} refining={false} />}
      </div>
      {solution && (
        <div className="acts">
          <button
            type="button"
            onClick={() => {
              const { figures } = solution.found ?? solution.nearest;
              trying.tryAll(foundCells.map((cell, i) => [cell, figures[i]!]));
            }}
          >
            {solution.found ? "Preview" : "Preview the nearest"}
          </button>
        </div>
      )}
      {solution && question && foundCells.length > 0 && solution.rows.length > 1 && (
        <div className="plots">
          {foundCells.length > 1 ? (
            <Heat book={book} varied={foundCells} watched={question.make} index={0} rows={solution.rows} />
          ) : (
            <Plot
              book={book}
              cell={foundCells[0]!}
              watched={question.make}
              index={0}
              rows={solution.rows}
              thresholds={null}
              at={(solution.found ?? solution.nearest).figures[0]!}
              target={"value" in question.aim ? question.aim.value : null}
            />
          )}
        </div>
      )}
    </form>
  );
}

interface EndsProps {
  readonly book: Asking["store"]["book"];
  readonly cell: VariedCell;
  readonly span: OpenSpan;
  readonly onSpan: (span: OpenSpan) => void;
}

function Ends({ book, cell, span, onSpan }: EndsProps) {
  const { kind } = cell;
  return (
    <div className="slider-ends">
      <FigureField
        book={book}
        label="From"
        kind={kind}
        value={span.from}
        open="any"
        onFigure={(from) => onSpan({ ...span, from })}
      />
      <FigureField
        book={book}
        label="To"
        kind={kind}
        value={span.to}
        open="any"
        onFigure={(to) => onSpan({ ...span, to })}
      />
      <FigureField
        book={book}
        label="Step"
        kind={kind === "days" ? "figure" : kind}
        value={span.step ?? cell.step}
        onFigure={(step) => onSpan({ ...span, step })}
      />
    </div>
  );
}
