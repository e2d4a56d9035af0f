/** The table a lay is laid on by hand: dragged by pointer, moved by keys, and never one piece over another. */
import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useRef, useState } from "react";
import type { Mark } from "../../../functions/fractions.ts";
import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import { convert, type Unit } from "../../../functions/units.ts";
import { answerFrom } from "../../lay/answer.ts";
import type { Hand } from "../../lay/hand.ts";
import { copyKey, neighbour, replaced, stepped, turnedRound } from "./arrange.ts";
import { LayPicture, MARGIN } from "./LayPicture.tsx";

interface Props {
  readonly question: LayQuestion;
  readonly lay: Lay;
  readonly hand: Hand;
  /** Lays that are to be shown at one scale: how long and wide each is. */
  readonly sizes: readonly { readonly long: number; readonly wide: number }[];
  readonly nearer: number;
  readonly unit: Unit;
  readonly mark: Mark;
  readonly title: string;
  readonly chosen: string | null;
  readonly pins: ReadonlySet<string>;
  readonly onChoose: (key: string | null) => void;
  readonly onMove: (placements: readonly Placement[]) => void;
  readonly onPin: (key: string) => void;
}

/** Pixels of the picture's height at most: what the panel has, less what stands about it, within these bounds. */
const TALLEST = 460;
const LEAST = 220;
const ABOUT = 190;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** One scale for all of the sizes: the longest fits the width in pixels, the widest the height. */
export function scaleFor(sizes: Props["sizes"], { width, height }: Room): number {
  const long = Math.max(...sizes.map((size) => size.long));
  const wide = Math.max(...sizes.map((size) => size.wide));
  return Math.max(1e-6, Math.min((width - MARGIN) / long, height / wide));
}

export interface Room {
  readonly width: number;
  readonly height: number;
}

export function roomOf(element: HTMLElement): Room {
  const panel = element.closest(".lay-board")?.clientHeight ?? 0;
  return {
    width: element.clientWidth,
    height: Math.min(TALLEST, Math.max(LEAST, panel - ABOUT)),
  };
}

interface Drag {
  readonly from: Placement;
  readonly at: readonly [number, number];
  readonly there: Placement;
  readonly wish: Placement;
}

export function LayTable(props: Props) {
  const { question, lay, hand, sizes, nearer, unit, mark, title, chosen, pins } = props;
  const element = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<Room>({ width: 0, height: LEAST });
  const [drag, setDrag] = useState<Drag | null>(null);
  const scale = scaleFor(sizes, room) * nearer;

  useLayoutEffect(() => {
    const measure = () => {
      const now = roomOf(element.current!);
      setRoom((old) => (old.width === now.width && old.height === now.height ? old : now));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element.current!);
    watch.observe(element.current!.closest(".lay-board")!);
    return () => watch.disconnect();
  }, []);

  const find = (key: string | null) => lay.placements.find((one) => copyKey(one) === key);
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    const key = (event.target as Element).closest("[data-copy]")?.getAttribute("data-copy") ?? null;
    const from = find(key);
    props.onChoose(key);
    if (!from) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setDrag({ from, at: [event.clientX, event.clientY], there: from, wish: from });
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    if (!drag) return;
    const wish = {
      ...drag.from,
      x: drag.from.x + (event.clientX - drag.at[0]) / scale,
      y: drag.from.y + (event.clientY - drag.at[1]) / scale,
    };
    setDrag({ ...drag, wish, there: hand.nearest(lay.placements, wish) ?? drag.from });
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
    // A quarter of an inch or half a centimetre; with Shift four times as far.
    const step = (unit === "in" ? 0.25 : convert(0.5, "cm", unit)) * (event.shiftKey ? 4 : 1);
    if (event.key === "Escape" && drag) setDrag(null);
    else if (event.key === "PageDown") props.onChoose(neighbour(question, lay.placements, chosen, 1));
    else if (event.key === "PageUp") props.onChoose(neighbour(question, lay.placements, chosen, -1));
    else if (!from) return;
    else if (way) moveTo(stepped(hand, question, lay.placements, from, [way[0] * step, way[1] * step]));
    else if (event.key === "t") moveTo(turnedRound(hand, question, lay.placements, from));
    else if (event.key === "p") props.onPin(copyKey(from));
    else return;
    event.preventDefault();
  };

  const shown = drag ? answerFrom(question, replaced(lay.placements, drag.there)) : lay;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a table that pieces are moved on is no set of fields
    <div
      className="lay-table"
      ref={element}
      role="group"
      aria-label="The lay: Page Down and Page Up choose a piece, arrows move it, t turns it, p pins it"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes keys
      tabIndex={0}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => setDrag(null)}
      onKeyDown={onKeyDown}
    >
      {room.width > 0 && (
        <LayPicture
          question={question}
          lay={shown}
          scale={scale}
          unit={unit}
          mark={mark}
          title={title}
          chosen={chosen}
          pins={pins}
          wish={drag && drag.there !== drag.wish ? drag.wish : null}
        />
      )}
    </div>
  );
}
