/** One small plot drawn by uPlot: lines for lengths, steps for what jumps, thresholds as upright lines. */
import uPlot from "uplot";
import { TEXT_SIZE } from "../text-size.ts";
import "uplot/dist/uPlot.min.css";

export interface Plotted {
  /** Figures and values; the same object as long as they are the same. */
  readonly data: readonly [readonly number[], readonly (number | null)[]];
  /** The answer stands still between its jumps. */
  readonly steps: boolean;
  /** Upright lines where it jumps. */
  readonly jumps: readonly number[];
  /** The figure as it is now. */
  readonly at: number;
  /** A level line for the value that is wanted. */
  readonly target: number | null;
  readonly across: (figure: number) => string;
  readonly up: (value: number) => string;
  /** Which way the axes are ruled as an inch tape is. */
  readonly acrossInches: boolean;
  readonly upInches: boolean;
}

const HEIGHT = 132;
const INCHES = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 3, 4, 6, 12, 18, 24, 36, 72, 144, 360, 720, 1800, 3600];
const TENS = [
  1e-4, 1e-3, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1e3, 1e4, 1e5, 1e6,
];

/** A plot in an element; it is drawn anew with `draw` and follows the element's width. */
export class PlotDrawing {
  #plot: uPlot | null = null;
  #shown: Plotted | null = null;
  readonly #watch: ResizeObserver;

  constructor(
    private readonly host: HTMLElement,
    /** Told which step the pointer is at; null when it is elsewhere. */
    private readonly onPoint: (index: number | null) => void,
  ) {
    this.#watch = new ResizeObserver(() => this.#plot?.setSize({ width: host.clientWidth, height: HEIGHT }));
    this.#watch.observe(host);
  }

  draw(shown: Plotted): void {
    const before = this.#shown;
    this.#shown = shown;
    if (!this.#plot || before?.steps !== shown.steps) this.#begin(shown);
    else if (before.data !== shown.data) this.#plot.setData(shown.data as unknown as uPlot.AlignedData);
    else this.#plot.redraw(false, false);
  }

  destroy(): void {
    this.#watch.disconnect();
    this.#plot?.destroy();
  }

  #begin(shown: Plotted): void {
    this.#plot?.destroy();
    const colour = (of: "color" | "borderTopColor" | "caretColor") => () => getComputedStyle(this.host)[of];
    const axis = {
      stroke: colour("color"),
      grid: { stroke: colour("borderTopColor"), width: 1 },
      ticks: { stroke: colour("borderTopColor"), width: 1, size: 4 },
      font: `${12 * TEXT_SIZE}px system-ui, sans-serif`,
    };
    this.#plot = new uPlot(
      {
        width: this.host.clientWidth,
        height: HEIGHT,
        legend: { show: false },
        cursor: { y: false, drag: { x: false, y: false }, sync: { key: "what-if" }, points: { size: 7 } },
        scales: { x: { time: false }, y: { range: room } },
        series: [
          {},
          {
            stroke: colour("caretColor"),
            width: 1.75,
            points: { size: 5, fill: colour("caretColor") },
            ...(shown.steps ? { paths: uPlot.paths.stepped!({ align: 1 }) } : {}),
          },
        ],
        axes: [
          {
            ...axis,
            size: 26,
            incrs: shown.acrossInches ? INCHES : TENS,
            values: (_, values) => values.map((one) => this.#shown!.across(one)),
          },
          {
            ...axis,
            size: 58,
            space: 26,
            incrs: shown.upInches ? INCHES : TENS,
            values: (_, values) => values.map((one) => this.#shown!.up(one)),
          },
        ],
        hooks: {
          drawAxes: [(plot) => this.#lines(plot)],
          setCursor: [({ cursor: { idx } }) => this.onPoint(idx ?? null)],
        },
      },
      shown.data as unknown as uPlot.AlignedData,
      this.host,
    );
  }

  /** The thresholds dotted, the figure as it is now whole, the value wanted dashed. */
  #lines({ ctx, bbox, valToPos }: uPlot): void {
    const { jumps, at, target } = this.#shown!;
    const style = getComputedStyle(this.host);
    const line = (axis: "x" | "y", value: number, dashes: number[], colour: string) => {
      const place = valToPos(value, axis, true);
      const upright = axis === "x";
      const start = upright ? bbox.left : bbox.top;
      if (!(place >= start - 1 && place <= start + (upright ? bbox.width : bbox.height) + 1)) return;
      ctx.save();
      ctx.beginPath();
      ctx.setLineDash(dashes.map((one) => one * devicePixelRatio));
      ctx.lineWidth = devicePixelRatio;
      ctx.strokeStyle = colour;
      ctx.moveTo(upright ? place : bbox.left, upright ? bbox.top : place);
      ctx.lineTo(upright ? place : bbox.left + bbox.width, upright ? bbox.top + bbox.height : place);
      ctx.stroke();
      ctx.restore();
    };
    for (const jump of jumps) line("x", jump, [1.5, 3], style.color);
    line("x", at, [], style.textDecorationColor);
    if (target !== null) line("y", target, [7, 4], style.textDecorationColor);
  }
}

/** The range of the upright axis: all there is, with some room; a flat line in the middle. */
function room(_: uPlot, least: number | null, most: number | null): uPlot.Range.MinMax {
  if (least === null || most === null) return [0, 1];
  const over = least === most ? Math.max(1, Math.abs(least) / 10) : (most - least) * 0.08;
  return [least - over, most + over];
}
