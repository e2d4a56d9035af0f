/** One cell to vary: a slider that goes by the tape's marks, its two ends and the step of the plot. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import type { Span } from "../../engine/sweep.ts";
import { clean, figureText, type VariedCell } from "../../engine/varied-cell.ts";
import { FigureField } from "./FigureField.tsx";

interface Props {
  readonly book: Book;
  readonly cell: VariedCell;
  readonly figure: number;
  readonly span: Span;
  readonly onFigure: (figure: number) => void;
  readonly onSpan: (span: Span) => void;
  /** Escape puts back what was tried. */
  readonly onDrop: () => void;
}

export function Slider({ book, cell, figure, span, onFigure, onSpan, onDrop }: Props) {
  const { kind, label } = cell;
  const { from, to, step } = span;
  const marks = Math.max(0, Math.floor((to - from) / cell.step + 1e-9));
  const at = Math.max(0, Math.min(marks, Math.round((figure - from) / cell.step)));
  const text = figureText(book, kind, figure);
  const move = (by: number) => onFigure(clean(figure + by * cell.step));
  const mark = figureText(book, kind === "days" ? "figure" : kind, cell.step);
  return (
    <div className="slider">
      <div className="slider-row">
        <button type="button" onClick={() => move(-1)}>
          <span aria-hidden="true">−</span>
          <span className="unseen">{phrase`${label}: ${mark} less`}</span>
        </button>
        <input
          type="range"
          aria-label={label}
          aria-valuetext={text}
          min={0}
          max={marks}
          step={1}
          value={at}
          onChange={(event) => onFigure(clean(from + Number(event.target.value) * cell.step))}
          onKeyDown={(event) => event.key === "Escape" && onDrop()}
        />
        <button type="button" onClick={() => move(1)}>
          <span aria-hidden="true">+</span>
          <span className="unseen">{phrase`${label}: ${mark} more`}</span>
        </button>
        <output className="slider-figure">{text}</output>
      </div>
      <div className="slider-ends">
        <FigureField
          book={book}
          label={phrase`From`}
          kind={kind}
          value={from}
          onFigure={(one) => one !== undefined && onSpan({ ...span, from: one })}
        />
        <FigureField
          book={book}
          label={phrase`To`}
          kind={kind}
          value={to}
          onFigure={(one) => one !== undefined && onSpan({ ...span, to: one })}
        />
        <FigureField
          book={book}
          label={phrase`Step`}
          kind={kind === "days" ? "figure" : kind}
          value={step}
          onFigure={(one) => one !== undefined && onSpan({ ...span, step: one })}
        />
      </div>
    </div>
  );
}
