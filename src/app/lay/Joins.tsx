/** Where the cloth in hand falls short: the join with which it would do, and the lay that proves it. */

import { useEffect, useState, useSyncExternalStore } from "react";
import { hasTooManyToJoin, joinsText, MOST_JOINED } from "../../../functions/cutting/piecing.ts";
import { withDecimalMark } from "../../../functions/decimal.ts";
import { markSize, readTape } from "../../../functions/fractions.ts";
import type { JoinAnswer, JoinQuestion, Lay, LayQuestion } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { BOOK_UNITS, convert } from "../../../functions/units.ts";
import { lengthText } from "../../engine/show.ts";
import { joinsKey, knownJoins } from "../../lay/joins.ts";
import type { Store } from "../../store/store.ts";
import { handOn } from "../keyboard.ts";
import { joinSearchOf } from "./join-search.ts";
import { LayPicture } from "./LayPicture.tsx";

interface Props {
  readonly store: Store;
  readonly question: LayQuestion;
  readonly scale: number;
}

/** The widest allowance at a join, in centimetres. */
const WIDEST = 20;

export function Joins({ store, question, scale }: Props) {
  const { unit, mark, decimal } = store.shown;
  const [typed, setTyped] = useState(withDecimalMark(BOOK_UNITS[unit].seam, decimal));
  /** The allowance that was asked about; null before the first time. */
  const [asked, setAsked] = useState<number | null>(null);
  const say = (length: number) => lengthText(length, store.shown);
  const seam = readTape(typed, unit, decimal)?.length ?? 0;
  const isGood = seam > 0 && seam <= convert(WIDEST, "cm", unit);
  const isTooMany = hasTooManyToJoin(question);
  const start = store.engine.setting.plan?.(question);
  const joins =
    asked === null || isTooMany || !start || "refusal" in start
      ? null
      : { question, start: start as Lay, seam: asked, mark: markSize(mark, unit) };
  const answer = joins && knownJoins(joins);
  const looking = answer !== null && "pending" in answer;
  const ask = (one: number | null) => {
    handOn(".lay-joins");
    setAsked(one);
  };
  const tried = useTried(store, joins);

  return (
    <div className="lay-joins">
      <div className="lay-row">
        <button
          type="button"
          disabled={!isGood || looking || isTooMany}
          onClick={() => ask(seam)}
        >{phrase`Would piecing help?`}</button>
        <label>
          <span>{phrase`with an allowance of`}</span>
          <input
            className="lay-enough"
            value={typed}
            aria-invalid={!isGood}
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        {looking && <button type="button" onClick={() => ask(null)}>{phrase`Stop looking`}</button>}
      </div>
      <p role="status">
        {isTooMany
          ? phrase`Joins are looked for among at most ${MOST_JOINED} pieces.`
          : !isGood
            ? phrase`an allowance must be a length such as ${BOOK_UNITS[unit].seam}, not "${typed.slice(0, 24)}"`
            : looking
              ? phrase`${tried} lays tried`
              : answer && "tried" in answer
                ? textOf(answer, asked!, say)
                : ""}
      </p>
      {answer && "tried" in answer && answer.pieced && (
        <div className="lay-still">
          <LayPicture
            {...answer.pieced}
            scale={scale}
            rule={store.shown}
            title={phrase`The lay with the join`}
          />
        </div>
      )}
    </div>
  );
}

/** Has these joins looked for while they are on the page; the number of lays tried so far. */
function useTried(store: Store, joins: JoinQuestion | null): number {
  const search = joinSearchOf(store);
  const { key, tried } = useSyncExternalStore(search.subscribe, search.state);
  const own = joins && joinsKey(joins);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a question with the same key is the same question.
  useEffect(() => {
    search.ask(joins);
    return () => search.ask(null);
  }, [search, own]);
  return key === own ? tried : 0;
}

const textOf = ({ pieced, tried }: JoinAnswer, seam: number, say: (length: number) => string): string =>
  pieced
    ? phrase`With a join it fits: cut ${joinsText(pieced.joins, say)}, with ${say(seam)} on either part.`
    : phrase`None of ${tried} lays with a join fits.`;
