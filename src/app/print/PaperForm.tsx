/** The fields of the print dialog: a kind of document brings those that it takes. */
import type { Book } from "../../book/shape.ts";
import { DOCUMENTS, type DocumentName } from "../../paper/kinds.ts";
import { PAPER_NAMES, type Paper, readPaper, SCALES } from "../../paper/paper.ts";
import { CHOSEN_CELL, type Choices, kindOf, ROLL, THIS_PAGE, takes, WHOLE_BOOK } from "./choices.ts";
import type { PieceOffer } from "./protocol.ts";

interface Props {
  readonly choices: Choices;
  readonly book: Book;
  /** The title of the page on the screen. */
  readonly page: string;
  readonly pieces: readonly PieceOffer[] | null;
  readonly onChoose: (change: Partial<Choices>) => void;
}

const scaleText = (name: string): string => (name === "1" ? "full size" : name);

export function PaperForm({ choices, book, page, pieces, onChoose }: Props) {
  const { what, paper, roll, scale, cells, blank, large } = choices;
  return (
    <div className="print-fields">
      <label>
        <span>What</span>
        <select
          value={what}
          aria-describedby="print-about"
          onChange={({ target }) => onChoose({ what: target.value as DocumentName })}
        >
          {DOCUMENTS.map(({ name, title }) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <p id="print-about" className="aside">
        {kindOf(what).about}
      </p>
      {(takes(choices, "pieces") || takes(choices, "page")) && (
        <Which choices={choices} book={book} page={page} pieces={pieces} onChoose={onChoose} />
      )}
      {takes(choices, "cells") && (
        <label>
          <span>Cells</span>
          <input value={cells} onChange={({ target }) => onChoose({ cells: target.value })} />
        </label>
      )}
      <label>
        <span>Paper</span>
        <select value={paper} onChange={({ target }) => onChoose({ paper: target.value })}>
          {PAPER_NAMES.map((name) => (
            <option key={name} value={name}>
              {(readPaper(name) as Paper).name}
            </option>
          ))}
          <option value={ROLL}>A roll</option>
        </select>
      </label>
      {paper === ROLL && (
        <label>
          <span>Width of the roll</span>
          <input value={roll} onChange={({ target }) => onChoose({ roll: target.value })} />
        </label>
      )}
      {takes(choices, "scale") && (
        <label>
          <span>Scale</span>
          <select value={scale} onChange={({ target }) => onChoose({ scale: target.value })}>
            {Object.keys(SCALES).map((name) => (
              <option key={name} value={name}>
                {scaleText(name)}
              </option>
            ))}
          </select>
        </label>
      )}
      {takes(choices, "blank") && (
        <label className="print-tick">
          <input
            type="checkbox"
            checked={blank}
            onChange={({ target }) => onChoose({ blank: target.checked })}
          />
          Blank, with room to write
        </label>
      )}
      {takes(choices, "large") && (
        <label className="print-tick">
          <input
            type="checkbox"
            checked={large}
            onChange={({ target }) => onChoose({ large: target.checked })}
          />
          Large type
        </label>
      )}
    </div>
  );
}

/** Which pieces, or what of the book. */
function Which({ choices, book, page, pieces, onChoose }: Props) {
  const hasPieces = takes(choices, "pieces");
  const hasPage = takes(choices, "page");
  const chosen = pieces?.find(({ isChosen }) => isChosen);
  const isThere =
    [WHOLE_BOOK, ...(hasPage ? [THIS_PAGE] : [])].includes(choices.of) ||
    (hasPieces &&
      (choices.of === CHOSEN_CELL || (pieces?.some(({ address }) => address === choices.of) ?? true)));
  return (
    <label>
      <span>{hasPieces ? "Pieces" : "From"}</span>
      <select
        value={isThere ? choices.of : WHOLE_BOOK}
        onChange={({ target }) => onChoose({ of: target.value })}
      >
        <option value={WHOLE_BOOK}>{hasPieces ? "all pieces of the book" : "the whole book"}</option>
        {hasPage && (
          <option value={THIS_PAGE}>{hasPieces ? `those of the page ${page}` : `the page ${page}`}</option>
        )}
        {hasPieces && (chosen || choices.of === CHOSEN_CELL) && (
          <option value={CHOSEN_CELL}>the chosen cell{chosen && `: ${chosen.title}`}</option>
        )}
        {hasPieces && pieces && pieces.length > 0 && (
          <optgroup label="One piece">
            {pieces.map(({ title, address, page: at }) => (
              <option key={address} value={address}>
                {title} ({book.pages[at]!.title})
              </option>
            ))}
          </optgroup>
        )}
      </select>
    </label>
  );
}
