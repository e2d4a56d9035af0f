/** From tape to cut: how the selected cell's value is calculated, then each cell it depends on. */
import { phrase } from "../../../functions/phrase.ts";
import "./working.css";
import { Fragment, memo } from "react";
import type { Place } from "../../book/address.ts";
import { nameFor } from "../../book/names.ts";
import { dependents } from "../../engine/dependents.ts";
import type { Engine } from "../../engine/engine.ts";
import { estimateText } from "../../engine/estimates.ts";
import { chainPlaces, explain } from "../../engine/explain.ts";
import { fittedText } from "../../engine/fitted-text.ts";
import { cellText, labelOf } from "../../engine/label.ts";
import { laidText } from "../../engine/laid.ts";
import { laysBelowText } from "../../engine/lays-below.ts";
import { exact } from "../../engine/show.ts";
import type { Store } from "../../store/store.ts";
import { Follower } from "../following/Follower.tsx";
import { useAfterPaint } from "../following/use-after-paint.ts";
import { within } from "../store-hooks.ts";
import { CallSteps } from "./CallSteps.tsx";

interface Props {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export function Working(props: Props) {
  const { seen, isBehind } = useAfterPaint(props.store, props.place);
  return (
    <Follower isBehind={isBehind}>
      <Chain {...props} {...seen} />
    </Follower>
  );
}

const Chain = memo(function Chain({ store, place, onPlace, revision }: Props & { revision: number }) {
  const { engine } = store;
  const [own, ...rest] = chainPlaces(engine, within(store.shown, place));
  if (!own || engine.view(own).typed === "") {
    return <p className="empty">{phrase`Select a cell with a value to see how it is calculated.`}</p>;
  }
  const worked = rest.filter((one) => engine.view(one).worked);
  const typed = rest.filter((one) => !engine.view(one).worked);
  return (
    <div className="working">
      <Section engine={engine} place={own} revision={revision} />
      <Uses engine={engine} place={own} onPlace={onPlace} />
      {rest.length > 0 && <p className="rests">{phrase`Depends on`}</p>}
      {worked.map((one) => (
        <Section
          key={engine.address(one)}
          engine={engine}
          place={one}
          revision={revision}
          onPlace={onPlace}
        />
      ))}
      {typed.length > 0 && (
        <section className="worked" aria-label={phrase`Measured and entered`}>
          <h3>{phrase`Measured and entered`}</h3>
          <ul className="tape">
            {typed.map((one) => {
              const { name, typed: text, kind, shown } = engine.view(one);
              const address = engine.address(one);
              const called = name ?? labelOf(engine.book, one) ?? address;
              return (
                <li key={address}>
                  <button type="button" className="link" onClick={() => onPlace(one)}>
                    {called}
                  </button>
                  {called !== address && <span className="worked-address">{address}</span>}
                  <span className={valueClass(shown)} title={exact(engine.value(one), kind, engine.book)}>
                    {text === "" ? phrase`blank` : shown}
                  </span>
                </li>
              );
            })}
          </ul>
        </section>
      )}
    </div>
  );
});

interface SectionProps {
  readonly engine: Engine;
  readonly place: Place;
  readonly revision: number;
  /** Left out for the chosen cell itself. */
  readonly onPlace?: (place: Place) => void;
}

/** One cell's working. Each is worked on its own, so that what is typed meanwhile need not wait for all. */
const Section = memo(function Section({ engine, place, onPlace }: SectionProps) {
  const { name, label, address, typed, shown, kind, problem, parts, calls } = explain(engine, place);
  const called = name ?? label ?? address;
  const from = problem && engine.address(problem.from);
  const { origin } = engine.view(place);
  const laid = origin ? laidText(origin) : onPlace ? "" : laysBelowText(engine, place);
  const estimate = estimateText(engine, place);
  const fitted = fittedText(engine, place);
  return (
    <section className="worked" aria-label={phrase`Working of ${called}`}>
      <h3>
        {onPlace ? (
          <button type="button" className="link" onClick={() => onPlace(place)}>
            {called}
          </button>
        ) : (
          called
        )}
        <span className={valueClass(shown)} title={exact(engine.value(place), kind, engine.book)}>
          {shown}
        </span>
      </h3>
      {called !== address && <p className="worked-address">{address}</p>}
      <p className="formula">{typed}</p>
      {laid && <p className="worked-laid">{laid}</p>}
      {estimate && <p className="worked-laid">{estimate}</p>}
      {fitted && <p className="worked-laid">{fitted}</p>}
      {problem && (
        <p className={problem.is === "pending" ? undefined : "look"}>
          {problem.sentence}
          {from && from !== address && phrase` (in ${from})`}
        </p>
      )}
      {parts && <p className="step-words">{parts}</p>}
      {calls.map((call, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the calls of one formula stand in a fixed order
        <CallSteps key={i} call={call} />
      ))}
    </section>
  );
});

/** An answer with more letters than this is a sentence, not a value. */
const SENTENCE = 40;
/** One with at most so many stands on one line: "3 1/2" is never read as 3 and, beneath it, 1/2. */
const FIGURE = 22;

function valueClass(shown: string): string {
  if (shown.length > SENTENCE) return "worked-said";
  return shown.length > FIGURE ? "worked-value" : "worked-value worked-figure";
}

/** How many cells are named before the others are only counted. */
const MOST_USES = 12;

function Uses({ engine, place, onPlace }: Required<Omit<SectionProps, "revision">>) {
  const uses = dependents(engine.book, place);
  if (uses.length === 0) return null;
  return (
    <p className="uses">
      {phrase`Used by `}
      {uses.slice(0, MOST_USES).map((one, i) => (
        // The comma goes with the direction of the page, not with that of the name.
        <Fragment key={engine.address(one)}>
          {i > 0 && ", "}
          <button type="button" className="link" onClick={() => onPlace(one)}>
            {nameFor(engine.book, one, place.page) ?? cellText(engine.book, one)}
          </button>
        </Fragment>
      ))}
      {uses.length > MOST_USES && phrase` and ${uses.length - MOST_USES} more cells`}
    </p>
  );
}
