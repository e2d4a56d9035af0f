/** The lay of a cell on its cloth: looked for, laid by hand, pinned, and set beside another. */
import { lengthText } from "../../engine/show.ts";
import "./lay.css";
import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { LayQuestion, Placement } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { laidSign } from "../../engine/laid.ts";
import { answerFrom } from "../../lay/answer.ts";
import { isFound, toKeep } from "../../lay/desk.ts";
import { Hand } from "../../lay/hand.ts";
import type { Store } from "../../store/store.ts";
import { useLateRevision } from "../store-hooks.ts";
import { copyKey } from "./arrange.ts";
import { type Answered, answeredAt } from "./asked.ts";
import { asksBeside, type Choice, ChooseBeside, Figures, laidBeside, Still } from "./Beside.tsx";
import { backgroundOf } from "./background.ts";
import { HandTools } from "./HandTools.tsx";
import { Joins } from "./Joins.tsx";
import { LaySearch } from "./LaySearch.tsx";
import { LayTable } from "./LayTable.tsx";
import { fitOf, sizeOf, useRoom } from "./room.ts";
import { sessionOf } from "./search-session.ts";
import { coverText, leftOver, missingText, originSentence } from "./words.ts";

interface Props {
  readonly store: Store;
  readonly place: Place;
}

export function LayBoard({ store, place }: Props) {
  useLateRevision(store);
  const asked = answeredAt(store, place);
  if (!asked) return null;
  // Another question is another table: nothing that was moved or pinned is carried over.
  return <Table key={asked.hash} store={store} place={place} asked={asked} />;
}

/** What the maker has done with a lay by hand. */
interface Work {
  /** The copies as they were put; null while none was moved. */
  readonly moved: readonly Placement[] | null;
  readonly pins: ReadonlySet<string>;
  readonly chosen: string | null;
}

const UNTOUCHED: Work = { moved: null, pins: new Set(), chosen: null };

function Table({ store, place, asked }: Props & { asked: Answered }) {
  const { question, hash, lay: answer } = asked;
  const { unit } = store.shown;
  const { engine } = store;
  const cell = engine.view(place).name ?? engine.address(place);
  const say = (length: number) => lengthText(length, store.shown);
  const [{ moved, pins, chosen }, setWork] = useState(UNTOUCHED);
  const [beside, setBeside] = useState<Choice>(null);
  const [nearer, setNearer] = useState(1);
  const session = sessionOf(store);
  const searching = useSyncExternalStore(session.subscribe, session.state);
  const hand = useMemo(() => new Hand(question), [question]);

  // The pieces or the cloth have changed: what is looked for would answer nobody.
  useEffect(() => {
    if (searching.running && searching.cell === cell && searching.hash !== hash) session.stop();
  }, [session, searching, cell, hash]);

  const { page, row, column } = place;
  useEffect(() => {
    const background = backgroundOf(store);
    background.lookAt({ page, row, column }, asksBeside(question, beside));
    return () => background.lookAt(null);
  }, [store, page, row, column, question, beside]);

  const pinnedLay = searching.hash === hash ? searching.apart : null;
  const lay = moved ? answerFrom(question, moved) : (pinnedLay ?? answer);
  const own = lay !== answer;
  const pinned = lay.placements.filter((one) => pins.has(copyKey(one)));
  const laid = { name: cell, question, lay };
  const other = laidBeside(store, laid, beside);
  const sizes = [laid, ...(other ? [other] : [])].map((one) => sizeOf(one.question, one.lay));
  const tables = useRef<HTMLDivElement>(null);
  const room = useRoom(tables);
  const fit = room && fitOf(sizes, room);
  const change = (next: Partial<Work>) => setWork((old) => ({ ...old, ...next }));
  const back = () => {
    change({ moved: null });
    session.forget();
  };
  const keep = () => {
    store.keepLay(hash, toKeep({ ...lay, origin: { by: "hand" } }));
    back();
  };

  return (
    <div className="lay-board">
      <p className="lay-what">
        <b>{say(lay.lengths.reduce((sum, length) => sum + length, 0))}</b> of {clothText(question, say)},{" "}
        {coverText(lay, store.shown.decimal)}, {leftOver(question, lay, unit, store.shown.decimal)} left over.{" "}
        <span className="lay-origin">
          {!own && <span aria-hidden="true">{laidSign(answer.origin ?? { by: "quick" })} </span>}
          {own
            ? "Your own arrangement; the book does not keep it yet."
            : originSentence(answer.origin, isFound(question, store.shown.lays))}
        </span>
      </p>
      {lay.missing.length > 0 && <p className="look">{missingText(question, lay)}</p>}
      <LaySearch
        store={store}
        asked={asked}
        cell={cell}
        pinned={pinned}
        start={lay}
        onBegin={() => change({ moved: null })}
      />
      <div className={fit?.abreast ? "lay-tables lay-abreast" : "lay-tables"} ref={tables}>
        {fit && (
          <>
            <LayTable
              question={question}
              lay={lay}
              hand={hand}
              scale={fit.scale * nearer}
              rule={store.shown}
              name={other ? cell : null}
              title={`The lay of ${cell}: ${lay.placements.length} pieces on ${clothText(question, say)}`}
              chosen={chosen}
              pins={pins}
              onChoose={(key) => change({ chosen: key })}
              onMove={(placements) => change({ moved: placements })}
              onPin={(key) => change({ pins: toggled(pins, key) })}
            />
            {other && <Still store={store} laid={other} scale={fit.scale * nearer} />}
          </>
        )}
      </div>
      {fit && lay.missing.length > 0 && <Joins store={store} question={question} scale={fit.scale} />}
      <HandTools
        question={question}
        lay={lay}
        hand={hand}
        chosen={chosen}
        pins={pins}
        nearer={nearer}
        say={say}
        onNearer={setNearer}
        onChoose={(key) => change({ chosen: key })}
        onMove={(placements) => change({ moved: placements })}
        onPin={(key) => change({ pins: toggled(pins, key) })}
      />
      {own && (
        <p className="lay-row">
          <button type="button" onClick={keep}>
            Keep this lay
          </button>
          <button type="button" onClick={back}>
            Back to the book's lay
          </button>
          <span>{say(answer.lengths.reduce((sum, length) => sum + length, 0))} in the book's lay.</span>
        </p>
      )}
      <ChooseBeside
        store={store}
        place={place}
        own={laid}
        choice={beside}
        missing={beside !== null && !other}
        onChoose={setBeside}
      />
      {other && <Figures store={store} laid={[laid, other]} />}
    </div>
  );
}

function toggled(pins: ReadonlySet<string>, key: string): Set<string> {
  const next = new Set(pins);
  if (!next.delete(key)) next.add(key);
  return next;
}

const clothText = ({ cloths }: LayQuestion, say: (length: number) => string): string =>
  cloths.length === 1 ? `cloth ${say(cloths[0]!.width)} wide` : `${cloths.length} cloths in hand`;
