/** What stands beside the grid. Each part opens and closes; those that are open share the height. */
import "./side.css";
import { lazy, type ReactNode, Suspense, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { Drawing } from "../drawing/Drawing.tsx";
import { Guard } from "../faults/Guard.tsx";
import { useRevision } from "../store-hooks.ts";
import { Working } from "../working/Working.tsx";
import { Divider } from "./Divider.tsx";

/** It comes when it is opened first. */
const WhatIf = lazy(() => import("../whatif/WhatIf.tsx").then((module) => ({ default: module.WhatIf })));

interface Props {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export function Side({ store, place, onPlace }: Props) {
  const [held, setHeld] = useState("");
  const last = useRef<Place | null>(null);
  const common = { store, place, onPlace };
  const of = `${useRevision(store)} ${place.page} ${place.row} ${place.column}`;
  return (
    <aside className="side" aria-label="Drawing, working and what if">
      <Divider />
      <Part name="Drawing" of={of} open>
        <Drawing {...common} held={held} onHold={setHeld} last={last} />
      </Part>
      <Part name="Working" of={of} open>
        <Working {...common} />
      </Part>
      <Part name="What if" of={of}>
        <Suspense>
          <WhatIf store={store} place={place} />
        </Suspense>
      </Part>
    </aside>
  );
}

interface PartProps {
  readonly name: string;
  readonly of: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}

function Part({ name, of, open = false, children }: PartProps) {
  const [shown, setShown] = useState(open);
  const id = `part-${name.replace(" ", "-").toLowerCase()}`;
  return (
    <section className={shown ? "part part-open" : "part"} aria-label={name}>
      <h2>
        <button
          type="button"
          className="part-name"
          aria-expanded={shown}
          aria-controls={shown ? id : undefined}
          onClick={() => setShown(!shown)}
        >
          {name}
        </button>
      </h2>
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
