/** The window onto a drawing: it fits the whole drawing until one looks nearer. */

import { type ReactNode, useLayoutEffect, useRef, useState } from "react";
import type { Decimal } from "../../../functions/decimal.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { phrase } from "../../../functions/phrase.ts";
import type { Unit } from "../../../functions/units.ts";
import type { Picture } from "../../engine/picture.ts";
import { plainNumber } from "../../engine/show.ts";
import { handOn } from "../keyboard.ts";
import { NEARER, useGestures } from "./gestures.ts";
import { PictureView } from "./PictureView.tsx";
import { barLength, fitted, moved, type Size, type View, zoomed } from "./view.ts";

interface Props {
  /** What the lines mean, to stand beside the buttons. */
  readonly children: ReactNode;
  readonly picture: Picture;
  readonly ghost: Picture | null;
  readonly unit: Unit;
  readonly decimal: Decimal | undefined;
  readonly title: string;
  readonly description: string;
}

const MARGIN = 34;

export function Window({ children, picture, ghost, unit, decimal, title, description }: Props) {
  const element = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [near, setNear] = useState<View | null>(null);
  const whole = fitted(picture.box, size, MARGIN);
  const view = near ?? whole;

  useLayoutEffect(() => {
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = element.current!;
      setSize((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element.current!);
    return () => watch.disconnect();
  }, []);

  const zoom = (factor: number, around: Point) =>
    setNear((now) => zoomed(now ?? whole, factor, around, whole.scale));
  const move = (dx: number, dy: number) => setNear((now) => moved(now ?? whole, dx, dy));
  const all = () => {
    handOn(".window-foot");
    setNear(null);
  };
  const gestures = useGestures(element, { zoom, move, all });
  const middle: Point = [size.width / 2, size.height / 2];
  const bar = barLength(view.scale, 110);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing that takes keys is no set of fields */}
      <div
        className={near ? "window window-near" : "window"}
        ref={element}
        role="group"
        aria-label={phrase`Drawing: + and − zoom in and out, arrow keys move, 0 shows all`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes keys
        tabIndex={0}
        {...gestures}
      >
        {size.width > 0 && (
          <PictureView
            picture={picture}
            ghost={ghost}
            view={view}
            size={size}
            title={title}
            description={description}
          />
        )}
        <span className="scale" aria-hidden="true">
          <span className="scale-bar" style={{ width: view.scale > 0 ? bar * view.scale : 0 }} />
          {plainNumber(bar, 3, decimal)} {unit}
        </span>
      </div>
      <div className="window-foot">
        {children}
        <button type="button" onClick={() => zoom(1 / NEARER, middle)}>
          <span aria-hidden="true">−</span>
          <span className="unseen">{phrase`Zoom out`}</span>
        </button>
        <button type="button" onClick={() => zoom(NEARER, middle)}>
          <span aria-hidden="true">+</span>
          <span className="unseen">{phrase`Zoom in`}</span>
        </button>
        <button type="button" onClick={all} disabled={near === null}>{phrase`Show all`}</button>
      </div>
    </>
  );
}
