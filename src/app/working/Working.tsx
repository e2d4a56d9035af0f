/** From tape to cut: how the chosen cell's figure came about, then each cell it rests on. */
import "./working.css";
import { memo } from "react";
import type { Place } from "../../book/address.ts";
import { chain } from "../../engine/explain.ts";
import { exact } from "../../engine/show.ts";
import type { Store } from "../../store/store.ts";
import { useLateRevision, within } from "../shell/follow.ts";
import { CallSteps } from "./CallSteps.tsx";

interface Props {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export function Working(props: Props) {
  return <Chain {...props} revision={useLateRevision(props.store)} />;
}

const Chain = memo(function Chain({ store, place, onPlace }: Props & { revision: number }) {
  const { engine } = store;
  const list = chain(engine, within(store.shown, place));
  const worked = list.filter(({ typed }) => typed.startsWith("="));
  const tape = list.filter(({ typed }) => !typed.startsWith("="));
  const own = list[0]!;
  if (own.typed === "")
    return <p className="empty">Choose a cell with a figure in it to see how it came about.</p>;
  return (
    <div className="working">
      {worked.map((working, i) => (
        <section key={working.address} className="worked" aria-label={working.name ?? working.address}>
          <h3>
            {i === 0 ? (
              <strong>{working.name ?? working.address}</strong>
            ) : (
              <button type="button" className="link" onClick={() => onPlace(working.place)}>
                {working.name ?? working.address}
              </button>
            )}
            <span
              className="worked-value"
              title={exact(engine.value(working.place), working.kind, store.shown)}
            >
              {working.shown}
            </span>
          </h3>
          {working.name && <p className="worked-address">{working.address}</p>}
          <p className="formula">{working.typed}</p>
          {working.look && (
            <p className="look">
              {working.look.sentence}
              {engine.address(working.look.from) !== working.address &&
                ` (in ${engine.address(working.look.from)})`}
            </p>
          )}
          {working.calls.map((call, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the calls of one formula stand in a fixed order
            <CallSteps key={k} call={call} />
          ))}
        </section>
      ))}
      {tape.length > 0 && (
        <section className="worked" aria-label="As typed">
          <h3>
            <strong>{worked.length > 0 ? "From the tape and by choice" : "As typed"}</strong>
          </h3>
          <ul className="tape">
            {tape.map(({ address, name, shown, place: at, typed }) => (
              <li key={address}>
                <button type="button" className="link" onClick={() => onPlace(at)}>
                  {name ?? address}
                </button>
                <span className="worked-address">{name && address}</span>
                <span className="worked-value">{typed === "" ? "blank" : shown}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
});
