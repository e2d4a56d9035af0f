/** The sheets one by one, with the map of a pattern: stepped through with buttons, arrow keys, a swipe or a press on the map. */

import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { MapView } from "./MapView.tsx";
import { tileBeside } from "./page-map.ts";
import type { MadeDocument } from "./protocol.ts";
import { SheetView } from "./SheetView.tsx";
import type { SheetPicture } from "./sheet-picture.ts";

interface Props {
  readonly made: MadeDocument | null;
  /** Whether there is no document: the sheets of the last one are gone. */
  readonly isRefused: boolean;
  readonly sheet: number;
  readonly onSheet: (sheet: number) => void;
  readonly picture: { readonly sheet: number; readonly picture: SheetPicture } | null;
}

/** A finger that moves this far across, in pixels, turns to the next sheet. */
const SWIPE = 40;

export function Preview({ made, isRefused, sheet, onSheet, picture }: Props) {
  const [isLarge, setIsLarge] = useState(false);
  const down = useRef<readonly [x: number, y: number] | null>(null);
  const last = (made?.sheets ?? 1) - 1;
  const maps = made?.maps ?? [];
  const own = maps.find(({ tiles }) => tiles.some((tile) => tile.sheet === sheet));
  /** The map of the drawing that the sheet belongs to; beside a first sheet that of the only drawing. */
  const map = own ?? (maps.length === 1 ? maps[0] : undefined);
  const titleOf = (number: number): string => {
    const tile = maps.flatMap(({ tiles }) => tiles).find((one) => one.sheet === number);
    return tile
      ? phrase`Sheet ${number + 1} of ${last + 1}: ${tile.name}`
      : phrase`Sheet ${number + 1} of ${last + 1}`;
  };
  const turn = (to: number | null) => {
    if (made && to !== null && to >= 0 && to <= last) onSheet(to);
  };
  /** Up or down on the map where the sheet stands on it, else to the sheet before or behind. */
  const along = (by: 1 | -1): number | null => (own ? tileBeside(own, sheet, by) : sheet + by);
  const onKeyDown = (event: KeyboardEvent) => {
    const pages: Record<string, number | null> = {
      PageUp: sheet - 1,
      PageDown: sheet + 1,
      Home: 0,
      End: last,
    };
    // An enlarged sheet is moved with the arrows.
    const arrows: typeof pages = isLarge
      ? {}
      : { ArrowLeft: sheet - 1, ArrowRight: sheet + 1, ArrowUp: along(-1), ArrowDown: along(1) };
    const to = { ...pages, ...arrows }[event.key];
    if (to === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    turn(to);
  };
  const onPointerUp = ({ clientX, clientY }: PointerEvent) => {
    const from = down.current;
    down.current = null;
    if (!from || isLarge) return;
    const [dx, dy] = [clientX - from[0], clientY - from[1]];
    if (Math.abs(dx) > SWIPE && Math.abs(dx) > 1.5 * Math.abs(dy)) turn(sheet - Math.sign(dx));
  };

  return (
    <section className="print-preview" aria-label={phrase`Preview`}>
      <div className="print-steps">
        <button
          type="button"
          aria-disabled={!made || sheet === 0}
          onClick={() => turn(sheet - 1)}
        >{phrase`Previous`}</button>
        <span role="status">{made && titleOf(sheet)}</span>
        <button
          type="button"
          aria-disabled={!made || sheet >= last}
          onClick={() => turn(sheet + 1)}
        >{phrase`Next`}</button>
        {last > 1 && (
          <input
            type="range"
            aria-label={phrase`Go to a sheet`}
            aria-valuetext={titleOf(sheet)}
            min={1}
            max={last + 1}
            value={sheet + 1}
            onChange={({ target }) => turn(Number(target.value) - 1)}
          />
        )}
        <button
          type="button"
          aria-pressed={isLarge}
          onClick={() => setIsLarge(!isLarge)}
        >{phrase`Enlarge`}</button>
      </div>
      <div className="print-desk">
        {/* biome-ignore lint/a11y/useSemanticElements: a group of one picture is no field set */}
        <div
          className={`print-paper${isLarge ? " print-paper-large" : ""}${made ? "" : " print-paper-old"}`}
          role="group"
          aria-label={phrase`The sheet; arrow keys go from sheet to sheet`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it is scrolled and stepped with the keyboard
          tabIndex={0}
          onKeyDown={onKeyDown}
          onPointerDown={(event) => {
            down.current = event.pointerType === "mouse" ? null : [event.clientX, event.clientY];
          }}
          onPointerUp={onPointerUp}
          onPointerCancel={() => {
            down.current = null;
          }}
        >
          {picture && !isRefused && <SheetView picture={picture.picture} label={titleOf(picture.sheet)} />}
        </div>
        {map && <MapView map={map} sheet={sheet} onSheet={turn} />}
      </div>
    </section>
  );
}
