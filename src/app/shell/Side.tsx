/** What stands beside the grid. Each part opens and closes; those that are open share the height. */
import { phrase } from "../../../functions/phrase.ts";
import "./side.css";
import { type ReactNode, Suspense, useCallback, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { withAllFunctions } from "../all-functions.ts";
import { Guard } from "../faults/Guard.tsx";
import { lazily } from "../faults/lazily.tsx";
import { browserClock } from "../following/after-paint.ts";
import type { PrintFor } from "../print/choices.ts";
import { useRevision, useStable } from "../store-hooks.ts";
import { useAlone } from "./alone.ts";
import { Divider } from "./Divider.tsx";

/** Waits for the grid to be painted: until then the line is the grid's. */
const painted = () => new Promise<void>((done) => browserClock.painted(done, 0));

const Drawing = lazily(async () => {
  await painted();
  return (await import("../drawing/Drawing.tsx")).Drawing;
});
const Working = lazily(async () => {
  await painted();
  return (await import("../working/Working.tsx")).Working;
});

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
      aria-label={phrase`Drawing, working and what if`}
      onKeyDown={(event) => {
        if (event.key === "Escape" && !event.defaultPrevented) setRoom(null);
      }}
    >
      <Divider />
      <Part id="drawing" name={phrase`Drawing`} of={of} open room={room} onRoom={setRoom}>
        <Suspense fallback={<p className="empty drawing-awaited">{phrase`The drawing is being loaded.`}</p>}>
          <Drawing {...common} held={held} onHold={setHeld} last={last} onPrint={printDrawn} />
        </Suspense>
      </Part>
      <Part
        id="working"
        name={phrase`Working`}
        of={of}
        open
        room={room}
        onRoom={setRoom}
        onPrint={() => onPrint({ what: "working" })}
        printWords={phrase`this working`}
      >
        <Suspense fallback={<p className="empty">{phrase`The working is being loaded.`}</p>}>
          <Working {...common} />
        </Suspense>
      </Part>
      <Part id="what-if" name={phrase`What if`} of={of} room={room} onRoom={setRoom}>
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
  readonly id: string;
  readonly name: string;
  readonly of: string;
  readonly open?: boolean;
  readonly room: Room | null;
  readonly onRoom: (room: Room | null) => void;
  /** Prints what the part shows. */
  readonly onPrint?: () => void;
  /** What is printed, as the button says it to a screen reader after "Print". */
  readonly printWords?: string;
  readonly children: ReactNode;
}

const FILL = { side: phrase`Fill the side`, window: phrase`Fill the window` } as const;

function Part(props: PartProps) {
  const { name, of, open = false, room, onRoom, onPrint, children } = props;
  const [shown, setShown] = useState(open);
  const frame = useRef<HTMLElement>(null);
  const own = room?.part === props.id && shown ? room.all : null;
  const giveBack = useCallback(() => onRoom(null), [onRoom]);
  useAlone(frame, own === "window", giveBack);
  const id = `part-${props.id}`;
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
            {phrase`Print`}
            <span className="unseen"> {props.printWords}</span>
          </button>
        )}
        {shown &&
          (["side", "window"] as const).map((all) => (
            <button
              key={all}
              type="button"
              className={`quiet part-fill-${all}${own === all ? " part-fill-on" : ""}`}
              onClick={() => onRoom(own === all ? null : { part: props.id, all })}
            >
              {own === all ? phrase`Usual size` : FILL[all]}
              <span className="unseen">{own === all ? phrase` of ${name}` : phrase` with ${name}`}</span>
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
