/** Help: the sewing functions, found by what a maker wants to do, and the keys of the page. */
import { useDeferredValue, useEffect, useRef, useState } from "react";
import { type CataloguedFunction, catalogue } from "../../../functions/catalogue.ts";
import { LAID_SIGNS } from "../../engine/laid.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { FunctionHelp } from "./FunctionHelp.tsx";
import { Finder } from "./find.ts";
import { SHORTCUTS } from "./shortcuts.ts";

const finder = new Finder(catalogue.values());

export function Help({ store, onDone }: { store: Store; onDone: () => void }) {
  const [question, setQuestion] = useState("");
  const [chosen, setChosen] = useState<CataloguedFunction | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const found = finder.find(useDeferredValue(question));
  const shown =
    chosen && found.includes(chosen) ? chosen : question.trim() === "" ? null : (found[0] ?? null);
  return (
    <Dialog title="Help" wide onDone={onDone}>
      <div className="help">
        <div className="help-find">
          <label htmlFor="help-question">What do you want to work out?</label>
          <input
            ref={field}
            id="help-question"
            type="search"
            placeholder="how much to cut for a ruffle"
            value={question}
            onChange={(event) => setQuestion(event.target.value)}
          />
          <p role="status" className="aside">
            {found.length === 0
              ? "No function matches these words; try others."
              : `${found.length} of ${catalogue.size} functions`}
          </p>
          <ul className="help-list">
            {found.map((one) => (
              <li key={one.name}>
                <button
                  type="button"
                  className="help-one"
                  aria-current={one === shown}
                  onClick={() => setChosen(one)}
                >
                  <b>{one.name}</b>
                  <small>{one.summary}</small>
                </button>
              </li>
            ))}
          </ul>
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it */}
        <section className="help-text" aria-label={shown ? `Help for ${shown.name}` : "Keys"} tabIndex={0}>
          {shown ? <FunctionHelp declaration={shown} rule={store.shown} /> : <Keys />}
        </section>
      </div>
    </Dialog>
  );
}

function Keys() {
  return (
    <>
      <h3>In a cell</h3>
      <p>
        Type a length as the tape shows it: <code>16 1/2</code>, <code>28,5</code>, <code>42 cm</code>,{" "}
        <code>1 yd 9 in</code>. A formula begins with =: <code>=SPREAD_PER_GAP(16 1/2; 23 1/2; 5)</code>, with
        a semicolon between the arguments. Give a cell a name and use it in any formula of the book.
      </p>
      <h3>Lengths of cloth</h3>
      <dl className="keys">
        {LAID_SIGNS.map(([sign, says]) => (
          <div key={sign}>
            <dt>{sign}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      <h3>Keys</h3>
      <dl className="keys">
        {SHORTCUTS.map(({ keys, does }) => (
          <div key={keys}>
            <dt>{keys}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
