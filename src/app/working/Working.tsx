/** From tape to cut: how the chosen cell's figure came about, then each cell it rests on. */
import "./working.css";
import { memo } from "react";
import type { Place } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import { dependents } from "../../engine/dependents.ts";
import type { Engine } from "../../engine/engine.ts";
import { chain, type Working as Worked } from "../../engine/explain.ts";
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
  const [own, ...rest] = chain(engine, within(store.shown, place));
  if (!own || own.typed === "") {
    return <p className="empty">Choose a cell with a figure in it to see how it came about.</p>;
  }
  const worked = rest.filter(({ typed }) => isFormula(typed));
  const typed = rest.filter((one) => !isFormula(one.typed));
  const uses = dependents(store.shown, own.place).map((at) => ({ at, ...engine.view(at) }));
  return (
    <div className="working">
      <section className="worked" aria-label={`Working of ${own.name ?? own.address}`}>
        <h3>
          {own.name ?? own.address} <Value engine={engine} working={own} />
        </h3>
        <Body engine={engine} working={own} />
        {uses.length > 0 && (
          <p className="uses">
            {"Used by "}
            {uses.slice(0, 12).map(({ at, name }, i) => (
              <span key={engine.address(at)}>
                {i > 0 && ", "}
                <button type="button" className="link" onClick={() => onPlace(at)}>
                  {name ?? engine.address(at)}
                </button>
              </span>
            ))}
            {uses.length > 12 && ` and ${uses.length - 12} more cells`}
          </p>
        )}
      </section>
      {rest.length > 0 && <p className="rests">It rests on</p>}
      {worked.map((working) => (
        <section key={working.address} className="worked" aria-label={working.name ?? working.address}>
          <h3>
            <button type="button" className="link" onClick={() => onPlace(working.place)}>
              {working.name ?? working.address}
            </button>
            <Value engine={engine} working={working} />
          </h3>
          <Body engine={engine} working={working} />
        </section>
      ))}
      {typed.length > 0 && (
        <section className="worked" aria-label="Taken and chosen">
          <h3>Taken and chosen</h3>
          <ul className="tape">
            {typed.map((working) => (
              <li key={working.address}>
                <button type="button" className="link" onClick={() => onPlace(working.place)}>
                  {working.name ?? working.address}
                </button>
                {working.name && <span className="worked-address">{working.address}</span>}
                <Value engine={engine} working={working} />
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
});

function Value({ engine, working }: { engine: Engine; working: Worked }) {
  const { place, kind, shown, typed } = working;
  return (
    <span className="worked-value" title={exact(engine.value(place), kind, engine.book)}>
      {typed === "" ? "blank" : shown}
    </span>
  );
}

/** The formula, what is wrong with it, and each function at work in it. */
function Body({ engine, working }: { engine: Engine; working: Worked }) {
  const { name, address, typed, look, calls } = working;
  const from = look && engine.address(look.from);
  return (
    <>
      {name && <p className="worked-address">{address}</p>}
      <p className="formula">{typed}</p>
      {look && (
        <p className="look">
          {look.sentence}
          {from !== address && ` (in ${from})`}
        </p>
      )}
      {calls.map((call, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the calls of one formula stand in a fixed order
        <CallSteps key={i} call={call} />
      ))}
    </>
  );
}
