/** The line under the formula: why an edit was refused, the argument being typed, the cell's problem, its value at full precision. */
import { catalogue } from "../../../functions/catalogue.ts";
import {
  type Block,
  cellAddress,
  columnLetters,
  fullAddress,
  noteAt,
  type Place,
  placeKey,
} from "../../book/address.ts";
import { laidText } from "../../engine/laid.ts";
import { laysBelowText } from "../../engine/lays-below.ts";
import { sharedOutAt } from "../../engine/shared-out.ts";
import { exact } from "../../engine/show.ts";
import { countColumn } from "../../store/commands.ts";
import { type Hand, samePlace } from "./hand.ts";
import { hintFor } from "./hint.ts";

interface Props {
  readonly hand: Hand;
  readonly place: Place;
  readonly exactly: boolean;
}

export function Telling(props: Props) {
  return (
    <div className="formula-telling">
      <p id="formula-telling" role="status">
        {told(props)}
        <Note {...props} />
      </p>
    </div>
  );
}

function told({ hand, place, exactly }: Props) {
  const { shown: book, engine } = hand.store;
  const refused = hand.refusedAt(place);
  if (refused) return <span className="telling-look">{refused.sentence}</span>;
  const declaration = hand.caret?.call ? catalogue.get(hand.caret.call) : undefined;
  if (declaration) {
    const hint = hintFor(declaration, hand.caret!.argument, book.unit);
    return (
      <>
        <span className="telling-call">
          {hint.name}(
          {hint.takes.map((take, i) => (
            <span key={take}>
              {i > 0 && "; "}
              {i === hint.current ? <strong>{take}</strong> : take}
            </span>
          ))}
          )
        </span>{" "}
        <span className="telling-about">{hint.about}</span>
      </>
    );
  }
  if (hand.cutBlock) {
    return (
      <span className="telling-about">
        {blockText(hand.cutBlock)} is cut: select a cell and paste to move it there, or press Escape to
        cancel.
      </span>
    );
  }
  const view = engine.view(place);
  if (view.look) {
    const waits = !samePlace(view.look.from, place);
    return (
      <span className={view.look.is === "pending" ? "telling-about" : "telling-look"}>
        {waits && `waits for ${fullAddress(book, view.look.from)}: `}
        {view.look.sentence}
        <CountKey hand={hand} place={place} />
      </span>
    );
  }
  const parts = sharedOutAt(engine, place);
  const laid = view.origin ? laidText(view.origin) : laysBelowText(engine, place);
  return (
    <>
      {exactly && (
        <span className="telling-exact">full precision: {exact(view.value, view.kind, book) || "blank"}</span>
      )}
      {exactly && (parts || laid) && " "}
      {parts && <span className="telling-about">{parts}</span>}
      {laid && <span className="telling-about">{laid}</span>}
    </>
  );
}

/** The note of the cell, except while a formula or a refused edit needs the line. */
function Note({ hand, place }: Props) {
  const note = noteAt(hand.store.shown, place);
  if (note === "" || hand.refusedAt(place) || hand.caret?.call) return null;
  return <span className="telling-note">Note: {note}</span>;
}

/** "B1", or "B1:C4". */
function blockText({ top, left, bottom, right }: Block): string {
  const [from, to] = [cellAddress(top, left), cellAddress(bottom, right)];
  return from === to ? from : `${from}:${to}`;
}

/** The button that lets formulas use the numbers of a column of text. */
function CountKey({ hand, place }: Pick<Props, "hand" | "place">) {
  const kept = hand.store.engine.uncounted.get(placeKey(place))?.column;
  if (!kept) return null;
  return (
    <button
      type="button"
      className="telling-act"
      onClick={() => hand.run(countColumn(kept.page, kept.column), place)}
    >
      Calculate with column {columnLetters(kept.column)}
    </button>
  );
}
