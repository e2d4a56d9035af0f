/** The line between the grid and what stands beside it: dragged, or moved with the arrow keys. */
import { type KeyboardEvent, type PointerEvent, useEffect, useState } from "react";
import { recall, remember } from "../files/storage.ts";

/** How wide the side is, as a share of the window in hundredths. */
const LEAST = 22;
const MOST = 65;
const USUAL = 34;
const KEY = "ellwand.side";

const within = (share: number) => Math.min(MOST, Math.max(LEAST, share));

function remembered(): number {
  const share = Number(recall("localStorage", KEY) ?? USUAL);
  return Number.isFinite(share) ? within(share) : USUAL;
}

export function Divider() {
  const [share, setShare] = useState(remembered);
  useEffect(() => {
    document.documentElement.style.setProperty("--side", `${share}vw`);
    remember("localStorage", KEY, String(share));
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
      aria-label="Width of the drawing and the working"
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
