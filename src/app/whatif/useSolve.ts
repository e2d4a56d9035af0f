/** What Solve asks: the cell to bring to a target, the target, and the typed cells to change for it. */
import { useMemo, useState } from "react";
import type { Book } from "../../book/shape.ts";
import { Upstream } from "../../engine/references.ts";
import type { OpenSpan, Target } from "../../engine/target.ts";
import type { VariedCell } from "../../engine/varied-cell.ts";
import type { Asking } from "./asking.ts";
import { keyOf, usualSpan, variedCellsAt, variedChoices, watchChoices } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { type PanelQuestion, useAnswer } from "./useAnswer.ts";

/** Steps of the usual range of each cell when two are varied. */
const STEPS_OF_TWO = 12;

export function useSolve({ store, place, client }: Asking) {
  const book = useEditedBook(store);
  const [makeKey, setMakeKey] = useState("");
  const [keys, setKeys] = useState(["", ""]);
  const [is, setIs] = useState<Target["is"]>("atmost");
  const [value, setValue] = useState<number | undefined>(undefined);
  const [spans, setSpans] = useState<Readonly<Record<string, OpenSpan>>>({});
  const [least, setLeast] = useState(false);
  const [asked, setAsked] = useState<{ book: Book; question: PanelQuestion } | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the engine follows the book
  const makes = useMemo(
    () => watchChoices(store.engine, place).filter(({ kind }) => kind !== "verdict" && kind !== "flag"),
    [book, place],
  );
  const make = makes.find((one) => keyOf(book, one.place) === makeKey) ?? null;
  const choices = useMemo(() => {
    const upstream = make && new Upstream(book, [make.place]);
    return upstream ? variedChoices(book, place).filter((cell) => upstream.has(cell.place)) : [];
  }, [book, place, make]);
  const byKey = (key: string) => choices.find((one) => keyOf(book, one.place) === key);
  const first = byKey(keys[0]!) ?? null;
  const second = (first && keys[1] !== keys[0] && byKey(keys[1]!)) || null;
  const varied = [first, second].filter((one): one is VariedCell => one !== null);
  const spanOf = (cell: VariedCell): OpenSpan =>
    spans[keyOf(book, cell.place)] ?? (varied.length > 1 ? usualSpan(cell, STEPS_OF_TWO) : {});
  const hasValue = is === "atmost" || is === "atleast" || is === "equal";
  const canAsk = make !== null && varied.length > 0 && (!hasValue || value !== undefined);

  // An answer about another book is no answer.
  const answer = useAnswer({ store, client }, asked?.book === book ? asked.question : null);
  const question = answer.question?.is === "solve" && answer.question.book === book ? answer.question : null;

  const ask = () => {
    if (!canAsk) return;
    const aim: Target = hasValue ? { is, value: value! } : { is };
    const places = varied.map((cell) => cell.place);
    setAsked({
      book,
      question: { is: "solve", varied: places, spans: varied.map(spanOf), make, aim, least },
    });
  };

  return {
    book,
    makes,
    make,
    choices,
    first,
    second,
    aim: is,
    value,
    hasValue,
    least,
    canAsk,
    ask,
    answer,
    /** The question that the solution answers, and the cells that were varied for it. */
    question,
    solution: question && answer.solution,
    answered: question ? variedCellsAt(book, question.varied) : [],
    spanOf,
    chooseMake: setMakeKey,
    chooseFirst: (key: string) => setKeys([key, keys[1]!]),
    chooseSecond: (key: string) => setKeys([keys[0]!, key]),
    setAim: setIs,
    setValue,
    setLeast,
    setSpan: (cell: VariedCell, span: OpenSpan) => setSpans({ ...spans, [keyOf(book, cell.place)]: span }),
  };
}

export type SolveState = ReturnType<typeof useSolve>;
