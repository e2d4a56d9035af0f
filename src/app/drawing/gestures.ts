/** Wheel, pinch, drag and keys on a drawing, as changes of the view. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from "react";
import type { Point } from "../../../functions/geometry/strokes.ts";

export interface Moves {
  /** Nearer (above 1) or farther about a point of the window. */
  readonly zoom: (factor: number, around: Point) => void;
  readonly move: (dx: number, dy: number) => void;
  readonly all: () => void;
}

/** How much a + zooms in. */
export const NEARER = 1.25;
/** How far an arrow key moves the drawing, in pixels. */
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [40, 0],
  ArrowRight: [-40, 0],
  ArrowUp: [0, 40],
  ArrowDown: [0, -40],
};

export function useGestures(window: RefObject<HTMLElement | null>, moves: Moves) {
  const latest = useRef(moves);
  const down = useRef(new Map<number, Point>());
  useEffect(() => {
    latest.current = moves;
  });

  // React's own wheel listener is passive and could not keep the page from scrolling.
  useEffect(() => {
    const element = window.current!;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      const speed = event.ctrlKey ? 0.01 : 0.0016;
      const factor = Math.exp(-event.deltaY * lines * speed);
      latest.current.zoom(factor, [event.clientX - box.left, event.clientY - box.top]);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [window]);

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    down.current.set(event.pointerId, [event.clientX, event.clientY]);
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const before = down.current.get(event.pointerId);
    if (!before) return;
    const now: Point = [event.clientX, event.clientY];
    const other = [...down.current].find(([id]) => id !== event.pointerId)?.[1];
    down.current.set(event.pointerId, now);
    const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
    if (!other) return latest.current.move(dx, dy);
    const span = (point: Point) => Math.max(Math.hypot(point[0] - other[0], point[1] - other[1]), 8);
    const box = event.currentTarget.getBoundingClientRect();
    latest.current.zoom(span(now) / span(before), [
      (now[0] + other[0]) / 2 - box.left,
      (now[1] + other[1]) / 2 - box.top,
    ]);
    latest.current.move(dx / 2, dy / 2);
  };
  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    down.current.delete(event.pointerId);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { clientWidth, clientHeight } = event.currentTarget;
    const middle: Point = [clientWidth / 2, clientHeight / 2];
    const { zoom, move, all } = latest.current;
    const way = ARROWS[event.key];
    if (way) move(...way);
    else if (event.key === "+" || event.key === "=") zoom(NEARER, middle);
    else if (event.key === "-") zoom(1 / NEARER, middle);
    else if (event.key === "0") all();
    else return;
    event.preventDefault();
  };
  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel: onPointerUp, onKeyDown };
}
