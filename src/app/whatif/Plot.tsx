/** A watched cell against the varied one, with what the pointer or the slider is at in words. */

import { useEffect, useMemo, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { BOOK_UNITS } from "../../../functions/units.ts";
import type { Book } from "../../book/shape.ts";
import { numberOf } from "../../engine/question-engine.ts";
import { show } from "../../engine/show.ts";
import { type Row, readingText, type Watched } from "../../engine/sweep.ts";
import type { Thresholds } from "../../engine/thresholds.ts";
import { figureText, type VariedCell } from "../../engine/varied-cell.ts";
import { afterPaint } from "../following/use-after-paint.ts";
import type { PlotDrawing } from "./plotting.ts";

interface Props {
  readonly book: Book;
  readonly cell: VariedCell;
  readonly watched: Watched;
  /** Which of the readings of a row it is. */
  readonly index: number;
  readonly rows: readonly Row[];
  readonly thresholds: Thresholds | null;
  readonly at: number;
  readonly target: number | null;
}

export function Plot({ book, cell, watched, index, rows, thresholds, at, target }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const drawing = useRef<PlotDrawing | null>(null);
  const [ready, setReady] = useState(false);
  const [pointed, setPointed] = useState<number | null>(null);
  const [fault, setFault] = useState<{ readonly reason: unknown } | null>(null);
  // What fails behind the paint fails here, where a guard says so.
  if (fault) throw fault.reason;
  const data = useMemo(
    () =>
      [
        rows.map(({ figures }) => figures[0]!),
        rows.map(({ readings }) => numberOf(readings[index])),
      ] as const,
    [rows, index],
  );
  const values = data[1];
  const plain = values.some((value) => value !== null);

  useEffect(() => {
    if (!plain) return;
    let gone = false;
    // The plotting library comes when the first plot does.
    import("./plotting.ts")
      .then(({ PlotDrawing }) => {
        if (gone || !host.current) return;
        drawing.current = new PlotDrawing(host.current, setPointed);
        setReady(true);
      })
      .catch((reason: unknown) => setFault({ reason }));
    return () => {
      gone = true;
      drawing.current?.destroy();
      drawing.current = null;
      drawn.current = null;
      setReady(false);
    };
  }, [plain]);

  const inches = BOOK_UNITS[book.unit].tape === "in";
  const { kind } = cell;
  const plotted = useMemo(
    () => ({
      data,
      steps: thresholds?.steps ?? watched.kind === "count",
      jumps: thresholds?.jumps.map((jump) => jump.at) ?? [],
      target,
      across: (figure: number) => figureText(book, kind, figure),
      up: (value: number) => show(value, watched.kind, book),
      acrossInches: inches && kind === "length",
      upInches: inches && watched.kind === "length",
    }),
    [data, thresholds, watched.kind, target, book, kind, inches],
  );
  const drawn = useRef<typeof plotted | null>(null);
  useEffect(() => {
    if (!ready || rows.length === 0) return;
    const draw = () => {
      drawn.current = plotted;
      try {
        drawing.current?.draw({ ...plotted, at });
      } catch (reason) {
        setFault({ reason });
      }
      afterPaint.done(drawn);
    };
    // Where only the slider has moved, the grid is painted first.
    if (drawn.current === plotted) afterPaint.ask(drawn, draw);
    else draw();
  }, [ready, rows.length, plotted, at]);
  useEffect(() => () => afterPaint.done(drawn), []);

  const nearest = rows.reduce(
    (best, { figures }, i) =>
      Math.abs(figures[0]! - at) < Math.abs(rows[best]!.figures[0]! - at) ? i : best,
    0,
  );
  const row = rows[pointed ?? nearest] ?? rows[nearest];
  const numbers = values.filter((value) => value !== null);
  const about = plain
    ? phrase`${watched.label} from ${show(Math.min(...numbers), watched.kind, book)} to ${show(Math.max(...numbers), watched.kind, book)} while ${cell.label} goes from ${figureText(book, cell.kind, rows[0]!.figures[0]!)} to ${figureText(book, cell.kind, rows.at(-1)!.figures[0]!)}`
    : "";
  return (
    <figure className="plot">
      <figcaption>
        <b>{watched.label}</b>{" "}
        {row && (
          <span>
            {phrase`${readingText(book, watched, row.readings[index]!)} at ${cell.label} ${figureText(book, cell.kind, row.figures[0]!)}`}
          </span>
        )}
      </figcaption>
      {plain && <div ref={host} className="plot-host" role="img" aria-label={about} />}
    </figure>
  );
}
