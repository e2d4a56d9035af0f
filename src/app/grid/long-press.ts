/** A long press of one finger, which asks for what a right click asks for. Some browsers have no event for it. */
const HOLD_MS = 550;
/** A finger that moves farther than this slides the page, in pixels. */
const STILL = 10;

/** Calls `onLongPress` with the touched element and the place; what a browser makes of the same press is then left out. Gives what ends this. */
export function listenToLongPress(
  host: HTMLElement,
  onLongPress: (target: Element, x: number, y: number) => void,
): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let from = { x: 0, y: 0 };
  let isHeld = false;
  const drop = () => clearTimeout(timer);
  const begin = ({ touches, target }: TouchEvent) => {
    drop();
    isHeld = false;
    const [touch, other] = touches;
    if (!touch || other || !(target instanceof Element) || target instanceof HTMLTextAreaElement) return;
    from = { x: touch.clientX, y: touch.clientY };
    timer = setTimeout(() => {
      isHeld = true;
      onLongPress(target, from.x, from.y);
    }, HOLD_MS);
  };
  const move = ({ touches: [touch] }: TouchEvent) => {
    if (touch && Math.hypot(touch.clientX - from.x, touch.clientY - from.y) > STILL) drop();
  };
  const end = (event: TouchEvent) => {
    drop();
    // Else the finger that is lifted would press what now lies beneath it.
    if (isHeld && event.cancelable) event.preventDefault();
    if (isHeld) event.stopPropagation();
  };
  const menu = (event: Event) => {
    drop();
    if (!isHeld) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  host.addEventListener("touchstart", begin, { capture: true, passive: true });
  host.addEventListener("touchmove", move, { capture: true, passive: true });
  host.addEventListener("touchend", end, { capture: true, passive: false });
  host.addEventListener("touchcancel", drop, true);
  host.addEventListener("contextmenu", menu, true);
  return () => {
    drop();
    host.removeEventListener("touchstart", begin, true);
    host.removeEventListener("touchmove", move, true);
    host.removeEventListener("touchend", end, true);
    host.removeEventListener("touchcancel", drop, true);
    host.removeEventListener("contextmenu", menu, true);
  };
}
