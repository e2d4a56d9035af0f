/** The drawing of the chosen cell, or of one that is held while others are changed. */
import "./drawing.css";
import { memo, type RefObject, useEffect, useRef } from "react";
import type { Shape } from "../../../functions/drawing.ts";
import type { Place } from "../../book/address.ts";
import type { Engine } from "../../engine/engine.ts";
import { laysAsked } from "../../engine/question.ts";
import type { Store } from "../../store/store.ts";
import { useLateRevision, within } from "../shell/follow.ts";
import { drawable, drawnAt, finishedPiece } from "./drawn.ts";
import { LaySearch } from "./LaySearch.tsx";
import { pictureOf, wordsOf } from "./picture.ts";
import { ROLE_WORDS } from "./roles.ts";
import { Window } from "./Window.tsx";

/** Which cell is drawn when it is not the chosen one. */
export interface Drawings {
  /** The name of the cell that is held, "" for the chosen one. */
  readonly held: string;
  readonly onHold: (name: string) => void;
  /** The cell that was drawn last: it stays while a cell without a drawing is chosen. */
  readonly last: RefObject<Place | null>;
}

interface Props extends Drawings {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export function Drawing(props: Props) {
  return <Latest {...props} revision={useLateRevision(props.store)} />;
}

const Latest = memo(function Latest(props: Props & { revision: number }) {
  const { store, place, onPlace, held, onHold, last } = props;
  const { engine } = store;
  const named = drawable(store.shown);
  const chosen = within(store.shown, place);
  const drawn = toDraw(engine, chosen, named.find(({ name }) => name === held)?.place, last.current);
  const kept = useRef<{ address: string; shapes: readonly Shape[] } | null>(null);
  useEffect(() => {
    if (!drawn) return;
    last.current = drawn.place;
    if (!store.trying) kept.current = drawn;
  });

  const picture = drawn && pictureOf(drawn.shapes, store.shown);
  const before = store.trying && kept.current?.address === drawn?.address ? kept.current : null;
  const other = drawn && engine.address(drawn.place) !== engine.address(chosen);
  const look = engine.view(chosen).look;
  // A lay on cloth in hand is not shortened: what matters there is whether it fits.
  const asked =
    drawn && laysAsked(engine, drawn.place).find(({ question }) => question.cloths[0]?.length === null);
  return (
    <div className="drawing">
      <div className="drawing-head">
        <label>
          <span>Draw</span>
          <select value={held} onChange={(event) => onHold(event.target.value)}>
            <option value="">the chosen cell</option>
            {named.map(({ name }) => (
              <option key={name} value={name}>
                always {name}
              </option>
            ))}
          </select>
        </label>
        {drawn && (
          <p className="drawing-what">
            {other ? (
              <button type="button" className="link" onClick={() => onPlace(drawn.place)}>
                {drawn.name ?? drawn.address}
              </button>
            ) : (
              <b>{drawn.name ?? drawn.address}</b>
            )}{" "}
            {drawn.shown}
          </p>
        )}
      </div>
      {look && !held && (!drawn || other) && <p className="look">{look.sentence}</p>}
      {drawn && picture ? (
        <>
          <Window
            key={drawn.address}
            picture={picture}
            ghost={before && pictureOf(before.shapes, store.shown)}
            unit={store.shown.unit}
            title={`Drawing of ${drawn.name ?? drawn.address}, ${drawn.shown}`}
            description={drawn.shapes
              .map((shape) => wordsOf(shape, store.shown))
              .filter(Boolean)
              .join("; ")}
          />
          <Legend roles={picture.roles} />
          {asked && <LaySearch store={store} asked={asked} cell={drawn.name ?? drawn.address} />}
        </>
      ) : (
        <p className="empty">
          Nothing to draw here. Choose a cell that makes a piece, a curve or a lay; it stays in sight while
          you change other cells.
        </p>
      )}
    </div>
  );
});

function toDraw(engine: Engine, chosen: Place, held: Place | undefined, last: Place | null) {
  if (held) return drawnAt(engine, held);
  const own = drawnAt(engine, chosen);
  if (own) return own;
  const other = last && last.page < engine.book.pages.length ? last : finishedPiece(engine);
  return other && drawnAt(engine, other);
}

function Legend({ roles }: { roles: readonly (keyof typeof ROLE_WORDS)[] }) {
  if (roles.length === 0) return null;
  return (
    <ul className="legend" aria-label="Lines of the drawing">
      {roles.map((role) => (
        <li key={role}>
          <svg width="40" height="10" aria-hidden="true">
            <path className={`line line-${role}`} d="M 1 5 H 39" />
          </svg>
          {ROLE_WORDS[role]}
        </li>
      ))}
    </ul>
  );
}
