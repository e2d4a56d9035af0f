/** What stands beside the grid. Each part opens and closes; those that are open share the height. */
import "./side.css";
import { type ReactNode, Suspense, useCallback, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { withAllFunctions } from "../all-functions.ts";
import { Drawing } from "../drawing/Drawing.tsx";
import { Guard } from "../faults/Guard.tsx";
import { lazily } from "../faults/lazily.tsx";
import type { PrintFor } from "../print/choices.ts";
import { useRevision, useStable } from "../store-hooks.ts";
import { Working } from "../working/Working.tsx";
import { useAlone } from "./alone.ts";
import { Divider } from "./Divider.tsx";

/** It comes when it is opened first. */
const WhatIf = lazily(() =>
  withAllFunctions(() => import("../whatif/WhatIf.tsx")).then((module) => module.WhatIf),
);

interface Props {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  readonly onPrint: (wanted: PrintFor) => void;
}

export function Side({ store, place, onPlace, onPrint }: Props) {
  const [held, setHeld] = useState("");
  const last = useRef<Place | null>(null);
  const [room, setRoom] = useState<Room | null>(null);
  const common = { store, place, onPlace };
  const printDrawn = useStable((what: "pattern" | "lay", at: Place) => onPrint({ what, place: at }));
  const of = `${useRevision(store)} ${place.page} ${place.row} ${place.column}`;
  return (
    <aside
      className="side"
      aria-label="Drawing, working and what if"
      onKeyDown={(event) => {
        if (event.key === "Escape" && !event.defaultPrevented) setRoom(null);
      }}
    >
      <Divider />
      <Part name="Drawing" of={of} open room={room} onRoom={setRoom}>
        <Drawing {...common} held={held} onHold={setHeld} last={last} onPrint={printDrawn} />
      </Part>
      <Part
        name="Working"
        of={of}
        open
        room={room}
        onRoom={setRoom}
        onPrint={() => onPrint({ what: "working" })}
      >
        <Working {...common} />
      </Part>
      <Part name="What if" of={of} room={room} onRoom={setRoom}>
        <Suspense>
          <WhatIf store={store} place={place} />
        </Suspense>
      </Part>
    </aside>
  );
}

/** Where the parts stand under the grid, and one that is opened may be out of sight. */
const NARROW = matchMedia("(max-width: 56.25em)");

/** The part that has been given more room: the whole side, or the whole window. */
interface Room {
  readonly part: string;
  readonly all: "side" | "window";
}

interface PartProps {
  readonly name: string;
  readonly of: string;
  readonly open?: boolean;
  readonly room: Room | null;
  readonly onRoom: (room: Room | null) => void;
  /** Prints what the part shows. */
  readonly onPrint?: () => void;
  readonly children: ReactNode;
}

function Part({ name, of, open = false, room, onRoom, onPrint, children }: PartProps) {
  const [shown, setShown] = useState(open);
  const frame = useRef<HTMLElement>(null);
  const own = room?.part === name && shown ? room.all : null;
  const giveBack = useCallback(() => onRoom(null), [onRoom]);
  useAlone(frame, own === "window", giveBack);
  const id = `part-${name.replace(" ", "-").toLowerCase()}`;
  const turn = () => {
    if (own) onRoom(null);
    setShown(!shown);
    if (!shown && NARROW.matches) requestAnimationFrame(() => frame.current?.scrollIntoView());
  };
  return (
    <section
      ref={frame}
      className={`part${shown ? " part-open" : ""}${own ? ` part-${own}` : ""}`}
      aria-label={name}
    >
      <div className="part-head">
        <h2>
          <button
            type="button"
            className="part-name"
            aria-expanded={shown}
            aria-controls={shown ? id : undefined}
            onClick={turn}
          >
            {name}
          </button>
        </h2>
        {shown && onPrint && (
          <button type="button" className="quiet" onClick={onPrint}>
            Print<span className="unseen"> this {name.toLowerCase()}</span>
          </button>
        )}
        {shown &&
          (["side", "window"] as const).map((all) => (
            <button
              key={all}
              type="button"
              className={`quiet part-fill-${all}${own === all ? " part-fill-on" : ""}`}
              onClick={() => onRoom(own === all ? null : { part: name, all })}
            >
              {own === all ? "Usual size" : `Fill the ${all}`}
              <span className="unseen">
                {own === all ? " of" : " with"} {name}
              </span>
            </button>
          ))}
      </div>
      {shown && (
        <div className="part-body" id={id}>
          <Guard name={name} of={of}>
            {children}
          </Guard>
        </div>
      )}
    </section>
  );
}
