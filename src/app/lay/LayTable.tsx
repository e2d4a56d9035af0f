/** The table a lay is laid on by hand: dragged by pointer, moved by keys, and never one piece over another. */

import { type KeyboardEvent, type MouseEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { BOOK_UNITS } from "../../../functions/units.ts";
import type { Rule } from "../../engine/show.ts";
import { answerFrom } from "../../lay/answer.ts";
import type { FreePlaces } from "../../lay/free-places.ts";
import { copyKey, neighbour, replaced, stepped, turnedRound } from "./arrange.ts";
import { LayPicture } from "./LayPicture.tsx";

interface Props {
  readonly question: LayQuestion;
  readonly lay: Lay;
  readonly freePlaces: FreePlaces;
  /** Pixels to one unit of length. */
  readonly scale: number;
  readonly rule: Rule;
  readonly title: string;
  /** Written above it when another lay stands beside it. */
  readonly name: string | null;
  readonly chosen: string | null;
  readonly pins: ReadonlySet<string>;
  readonly onChoose: (key: string | null) => void;
  readonly onMove: (placements: readonly Placement[]) => void;
  readonly onPin: (key: string) => void;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Drag {
  readonly from: Placement;
  readonly at: readonly [number, number];
  readonly there: Placement;
  readonly wish: Placement;
}

export function LayTable(props: Props) {
  const { question, lay, freePlaces, scale, rule, title, chosen, pins } = props;
  const [drag, setDrag] = useState<Drag | null>(null);
  const table = useRef<HTMLDivElement>(null);

  // A finger scrolls the page, except on the chosen piece. Chromium does not heed `touch-action` within a
  // picture, and React's own listener is passive.
  useEffect(() => {
    const element = table.current!;
    const onTouchStart = (event: TouchEvent) => {
      if ((event.target as Element).closest(".lay-chosen")) event.preventDefault();
    };
    element.addEventListener("touchstart", onTouchStart, { passive: false });
    return () => element.removeEventListener("touchstart", onTouchStart);
  }, []);

  const find = (key: string | null) => lay.placements.find((one) => copyKey(one) === key);
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    const key = keyAt(event);
    // A finger that comes down on another piece may be scrolling; a tap ends in a click.
    if (event.pointerType === "touch" && key !== chosen) return;
    const from = find(key);
    props.onChoose(key);
    if (!from) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setDrag({ from, at: [event.clientX, event.clientY], there: from, wish: from });
  };
  const onClick = (event: MouseEvent) => {
    const { pointerType } = event.nativeEvent as globalThis.PointerEvent;
    if (pointerType === "touch") props.onChoose(keyAt(event));
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    if (!drag) return;
    const wish = {
      ...drag.from,
      x: drag.from.x + (event.clientX - drag.at[0]) / scale,
      y: drag.from.y + (event.clientY - drag.at[1]) / scale,
    };
    setDrag({ ...drag, wish, there: freePlaces.nearest(lay.placements, wish) ?? drag.from });
  };
  const onPointerUp = () => {
    if (drag && drag.there !== drag.from) props.onMove(replaced(lay.placements, drag.there));
    setDrag(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = ARROWS[event.key];
    const from = find(chosen);
    const moveTo = (there: Placement | null) => there && props.onMove(replaced(lay.placements, there));
    // With Shift four times as far.
    const step = BOOK_UNITS[rule.unit].nudge * (event.shiftKey ? 4 : 1);
    if (event.key === "Escape" && drag) setDrag(null);
    else if (event.key === "PageDown") props.onChoose(neighbour(question, lay.placements, chosen, 1));
    else if (event.key === "PageUp") props.onChoose(neighbour(question, lay.placements, chosen, -1));
    else if (!from) return;
    else if (way) moveTo(stepped(freePlaces, question, lay.placements, from, [way[0] * step, way[1] * step]));
    else if (event.key === "t") moveTo(turnedRound(freePlaces, question, lay.placements, from));
    else if (event.key === "p") props.onPin(copyKey(from));
    else return;
    event.preventDefault();
  };

  const shown = drag ? answerFrom(question, replaced(lay.placements, drag.there)) : lay;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a table that pieces are moved on is no set of fields
    <div
      ref={table}
      className="lay-table"
      role="group"
      aria-label={phrase`The lay: Page Down and Page Up choose a piece, arrows move it, t turns it, p pins it`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes keys
      tabIndex={0}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => setDrag(null)}
      onClick={onClick}
      onKeyDown={onKeyDown}
    >
      {props.name !== null && <p className="lay-name">{props.name}</p>}
      <LayPicture
        question={question}
        lay={shown}
        scale={scale}
        rule={rule}
        title={title}
        chosen={chosen}
        pins={pins}
        wish={drag && drag.there !== drag.wish ? drag.wish : null}
      />
    </div>
  );
}

/** The key of the piece that was pressed; null for what lies between the pieces. */
const keyAt = (event: MouseEvent): string | null =>
  (event.target as Element).closest("[data-copy]")?.getAttribute("data-copy") ?? null;
