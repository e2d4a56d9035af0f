/** The drawing of the selected cell, or of the cell that is pinned. */
import { phrase } from "../../../functions/phrase.ts";
import "./drawing.css";
import { lazy, memo, type RefObject, Suspense, useEffect, useMemo, useRef, useState } from "react";
import type { Shape } from "../../../functions/drawing/shapes.ts";
import { markSize } from "../../../functions/fractions.ts";
import type { Place } from "../../book/address.ts";
import { nameFor } from "../../book/names.ts";
import {
  canWear,
  type Drawn,
  drawable,
  drawnAt,
  subjectOf,
  undrawnAt,
  type WornAt,
  wornAt,
} from "../../engine/drawn.ts";
import type { Engine } from "../../engine/engine.ts";
import { cellText, labelOf } from "../../engine/label.ts";
import { pictureOf } from "../../engine/picture.ts";
import { drawingInWords } from "../../engine/picture-words.ts";
import { pieceNotes, withNotes } from "../../engine/piece-notes.ts";
import { ROLE_WORDS } from "../../engine/roles.ts";
import type { Store } from "../../store/store.ts";
import { Follower } from "../following/Follower.tsx";
import { useAfterPaint } from "../following/use-after-paint.ts";
import { answeredAt } from "../lay/asked.ts";
import { loadLayBoard } from "../lay/load-board.ts";
import { within } from "../store-hooks.ts";
import { differences } from "./differences.ts";
import { AS_FLAT, type Manner, MannerChoice, seenWords, shapesIn } from "./manner.tsx";
import { Window } from "./Window.tsx";

// It comes when a lay is drawn first, or soon after the start.
const LayBoard = lazy(async () => ({ default: (await loadLayBoard()).LayBoard }));

/** Which cell is drawn when it is not the chosen one. */
export interface Drawings {
  /** The name of the cell that is held, "" for the chosen one. */
  readonly held: string;
  readonly onHold: (name: string) => void;
  /** The cell that was drawn last: it stays while a cell without a drawing is chosen. */
  readonly last: RefObject<Place | null>;
}

/** A drawn cell as it is spoken of: its name, else its label, else its address. */
const calledBy = (engine: Engine, { place, address }: Pick<Drawn, "place" | "address">): string =>
  nameFor(engine.book, place, null) ?? labelOf(engine.book, place) ?? address;

const calledAt = (engine: Engine, place: Place): string =>
  nameFor(engine.book, place, null) ?? cellText(engine.book, place);

interface Props extends Drawings {
  readonly store: Store;
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  /** Prints what a cell holds. */
  readonly onPrint: (what: "pattern" | "lay", place: Place) => void;
}

export function Drawing(props: Props) {
  const { seen, isBehind } = useAfterPaint(props.store, props.place);
  return (
    <Follower isBehind={isBehind}>
      <Latest {...props} {...seen} />
    </Follower>
  );
}

const Latest = memo(function Latest(props: Props & { revision: number }) {
  const { store, place, onPlace, onPrint, held, onHold, last } = props;
  const { engine } = store;
  const named = drawable(store.shown);
  const chosen = within(store.shown, place);
  const subject = named.find(({ name }) => name === held)?.place ?? subjectOf(engine, chosen, last.current);
  const drawn = subject && drawnAt(engine, subject);
  const undrawn = [chosen, subject].find((one) => one && undrawnAt(engine, one));
  const [manner, setManner] = useState<Manner>(AS_FLAT);
  const wears = subject ? canWear(engine, subject) : "no";
  // A piece that may be no skirt is drawn flat until it is chosen itself to be drawn as worn.
  const [asIf, setAsIf] = useState("");
  const asked = wears === "yes" || (drawn !== null && asIf === drawn.address);
  const shownManner: Manner = asked ? manner : { ...manner, as: "flat" };
  const garment = subject && wears !== "no" && shownManner.as === "worn" ? wornAt(engine, subject) : null;
  const choose = (next: Manner) => {
    setManner(next);
    setAsIf(next.as === "worn" && drawn ? drawn.address : "");
  };
  const shapes = garment ? shapesIn(garment.worn, manner) : drawn && labelled(engine, drawn);
  const shown = drawn && `${drawn.address} ${garment ? manner.seen : "flat"}`;
  const kept = useRef<{ what: string; shapes: readonly Shape[] } | null>(null);
  useEffect(() => {
    if (subject) last.current = subject;
    if (shown && shapes && !store.trying) kept.current = { what: shown, shapes };
  });

  const { unit, mark } = store.shown;
  const before = store.trying && kept.current?.what === shown ? kept.current : null;
  const { decimal } = store.shown;
  // While a figure slides, what it is compared with stays the same.
  const ghost = useMemo(
    () => before && pictureOf(before.shapes, { unit, mark, ...(decimal && { decimal }) }),
    [before, unit, mark, decimal],
  );
  const changes = before && shapes ? differences(before.shapes, shapes, markSize(mark, unit) / 2) : [];
  const picture = shapes && pictureOf([...shapes, ...changes], store.shown);
  const other = drawn && engine.address(drawn.place) !== engine.address(chosen);
  const laid = drawn && answeredAt(store, drawn.place);
  const printed = laid ? "lay" : drawn && engine.view(drawn.place).kind === "piece" ? "pattern" : null;
  return (
    <div className="drawing">
      <div className="drawing-head">
        <label>
          <span>{phrase`Draw`}</span>
          <select value={held} onChange={(event) => onHold(event.target.value)}>
            <option value="">{phrase`Selected cell, else the last drawn`}</option>
            {named.map(({ name }) => (
              <option key={name} value={name}>
                {phrase`Pinned: ${name}`}
              </option>
            ))}
          </select>
        </label>
        {drawn && (
          <p className="drawing-what">
            {other ? (
              <button type="button" className="link" onClick={() => onPlace(drawn.place)}>
                {calledBy(engine, drawn)}
              </button>
            ) : (
              <b>{calledBy(engine, drawn)}</b>
            )}{" "}
            {drawn.shown}
          </p>
        )}
        {drawn && printed && (
          <button type="button" className="quiet" onClick={() => onPrint(printed, drawn.place)}>
            {phrase`Print`}
            <span className="unseen">{printed === "lay" ? phrase` this lay` : phrase` this pattern`}</span>
          </button>
        )}
        {wears !== "no" && !laid && <MannerChoice manner={shownManner} onManner={choose} />}
      </div>
      {undrawn && (
        <p className="look" role="status">
          {phrase`${calledAt(engine, undrawn)} was not drawn: ${undrawnAt(engine, undrawn)}`}
        </p>
      )}
      {subject && subject !== undrawn && !drawn && (
        <Why engine={engine} subject={subject} onPlace={onPlace} />
      )}
      {laid ? (
        <Suspense>
          <LayBoard store={store} place={drawn.place} />
        </Suspense>
      ) : drawn && picture ? (
        <Window
          key={shown}
          picture={picture}
          ghost={ghost}
          unit={unit}
          decimal={store.shown.decimal}
          title={
            garment
              ? phrase`${calledBy(engine, garment)} as worn, seen from ${seenWords(manner)}`
              : phrase`Drawing of ${calledBy(engine, drawn)}, ${drawn.shown}`
          }
          description={garment ? garment.worn.says : drawingInWords(shapes ?? [], store.shown)}
        >
          {garment ? <Assumed garment={garment} subject={drawn.address} /> : <Legend roles={picture.roles} />}
        </Window>
      ) : subject ? null : (
        <p className="empty">{phrase`Nothing to draw. Select a cell that holds a piece, a curve or a lay; its drawing stays here while you change other cells.`}</p>
      )}
    </div>
  );
});

/** A piece's drawing has on it what a printed pattern piece has: name, how many, cloth, wearer and day. */
const labelled = (engine: Engine, drawn: Drawn): readonly Shape[] =>
  drawn.isOfValue && engine.view(drawn.place).kind === "piece"
    ? withNotes(drawn.shapes, pieceNotes(engine, drawn.place, calledBy(engine, drawn)))
    : drawn.shapes;

interface WhyProps {
  readonly engine: Engine;
  readonly subject: Place;
  readonly onPlace: (place: Place) => void;
}

/** Why a cell that should have a drawing has none. */
function Why({ engine, subject, onPlace }: WhyProps) {
  const { problem, name } = engine.view(subject);
  const called = name ?? engine.address(subject);
  if (!problem) return <p className="empty">{phrase`${called} has no shape to draw with these values.`}</p>;
  if (problem.is === "pending") return <p role="status">{problem.sentence}.</p>;
  return (
    <p>
      <span className="look">{phrase`${called} cannot be drawn: ${problem.sentence}`}</span>{" "}
      <button type="button" className="link" onClick={() => onPlace(problem.from)}>
        {engine.address(problem.from)}
      </button>
    </p>
  );
}

/** What the views show, in words, and what is not known from the arguments. */
function Assumed({ garment, subject }: { garment: WornAt; subject: string }) {
  const { worn, called, address, asIf } = garment;
  const [hem = "", ...rest] = worn.says.split("; ");
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll
    <section className="worn-words" aria-label={phrase`What is drawn`} tabIndex={0}>
      <p>{`${asIf ? phrase`Drawn as if worn at the waist. ` : ""}${hem[0]!.toUpperCase()}${hem.slice(1)}.`}</p>
      <p className="aside">
        {address !== subject && phrase`Of ${called}, without allowances. `}
        {worn.measured.length > 0 && phrase`The figure has ${worn.measured.join(", ")}. `}
        {worn.assumed.length > 0 && phrase`Assumed: ${worn.assumed.join("; ")}.`}
      </p>
      <p>{`${rest[0]![0]!.toUpperCase()}${rest.join("; ").slice(1)}`}</p>
    </section>
  );
}

function Legend({ roles }: { roles: readonly (keyof typeof ROLE_WORDS)[] }) {
  return (
    <ul className="legend" aria-label={phrase`Lines of the drawing`}>
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
