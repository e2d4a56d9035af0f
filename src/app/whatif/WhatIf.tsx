/** What if: change a typed cell and watch others follow, solve for one, compare trials, see what matters most. */
import { phrase } from "../../../functions/phrase.ts";
import "./whatif.css";
import { type KeyboardEvent, useEffect, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { QuestionClient } from "../../worker/question-client.ts";
import { handOn } from "../keyboard.ts";
import { useRevision, within } from "../store-hooks.ts";
import type { Asking } from "./asking.ts";
import { Matters } from "./Matters.tsx";
import { Solve } from "./Solve.tsx";
import { Trials } from "./Trials.tsx";
import { type Trying, useTrying } from "./trying.ts";
import { Vary } from "./Vary.tsx";

const WAYS = {
  vary: phrase`Vary`,
  solve: phrase`Solve for`,
  trials: phrase`Trials`,
  matters: phrase`What matters`,
} as const;
type Way = keyof typeof WAYS;
const ORDER = Object.keys(WAYS) as Way[];

export function WhatIf({ store, place }: { store: Store; place: Place }) {
  useRevision(store);
  const [way, setWay] = useState<Way>("vary");
  const [client] = useState(() => new QuestionClient());
  const trying = useTrying(store);
  useEffect(() => () => client.close(), [client]);
  const asking: Asking = { store, place: within(store.shown, place), trying, client };

  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const next = ORDER[(ORDER.indexOf(way) + by + ORDER.length) % ORDER.length]!;
    setWay(next);
    document.getElementById(`what-if-${next}`)?.focus();
  };

  return (
    <div className="what-if">
      <div className="ways" role="tablist" aria-label={phrase`Questions`} onKeyDown={onKeyDown}>
        {ORDER.map((one) => (
          <button
            key={one}
            id={`what-if-${one}`}
            type="button"
            role="tab"
            aria-selected={one === way}
            aria-controls="what-if-panel"
            tabIndex={one === way ? 0 : -1}
            onClick={() => setWay(one)}
          >
            {WAYS[one]}
          </button>
        ))}
      </div>
      <KeepOrDrop trying={trying} />
      <div id="what-if-panel" role="tabpanel" aria-labelledby={`what-if-${way}`}>
        {way === "vary" && <Vary {...asking} />}
        {way === "solve" && <Solve {...asking} />}
        {way === "trials" && <Trials {...asking} />}
        {way === "matters" && <Matters {...asking} />}
      </div>
    </div>
  );
}

function KeepOrDrop({ trying }: { trying: Trying }) {
  const [refusal, setRefusal] = useState<string | null>(null);
  if (!trying.isTrying)
    return refusal ? (
      <p className="look" role="alert">
        {refusal}
      </p>
    ) : null;
  const end = (act: () => void) => {
    handOn(".what-if");
    act();
  };
  return (
    <section className="keep-or-drop" aria-label={phrase`Preview`}>
      <span>{phrase`Preview: your book is unchanged until you choose Keep.`}</span>
      <button
        type="button"
        className="keep"
        onClick={() => end(() => setRefusal(trying.keep()))}
      >{phrase`Keep`}</button>
      <button type="button" onClick={() => end(() => trying.drop())}>{phrase`Discard`}</button>
    </section>
  );
}
