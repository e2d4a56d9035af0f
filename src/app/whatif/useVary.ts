/** What Vary asks: which typed cells are varied, over which ranges, and which cells are watched. */
import { useMemo, useState } from "react";
import { Upstream } from "../../engine/references.ts";
import type { Span, Watched } from "../../engine/sweep.ts";
import type { VariedCell } from "../../engine/varied-cell.ts";
import type { Asking } from "./asking.ts";
import { keyOf, usualSpan, variedCellsAt, variedChoices, watchChoices } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { type PanelQuestion, useAnswer } from "./useAnswer.ts";

const FIRST_WATCHED = 3;
const NONE: readonly Watched[] = [];

/** Steps of the usual range when one cell is varied, and for each when two are. */
const STEPS = 48;
const STEPS_OF_TWO = 8;

export function useVary({ store, place, client }: Asking) {
  const book = useEditedBook(store);
  const [keys, setKeys] = useState(["", ""]);
  const [spans, setSpans] = useState<Readonly<Record<string, Span>>>({});
  const [chosen, setChosen] = useState<readonly string[] | null>(null);

  const choices = useMemo(() => variedChoices(book, place), [book, place]);
  const byKey = (key: string) => choices.find((one) => keyOf(book, one.place) === key);
  const first = byKey(keys[0]!) ?? byKey(keyOf(book, place)) ?? null;
  const second = (first && keys[1] && keys[1] !== keyOf(book, first.place) && byKey(keys[1])) || null;
  const varied = useMemo(
    () => [first, second].filter((one): one is VariedCell => one !== null),
    [first, second],
  );
  const spanKey = (cell: VariedCell) => `${varied.length}${keyOf(book, cell.place)}`;
  const spanOf = (cell: VariedCell): Span =>
    spans[spanKey(cell)] ?? usualSpan(cell, varied.length > 1 ? STEPS_OF_TWO : STEPS);

  const firstKey = first && keyOf(book, first.place);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the engine follows the book, and the varied cell is known by its key
  const following = useMemo(
    () =>
      first
        ? watchChoices(store.engine, place).filter((one) => new Upstream(book, [one.place]).has(first.place))
        : [],
    [book, place, firstKey],
  );
  const usual = following.filter(({ kind }) => kind !== "verdict").slice(-FIRST_WATCHED);
  const watched = chosen ? following.filter((one) => chosen.includes(keyOf(book, one.place))) : usual;

  const places = varied.map((cell) => cell.place);
  const asked: PanelQuestion | null =
    varied.length > 0 && watched.length > 0
      ? { is: "sweep", varied: places, spans: varied.map(spanOf), watched }
      : null;
  const answer = useAnswer({ store, client }, asked);
  const question = answer.question?.is === "sweep" ? answer.question : null;
  const answered = useMemo(() => (question ? variedCellsAt(book, question.varied) : []), [book, question]);
  return {
    book,
    choices,
    first,
    second,
    varied,
    spanOf,
    following,
    watched,
    answer,
    /** The varied and the watched cells that the rows of the answer are about, and the range of each varied one. */
    answered,
    spans: question?.spans ?? [],
    shown: question?.watched ?? NONE,
    chooseFirst: (key: string) => setKeys([key, keys[1]!]),
    chooseSecond: (key: string) => setKeys([keys[0]!, key]),
    setSpan: (cell: VariedCell, span: Span) => setSpans({ ...spans, [spanKey(cell)]: span }),
    setWatched: (next: readonly Watched[]) => setChosen(next.map((one) => keyOf(book, one.place))),
    chosenKeys: keys,
  };
}

export type VaryState = ReturnType<typeof useVary>;
