/** One cell to turn: a slider that goes by the tape's marks, its two ends and the step of the plot. */
import type { Book } from "../../book/shape.ts";
import { clean, type Dial, figureText } from "../../engine/dial.ts";
import type { Span } from "../../engine/sweep.ts";
import { FigureField } from "./FigureField.tsx";

interface Props {
  readonly book: Book;
  readonly dial: Dial;
  readonly figure: number;
  readonly span: Span;
  readonly onFigure: (figure: number) => void;
  readonly onSpan: (span: Span) => void;
  /** Escape puts back what was turned. */
  readonly onDrop: () => void;
}

export function Slider({ book, dial, figure, span, onFigure, onSpan, onDrop }: Props) {
  const { kind, label } = dial;
  const { from, to, step } = span;
  const marks = Math.max(0, Math.floor((to - from) / dial.step + 1e-9));
  const at = Math.max(0, Math.min(marks, Math.round((figure - from) / dial.step)));
  const text = figureText(book, kind, figure);
  const turn = (by: number) => onFigure(clean(figure + by * dial.step));
  const mark = figureText(book, kind === "days" ? "figure" : kind, dial.step);
  return (
    <div className="slider">
      <div className="slider-row">
        <button type="button" onClick={() => turn(-1)}>
          <span aria-hidden="true">−</span>
          <span className="unseen">
            {label}: {mark} less
          </span>
        </button>
        <input
          type="range"
          aria-label={label}
          aria-valuetext={text}
          min={0}
          max={marks}
          step={1}
          value={at}
          onChange={(event) => onFigure(clean(from + Number(event.target.value) * dial.step))}
          onKeyDown={(event) => event.key === "Escape" && onDrop()}
        />
        <button type="button" onClick={() => turn(1)}>
          <span aria-hidden="true">+</span>
          <span className="unseen">
            {label}: {mark} more
          </span>
        </button>
        <output className="slider-figure">{text}</output>
      </div>
      <div className="slider-ends">
        <FigureField
          book={book}
          label="From"
          kind={kind}
          value={from}
          onFigure={(one) => one !== undefined && onSpan({ ...span, from: one })}
        />
        <FigureField
          book={book}
          label="To"
          kind={kind}
          value={to}
          onFigure={(one) => one !== undefined && onSpan({ ...span, to: one })}
        />
        <FigureField
          book={book}
          label="Step"
          kind={kind === "days" ? "figure" : kind}
          value={step}
          onFigure={(one) => one !== undefined && onSpan({ ...span, step: one })}
        />
      </div>
    </div>
  );
}
