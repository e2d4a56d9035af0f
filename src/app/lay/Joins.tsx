/** Where the cloth in hand falls short: the join with which it would do, and the lay that proves it. */

import { useEffect, useState } from "react";
import { joinsText, type Pieced, piecing } from "../../../functions/cutting/piecing.ts";
import { withDecimalMark } from "../../../functions/decimal.ts";
import { markSize, readTape } from "../../../functions/fractions.ts";
import type { LayQuestion } from "../../../functions/lay.ts";
import { BOOK_UNITS, convert } from "../../../functions/units.ts";
import { lengthText } from "../../engine/show.ts";
import { isLarge, MOST_COPIES } from "../../lay/late.ts";
import { quickLay } from "../../lay/plan.ts";
import type { Store } from "../../store/store.ts";
import { LayPicture } from "./LayPicture.tsx";

interface Props {
  readonly store: Store;
  readonly question: LayQuestion;
  readonly scale: number;
}

type Told =
  | { readonly is: "nothing" }
  | { readonly is: "looking"; readonly seam: number; readonly tried: number }
  | { readonly is: "ended"; readonly seam: number; readonly tried: number; readonly found: Pieced | null };

/** Lays tried before it is given up, and the widest allowance at a join in centimetres. */
const MOST_LAYS = 200;
const WIDEST = 20;

export function Joins({ store, question, scale }: Props) {
  const { unit, mark, decimal } = store.shown;
  const [typed, setTyped] = useState(withDecimalMark(BOOK_UNITS[unit].seam, decimal));
  const [told, setTold] = useState<Told>({ is: "nothing" });
  const say = (length: number) => lengthText(length, store.shown);
  const seam = readTape(typed, unit, decimal)?.length ?? 0;
  const isGood = seam > 0 && seam <= convert(WIDEST, "cm", unit);
  const looking = told.is === "looking" ? told.seam : null;

  // One lay after the other, so that the page stays awake between them.
  useEffect(() => {
    if (looking === null) return;
    const search = piecing({ question, seam: looking, mark: markSize(mark, unit), plan: quickLay });
    let tried = 0;
    let timer = setTimeout(function next() {
      const { done, value } = search.next();
      if (done || ++tried >= MOST_LAYS)
        return setTold({ is: "ended", seam: looking, tried, found: done ? value : null });
      setTold({ is: "looking", seam: looking, tried });
      timer = setTimeout(next, 0);
    }, 0);
    return () => clearTimeout(timer);
  }, [looking, question, mark, unit]);

  return (
    <div className="lay-joins">
      <div className="lay-row">
        <button
          type="button"
          disabled={!isGood || looking !== null || isLarge(question)}
          onClick={() => setTold({ is: "looking", seam, tried: 0 })}
        >
          Would piecing help?
        </button>
        <label>
          <span>with an allowance of</span>
          <input
            className="lay-enough"
            value={typed}
            aria-invalid={!isGood}
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        {looking !== null && (
          <button type="button" onClick={() => setTold({ is: "nothing" })}>
            Stop looking
          </button>
        )}
      </div>
      <p role="status">
        {isLarge(question)
          ? `Joins are looked for among at most ${MOST_COPIES} pieces.`
          : isGood
            ? textOf(told, say)
            : `an allowance must be a length such as ${BOOK_UNITS[unit].seam}, not "${typed.slice(0, 24)}"`}
      </p>
      {told.is === "ended" && told.found && (
        <div className="lay-still">
          <LayPicture {...told.found} scale={scale} rule={store.shown} title="The lay with the join" />
        </div>
      )}
    </div>
  );
}

function textOf(told: Told, say: (length: number) => string): string {
  if (told.is === "nothing") return "";
  if (told.is === "looking") return `${told.tried} lays tried`;
  return told.found
    ? `With a join it fits: cut ${joinsText(told.found.joins, say)}, with ${say(told.seam)} on either part.`
    : `None of ${told.tried} lays with a join fits.`;
}
