/** The foot of the page: how many problems the book has, and the list of them when it is opened. */
import { phrase, plural } from "../../../functions/phrase.ts";
import "./checks.css";
import { memo } from "react";
import { columnLetters, type Place, placeKey } from "../../book/address.ts";
import { type Check, checks } from "../../engine/checks.ts";
import { countColumn } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { Follower } from "../following/Follower.tsx";
import { useAfterPaint } from "../following/use-after-paint.ts";
import { handOn } from "../keyboard.ts";
import { useSaid } from "../spoken.ts";

interface Props {
  readonly store: Store;
  readonly onPlace: (place: Place) => void;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

export function Checks(props: Props) {
  const { seen, isBehind } = useAfterPaint(props.store);
  return (
    <Follower isBehind={isBehind}>
      <Foot {...props} revision={seen.revision} />
    </Follower>
  );
}

/** A longer list would hold the page up, and nobody reads it. */
const MOST_SHOWN = 300;

/** Of a problem about more cells of a list, the first ones are offered; they are all marked in the list. */
const MOST_CELLS = 4;

const Foot = memo(function Foot({ store, onPlace, open, onOpen }: Props & { revision: number }) {
  const found = checks(store.engine);
  const said = useSaid(countText(found.length));
  return (
    <footer className="foot">
      {open && (
        <div className="checks" id="checks">
          {found.length === 0 ? (
            <p>{phrase`No cell of this book has an error or a warning.`}</p>
          ) : (
            <ul>
              {found.slice(0, MOST_SHOWN).map((check) => (
                <Row key={check.address} check={check} store={store} onPlace={onPlace} />
              ))}
            </ul>
          )}
          {found.length > MOST_SHOWN && (
            <p>
              {phrase`${found.length - MOST_SHOWN} more problems are not shown; they appear as the ones above are corrected.`}
            </p>
          )}
        </div>
      )}
      <button
        type="button"
        className={found.length > 0 ? "count count-look" : "count"}
        aria-expanded={open}
        aria-controls={open ? "checks" : undefined}
        onClick={() => onOpen(!open)}
      >
        {countText(found.length)}
        {store.trying && phrase` in the preview`}
      </button>
      <span className="unseen" role="status">
        {said}
      </span>
    </footer>
  );
});

function countText(count: number): string {
  if (count === 0) return phrase`No problems`;
  return phrase`${plural(count, "1 problem", "# problems")}`;
}

function Row({ check, store, onPlace }: Pick<Props, "store" | "onPlace"> & { check: Check }) {
  const { place, address, name, label, sentence, waiting, column: kept, stopped, at } = check;
  return (
    <li>
      <button type="button" className="check" onClick={() => onPlace(place)}>
        <span className="check-where">{name || label ? `${name ?? label} · ${address}` : address}</span>
        <span className="check-what">{sentence}</span>
        {waiting > 0 && (
          <span className="check-waiting">
            {phrase`${plural(waiting, "It affects 1 other cell", "It affects # other cells")}`}
          </span>
        )}
      </button>
      {at.length > 0 && (
        <div className="check-act check-cells">
          {at.slice(0, MOST_CELLS).map((one) => (
            <button type="button" key={placeKey(one)} onClick={() => onPlace(one)}>
              {phrase`Go to ${store.engine.address(one)}`}
            </button>
          ))}
        </div>
      )}
      {stopped && (
        <button
          type="button"
          className="check-act"
          onClick={() => {
            handOn(".foot");
            store.workAgain([place]);
          }}
        >{phrase`Calculate again`}</button>
      )}
      {kept && (
        <button
          type="button"
          className="check-act"
          onClick={() => {
            handOn(".foot");
            store.run(countColumn(kept.page, kept.column));
          }}
        >
          {phrase`Calculate with column ${columnLetters(kept.column)}`}
        </button>
      )}
    </li>
  );
}
