/** What stands beside a cell while it is typed in: the hint of the argument, and the names, functions or choices that fit. */

import "../function-words.ts";
import {
  lazy,
  Suspense,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { cellText } from "../../engine/label.ts";
import { loadArgumentPicture } from "../measured/load-picture.ts";
import { type ArgumentHelp, argumentHelp } from "./argument-help.ts";
import { type Box, beside, type Spot } from "./beside.ts";
import { type Draft, type EditSession, samePlace } from "./edit-session.ts";
import { OfferList } from "./OfferList.tsx";

/** A hint without its drawing is a hint too. */
const ArgumentPicture = lazy(() =>
  loadArgumentPicture().then(
    (module) => ({ default: module.ArgumentPicture }),
    () => ({ default: () => null }),
  ),
);

/** In rem. */
const WIDE = 26.25;

interface Props {
  readonly session: EditSession;
  /** The selected cell. */
  readonly selected: Place;
}

export function TypingHelp({ session, selected }: Props) {
  useSyncExternalStore(session.subscribe, session.version);
  const [, setMoved] = useState(0);
  const onMoved = useCallback(() => setMoved((count) => count + 1), []);
  const box = useRef<HTMLDivElement>(null);
  const [spot, setSpot] = useState<Spot | null>(null);
  const { draft, caret, offers, store } = session;
  const hint = caret?.call ? argumentHelp(caret.call, caret.argument, store.shown.unit) : null;
  const away = draft?.where === "bar" && !samePlace(draft.place, selected);
  const open = draft !== null && (hint !== null || offers.all.length > 0 || away);

  useEffect(() => {
    if (!open) return;
    addEventListener("scroll", onMoved, true);
    return () => removeEventListener("scroll", onMoved, true);
  }, [open, onMoved]);

  // With each letter the field may grow and the text here change.
  useLayoutEffect(() => {
    if (!open || !draft || !box.current) return;
    const { offsetWidth, scrollHeight } = box.current;
    const next = beside(cellOf(draft, session), offsetWidth, scrollHeight + 2, gridArea());
    setSpot((old) =>
      old && old.left === next.left && old.top === next.top && old.height === next.height ? old : next,
    );
  });

  if (!open) return null;
  const style = {
    width: `min(${WIDE}rem, calc(100vw - 8px))`,
    left: spot?.left,
    top: spot?.top,
    maxHeight: spot?.height,
  };
  return (
    <div ref={box} className="typing-help" style={style}>
      {away && (
        <p className="hint-away">{phrase`This formula belongs to ${cellText(store.shown, draft.place)}. Where it waits for a value, press a cell to put it in.`}</p>
      )}
      {hint && <Hint hint={hint} onMoved={onMoved} />}
      <OfferList session={session} />
    </div>
  );
}

/** Where the cell that is typed in is on the screen, the field over it included; null when it is not in sight. */
function cellOf({ place, where, field }: Draft, session: EditSession): Box | null {
  const cell = session.grid?.boxOf(place) ?? null;
  if (where === "bar") return cell;
  const own = field.getBoundingClientRect();
  if (!cell) return own;
  return {
    left: Math.min(cell.left, own.left),
    top: Math.min(cell.top, own.top),
    right: Math.max(cell.right, own.right),
    bottom: Math.max(cell.bottom, own.bottom),
  };
}

/** The part of the window below the letters of the columns. */
function gridArea(): Box {
  const head = document.querySelector(".ht_clone_top")?.getBoundingClientRect();
  return { left: 4, top: (head?.bottom ?? 0) + 2, right: innerWidth - 4, bottom: innerHeight - 4 };
}

function Hint({ hint, onMoved }: { hint: ArgumentHelp; onMoved: () => void }) {
  const { name, forms, meant, tooMany } = hint;
  return (
    <div id="argument-hint" className="argument-hint" role="status">
      {forms.map(({ takes, current }, form) => (
        <p key={takes.map(({ text }) => text).join()} className="hint-call">
          {form > 0 && phrase`or `}
          {name}(
          {takes.map(({ text }, i) => (
            <span key={text}>
              {i > 0 && "; "}
              {i === current ? <strong>{text}</strong> : text}
            </span>
          ))}
          )
        </p>
      ))}
      <div className="hint-body">
        <Suspense>
          <ArgumentPicture name={name} meant={meant} onShown={onMoved} />
        </Suspense>
        <div>
          {meant.map((one) => (
            <div key={one.name}>
              <p>
                <b>{one.name}: </b>
                {one.about}
              </p>
              {one.values && <p className="hint-values">{one.values}</p>}
            </div>
          ))}
          {tooMany && <p>{tooMany}</p>}
          <p className="hint-key">
            <kbd>F1</kbd>
            {phrase` all about ${name}`}
          </p>
        </div>
      </div>
    </div>
  );
}
