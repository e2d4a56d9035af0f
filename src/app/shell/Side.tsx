/** What stands beside the grid. Each part opens and closes; those that are open share the height. */
import { lazy, type ReactNode, Suspense, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { Drawing } from "../drawing/Drawing.tsx";
import { Working } from "../working/Working.tsx";

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
  return (
    <aside className="side" aria-label="Beside the grid">
      <Part name="Drawing" open>
        <Drawing {...common} held={held} onHold={setHeld} last={last} />
      </Part>
      <Part name="Working" open>
        <Working {...common} />
      </Part>
      <Part name="What if">
        <Suspense>
          <WhatIf store={store} place={place} />
        </Suspense>
      </Part>
    </aside>
  );
}

function Part({ name, open = false, children }: { name: string; open?: boolean; children: ReactNode }) {
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
          {children}
        </div>
      )}
    </section>
  );
}
