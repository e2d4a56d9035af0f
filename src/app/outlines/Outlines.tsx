/** The pieces of a drawing, looked at before they come into the book: their size, their names, their grain, and what was ignored. */
import { phrase, plural } from "../../../functions/phrase.ts";
import "./outlines.css";
import { useState } from "react";
import { cellAddress, type Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { typedAt } from "../../book/shape.ts";
import type { Inner } from "../../exchange/outlines/find-pieces.ts";
import { bookOfPieces, pieceCell, type TakenPiece } from "../../exchange/outlines/piece-rows.ts";
import { sized } from "../../exchange/outlines/scale.ts";
import { titleOf } from "../../exchange/read-table.ts";
import { pasteBlock } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { Progress } from "../progress/Progress.tsx";
import { HowLarge } from "./HowLarge.tsx";
import { PieceCard } from "./PieceCard.tsx";
import { factorOf } from "./sizing.ts";
import { takenOf, turnOf, useOutlines } from "./use-outlines.ts";

interface Props {
  readonly file: File;
  readonly store: Store;
  /** The chosen cell. */
  readonly place: Place;
  readonly onBook: (book: Book, label?: string) => void;
  readonly onDone: () => void;
}

type Where = "page" | "cells" | "book";

export function Outlines({ file, store, place, onBook, onDone }: Props) {
  const outlines = useOutlines(file);
  const { found, refusal, reading, ended, again, inner, setInner } = outlines;
  const { choices, choose, sizing, setSizing } = outlines;
  const [where, setWhere] = useState<Where>("page");
  const [stopped, setStopped] = useState<string | null>(null);
  const { unit, mark, decimal = "point" } = store.shown;
  const factor = found && factorOf(found, sizing, unit, decimal);
  const scale = factor && "factor" in factor ? factor.factor : null;
  const wanted = factor && "wanted" in factor ? factor.wanted : null;
  const title = titleOf(file.name);
  const address = cellAddress(place.row, place.column);
  const count = choices.filter(({ take }) => take).length;
  const filled = filledBelow(store.shown, place, count);

  const put = () => {
    if (!found) return;
    try {
      if (scale === null) throw new Error(wanted ?? phrase`the size is not known`);
      const taken = takenOf(found, choices, scale);
      if (where !== "cells")
        return onBook(bookOfPieces(title, unit, taken), where === "page" ? title : undefined);
      const reason = store.run(
        pasteBlock(
          place,
          taken.map((one) => [pieceCell(one)]),
        ),
      );
      if (reason) throw new Error(reason);
      onDone();
    } catch (reason) {
      setStopped((reason as Error).message);
    }
  };

  return (
    <Dialog title={phrase`Open “${file.name.slice(0, 80)}”`} wide onDone={onDone}>
      {refusal !== null && (
        <p className="look" role="alert">
          {found ? phrase`This choice does not work` : phrase`“${file.name}” was not opened`}: {refusal}{" "}
          {ended && <button type="button" onClick={again}>{phrase`Try again`}</button>}
        </p>
      )}
      {found && (
        <form
          className="outlines"
          aria-busy={reading}
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            put();
          }}
        >
          <HowLarge
            found={found}
            names={choices.map(({ name }) => name)}
            sizing={sizing}
            onSizing={(change) => {
              setStopped(null);
              setSizing(change);
            }}
            wanted={wanted}
          />
          <ul className="outlines-pieces">
            {found.pieces.map(({ piece, said }, i) => (
              <PieceCard
                // biome-ignore lint/suspicious/noArrayIndexKey: pieces are known by their places in the drawing
                key={`${inner} ${i}`}
                piece={sized(piece, scale ?? 1, turnOf(choices[i]!.turn) ?? 0)}
                rule={scale === null ? null : { unit, mark, decimal }}
                said={said}
                choice={choices[i]!}
                onChange={(change) => {
                  setStopped(null);
                  choose(i, change);
                }}
                asked={
                  sizing.by === "known" && sizing.what.startsWith(`${i}/`)
                    ? Number(sizing.what.split("/")[1])
                    : null
                }
                onEdge={(edge) => setSizing({ by: "known", what: `${i}/${edge}` })}
              />
            ))}
          </ul>
          <Said said={found.said} />
          <div className="outlines-foot">
            <label>
              <span>{phrase`Closed lines inside a piece are`}</span>
              <select value={inner} onChange={(event) => setInner(event.target.value as Inner)}>
                <option value="marks">{phrase`marks on it`}</option>
                <option value="pieces">{phrase`pieces of their own`}</option>
              </select>
            </label>
            <label>
              <span>{phrase`Put them`}</span>
              <select value={where} onChange={(event) => setWhere(event.target.value as Where)}>
                <option value="page">{phrase`on a new Draft page`}</option>
                <option value="cells">{phrase`into ${address} and the cells below`}</option>
                <option value="book">{phrase`into a new book`}</option>
              </select>
            </label>
            <button
              type="submit"
              className="outlines-go"
              disabled={reading || refusal !== null}
            >{phrase`Put into the book`}</button>
            <p role="alert" className="look">
              {stopped && phrase`Nothing was put into the book: ${stopped.replace(/\.$/, "")}.`}
            </p>
            {where === "cells" && filled > 0 && (
              <p role="status">
                {phrase`${plural(filled, "One of these cells is", "# of these cells are")} filled already; what is there is replaced, and undo brings it back.`}
              </p>
            )}
          </div>
        </form>
      )}
      <div className="book-ways">
        <button type="button" onClick={onDone}>{phrase`Cancel`}</button>
        {reading && (
          <Progress
            key={String(found === null)}
            what={found ? phrase`The drawing is being read again` : phrase`The drawing is being read`}
            onAgain={again}
          />
        )}
      </div>
    </Dialog>
  );
}

/** How many of the cells from a place downwards hold something. */
const filledBelow = (book: Book, { page, row, column }: Place, count: number): number =>
  Array.from({ length: count }, (_, i) => typedAt(book, page, row + i, column)).filter((text) => text !== "")
    .length;

function Said({ said }: { readonly said: TakenPiece["said"] }) {
  if (said.length === 0) return null;
  return (
    <section aria-labelledby="outlines-said">
      <h3 id="outlines-said">{phrase`How the file was read`}</h3>
      <ul className="outlines-said">
        {said.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
