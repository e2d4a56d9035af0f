/** The space that the pictures of lays have on the page, and the one scale at which they are drawn in it. */
import { type RefObject, useLayoutEffect, useState } from "react";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { longOf, MARGIN } from "./LayPicture.tsx";

/** In pixels. */
export interface PictureSpace {
  readonly width: number;
  readonly height: number;
}

/** How long and how wide a lay is with all its cloths under one another, in units of length. */
export interface Size {
  readonly long: number;
  readonly wide: number;
}

export const sizeOf = (question: LayQuestion, lay: Lay): Size => ({
  long: Math.max(...longOf(question, lay), 1e-6),
  wide: question.cloths.reduce((sum, { width }) => sum + width, 0),
});

/** A picture's height at most, and at least: between them what the panel has, less what stands about it. */
const TALLEST = 460;
const LEAST = 210;
const ABOUT = 205;
/** Borders and what lies between two pictures. */
const BORDER = 2;
const GAP = 10;

export interface Fit {
  /** Pixels to one unit. */
  readonly scale: number;
  /** Whether lays stand beside one another; else they are under one another. */
  readonly abreast: boolean;
}

/** Two lays stand abreast unless they are much larger under one another. */
export function fitOf(sizes: readonly Size[], { width, height }: PictureSpace): Fit {
  const high = height / Math.max(...sizes.map(({ wide }) => wide));
  const scale = (wide: number, long: number) => Math.max(1e-6, Math.min(wide / long, high));
  const under = scale(width - MARGIN - BORDER, Math.max(...sizes.map(({ long }) => long)));
  const beside = scale(
    width - sizes.length * (MARGIN + BORDER) - (sizes.length - 1) * GAP,
    sizes.reduce((sum, { long }) => sum + long, 0),
  );
  return sizes.length > 1 && beside >= 0.6 * under
    ? { scale: beside, abreast: true }
    : { scale: under, abreast: false };
}

/** The room for pictures in the element, kept up to date; null before it is known. */
export function usePictureSpace(element: RefObject<HTMLElement | null>): PictureSpace | null {
  const [room, setRoom] = useState<PictureSpace | null>(null);
  useLayoutEffect(() => {
    const one = element.current!;
    const board = one.closest(".lay-board")!;
    const measure = () => {
      const width = one.clientWidth;
      const height = Math.min(TALLEST, Math.max(LEAST, board.clientHeight - ABOUT));
      setRoom((old) => (old?.width === width && old.height === height ? old : { width, height }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(one);
    watch.observe(board);
    return () => watch.disconnect();
  }, [element]);
  return room;
}
