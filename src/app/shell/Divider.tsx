/** The line between the grid and what stands beside it: dragged, or moved with the arrow keys. */

import { type KeyboardEvent, type PointerEvent, useEffect, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { LEAST, MOST, rememberedSide, rememberSide, setSideWidth, USUAL, within } from "./side-width.ts";

export function Divider() {
  const [share, setShare] = useState(rememberedSide);
  useEffect(() => {
    setSideWidth(share);
    rememberSide(share);
    // The grid measures its own room only when the window says that it has changed.
    dispatchEvent(new Event("resize"));
  }, [share]);

  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    if (event.currentTarget.hasPointerCapture(event.pointerId))
      setShare(within(100 * (1 - event.clientX / window.innerWidth)));
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const step = { ArrowLeft: 2, ArrowRight: -2 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    setShare(within(share + step));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a line that can be moved is no rule in a text
    <div
      className="divider"
      role="separator"
      aria-orientation="vertical"
      aria-label={phrase`Width of the drawing and the working`}
      aria-valuemin={LEAST}
      aria-valuemax={MOST}
      aria-valuenow={Math.round(share)}
      tabIndex={0}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={onPointerMove}
      onKeyDown={onKeyDown}
      onDoubleClick={() => setShare(USUAL)}
    />
  );
}
