/** What the document comes to: its sheets, what is on them, what is left out or doubtful; or how far it is. */

import { useEffect, useRef, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { Silent } from "../progress/Silent.tsx";
import { isPaperEnglish } from "./client.ts";
import { asSentence } from "./doubts.ts";
import type { Making } from "./use-printing.ts";

interface Props {
  readonly making: Making;
  /** Whether the figures are tried ones of What if. */
  readonly isTrying: boolean;
  readonly onStop: () => void;
  readonly onAgain: () => void;
}

/** Work that takes longer than this says how far it is, in milliseconds. */
const LONG = 1000;

export function Said({ making, isTrying, onStop, onAgain }: Props) {
  const known = making.is === "made" ? making.made : making.is === "drawing" ? making.laid : null;
  const sentences = [
    ...(isPaperEnglish()
      ? [phrase`the documents and what is said of them are in English, as this language can't be printed yet`]
      : []),
    ...(isTrying ? [phrase`the figures are those that are being tried under What if`] : []),
    ...(known?.sentences ?? []),
  ];
  return (
    <div className="print-said">
      <p className="print-count" role="status">
        {known
          ? phrase`${plural(known.sheets, "# sheet", "# sheets")} of ${known.paper}: ${known.says}`
          : making.is === "beginning" && phrase`The sheets are being counted …`}
      </p>
      {known && known.pieces.length > 1 && <p className="print-pieces">{known.pieces.join(", ")}</p>}
      {known?.notes.map((note) => (
        <p key={note} className="aside">
          {note}
        </p>
      ))}
      {(making.is === "beginning" || making.is === "drawing") && (
        <Progress making={making} onStop={onStop} onAgain={onAgain} />
      )}
      {making.is === "stopped" && <Stopped onAgain={onAgain} />}
      {making.is === "refused" && (
        <p role="alert" className="look">
          {making.sentence}
        </p>
      )}
      {making.is === "refused" && making.ended && (
        <p>
          <button type="button" onClick={onAgain}>{phrase`Try again`}</button>
        </p>
      )}
      {known && sentences.length > 0 && (
        <ul className="print-doubts" aria-label={phrase`To check before printing`}>
          {sentences.map((sentence) => (
            <li key={sentence}>{asSentence(sentence)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Takes the place of the button that stopped the work, and its focus. */
function Stopped({ onAgain }: Pick<Props, "onAgain">) {
  const again = useRef<HTMLButtonElement>(null);
  useEffect(() => again.current?.focus(), []);
  return (
    <p role="status">
      {phrase`Stopped; nothing was made. `}
      <button ref={again} type="button" onClick={onAgain}>{phrase`Begin again`}</button>
    </p>
  );
}

function Progress({ making, onStop, onAgain }: Pick<Props, "making" | "onStop" | "onAgain">) {
  const [isLong, setIsLong] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setIsLong(true), LONG);
    return () => clearTimeout(timer);
  }, []);
  if (!isLong) return null;
  const [drawn, all] = making.is === "drawing" ? [making.drawn, making.laid.sheets] : [undefined, 1];
  return (
    <>
      <p className="print-progress">
        <progress max={all} value={drawn} aria-label={phrase`Sheets drawn`} />
        {drawn !== undefined && phrase` sheet ${drawn} of ${all} `}
        <button type="button" onClick={onStop}>{phrase`Stop`}</button>
      </p>
      <div>
        <Silent news={making} onAgain={onAgain} />
      </div>
    </>
  );
}
