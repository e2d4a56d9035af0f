/** The lay of a cell on its cloth: looked for, laid by hand, pinned, and set beside another. */

import { phrase } from "../../../functions/phrase.ts";
import { cellKey } from "../../engine/label.ts";
import { lengthText } from "../../engine/show.ts";
import "./lay.css";
import { useEffect, useRef, useState } from "react";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { laidSign } from "../../engine/laid.ts";
import { isFound } from "../../lay/desk.ts";
import type { Store } from "../../store/store.ts";
import { handOn } from "../keyboard.ts";
import { useSaid } from "../spoken.ts";
import { type Answered, answersAt } from "./asked.ts";
import { asksBeside, type Choice, ChooseBeside, Figures, laidBeside, Still } from "./Beside.tsx";
import { backgroundOf } from "./background.ts";
import { HandTools } from "./HandTools.tsx";
import { Joins } from "./Joins.tsx";
import { LaySearch } from "./LaySearch.tsx";
import { LayTable } from "./LayTable.tsx";
import { fitOf, sizeOf, usePictureSpace } from "./picture-scale.ts";
import { quickLaysOf } from "./quick-lays.ts";
import { useLayByHand } from "./use-lay-by-hand.ts";
import { WhichLay } from "./WhichLay.tsx";
import { coverText, leftOver, missingText, originSentence } from "./words.ts";

interface Props {
  readonly store: Store;
  readonly place: Place;
}

export function LayBoard({ store, place }: Props) {
  const [which, setWhich] = useState("");
  const all = answersAt(store, place);
  const asked = all.find(({ hash }) => hash === which) ?? all[0];
  if (!asked) return null;
  const clothOf = ({ question }: Answered) => {
    const cloth = clothText(question, (length) => lengthText(length, store.shown));
    return question.cloths.length === 1 && question.cloths[0]!.name !== "cloth"
      ? phrase`${question.cloths[0]!.name} (${cloth})`
      : cloth;
  };
  // Another question is another table: nothing that was moved or pinned is carried over.
  return (
    <>
      <WhichLay all={all} shown={asked} clothOf={clothOf} onShow={setWhich} />
      <Table key={asked.hash} store={store} place={place} asked={asked} />
    </>
  );
}

const totalLength = ({ lengths }: Lay): number => lengths.reduce((sum, length) => sum + length, 0);

function Table({ store, place, asked }: Props & { asked: Answered }) {
  const { question, lay: answer } = asked;
  const { engine } = store;
  const cell = cellKey(engine.book, place);
  const say = (length: number) => lengthText(length, store.shown);
  const byHand = useLayByHand(store, asked, cell);
  const { lay, own, freePlaces, pins, chosen, pinned, choose, move, pin, keep, back } = byHand;
  const [beside, setBeside] = useState<Choice>(null);
  const [nearer, setNearer] = useState(1);

  const { page, row, column } = place;
  useEffect(() => {
    const background = backgroundOf(store);
    const other = asksBeside(question, beside);
    background.lookAt({ page, row, column }, other);
    quickLaysOf(store).lookBeside(other);
    return () => {
      background.lookAt(null);
      quickLaysOf(store).lookBeside(null);
    };
  }, [store, page, row, column, question, beside]);

  const laid = { name: cell, question, lay };
  const other = laidBeside(store, laid, beside);
  const sizes = [laid, ...(other ? [other] : [])].map((one) => sizeOf(one.question, one.lay));
  const tables = useRef<HTMLDivElement>(null);
  const room = usePictureSpace(tables);
  const fit = room && fitOf(sizes, room);

  return (
    <div className="lay-board">
      <LayWords store={store} asked={asked} lay={lay} own={own} />
      {lay.missing.length > 0 && <p className="look">{missingText(question, lay)}</p>}
      <LaySearch
        store={store}
        asked={asked}
        cell={cell}
        pinned={pinned}
        start={lay}
        onBegin={() => move(null)}
      />
      <div className={fit?.abreast ? "lay-tables lay-abreast" : "lay-tables"} ref={tables}>
        {fit && (
          <>
            <LayTable
              question={question}
              lay={lay}
              freePlaces={freePlaces}
              scale={fit.scale * nearer}
              rule={store.shown}
              name={other ? cell : null}
              title={phrase`The lay of ${cell}: ${lay.placements.length} pieces on ${clothText(question, say)}`}
              chosen={chosen}
              pins={pins}
              onChoose={choose}
              onMove={move}
              onPin={pin}
            />
            {other && <Still store={store} laid={other} scale={fit.scale * nearer} />}
          </>
        )}
      </div>
      {fit && lay.missing.length > 0 && <Joins store={store} question={question} scale={fit.scale} />}
      <HandTools
        question={question}
        lay={lay}
        freePlaces={freePlaces}
        chosen={chosen}
        pins={pins}
        nearer={nearer}
        say={say}
        onNearer={setNearer}
        onChoose={choose}
        onMove={move}
        onPin={pin}
      />
      {own && <OwnLay length={say(totalLength(answer))} onKeep={keep} onBack={back} />}
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

/** The lay in a sentence: its length, its cloth, how much is covered, and where the lay comes from. */
function LayWords({ store, asked, lay, own }: { store: Store; asked: Answered; lay: Lay; own: boolean }) {
  const { question, lay: answer } = asked;
  const { unit } = store.shown;
  const say = (length: number) => lengthText(length, store.shown);
  const length = say(totalLength(lay));
  const said = useSaid(
    own ? phrase`The lay takes ${length} as you arrange it` : phrase`The lay takes ${length}`,
  );
  return (
    <p className="lay-what">
      <span className="unseen" role="status">
        {said}
      </span>
      <b>{length}</b>
      {phrase` of ${clothText(question, say)}, ${coverText(lay, store.shown.decimal)}, ${leftOver(question, lay, unit, store.shown.decimal)} left over. `}
      <span className="lay-origin">
        {!own && <span aria-hidden="true">{laidSign(answer.origin ?? { by: "quick" })} </span>}
        {own
          ? phrase`Your own arrangement; the book does not keep it yet.`
          : originSentence(answer.origin, isFound(question, store.shown.lays))}
      </span>
    </p>
  );
}

/** What can be done with a lay that is not the book's; `length` is that of the book's. */
function OwnLay(props: { length: string; onKeep: () => void; onBack: () => void }) {
  const { length, onKeep, onBack } = props;
  const end = (act: () => void) => () => {
    handOn(".lay-board");
    act();
  };
  return (
    <p className="lay-row">
      <button type="button" onClick={end(onKeep)}>{phrase`Keep this lay`}</button>
      <button type="button" onClick={end(onBack)}>{phrase`Back to the book's lay`}</button>
      <span>{phrase`${length} in the book's lay.`}</span>
    </p>
  );
}

const clothText = ({ cloths }: LayQuestion, say: (length: number) => string): string =>
  cloths.length === 1
    ? phrase`cloth ${say(cloths[0]!.width)} wide`
    : phrase`${cloths.length} cloths in stock`;
