/** The fields of the print dialog: a kind of document brings those that it takes. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { DOCUMENTS, type DocumentName } from "../../paper/kinds.ts";
import { PAPER_NAMES, type Paper, readPaper, SCALES } from "../../paper/paper.ts";
import {
  CHOSEN_CELL,
  type Choices,
  EVERY_PIECE,
  FITTING,
  kindOf,
  LAY_SCALES,
  ROLL,
  THIS_PAGE,
  takes,
  takesChosen,
  typesCells,
  WHOLE_BOOK,
} from "./choices.ts";
import type { PieceOffer } from "./protocol.ts";

interface Props {
  readonly choices: Choices;
  readonly book: Book;
  /** The title of the page on the screen. */
  readonly page: string;
  readonly pieces: readonly PieceOffer[] | null;
  readonly onChoose: (change: Partial<Choices>) => void;
}

export function PaperForm({ choices, book, page, pieces, onChoose }: Props) {
  const { what, paper, roll, scale, layScale, cells, alsoCells, blank, large } = choices;
  const isAlso = takes(choices, "page");
  const isLay = what === "lay";
  return (
    <div className="print-fields">
      <label>
        <span>{phrase`What`}</span>
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
      {typesCells(choices) && (
        <label>
          <span>{isAlso ? phrase`Working of` : phrase`Cells`}</span>
          <input
            value={isAlso ? alsoCells : cells}
            placeholder={phrase`such as hem; Draft!B4`}
            onChange={({ target: { value } }) => onChoose(isAlso ? { alsoCells: value } : { cells: value })}
          />
        </label>
      )}
      <label>
        <span>{phrase`Paper`}</span>
        <select value={paper} onChange={({ target }) => onChoose({ paper: target.value })}>
          {PAPER_NAMES.map((name) => (
            <option key={name} value={name}>
              {(readPaper(name) as Paper).name}
            </option>
          ))}
          <option value={ROLL}>{phrase`A roll`}</option>
        </select>
      </label>
      {paper === ROLL && (
        <label>
          <span>{phrase`Width of the roll`}</span>
          <input value={roll} onChange={({ target }) => onChoose({ roll: target.value })} />
        </label>
      )}
      {takes(choices, "scale") && (
        <label>
          <span>{phrase`Scale`}</span>
          <select
            value={isLay ? layScale : scale}
            onChange={({ target: { value } }) => onChoose(isLay ? { layScale: value } : { scale: value })}
          >
            {(isLay ? LAY_SCALES : Object.keys(SCALES)).map((name) => (
              <option key={name} value={name}>
                {name === FITTING ? phrase`to fit the paper` : name === "1" ? phrase`full size` : name}
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
          {phrase`Blank, with room to write`}
        </label>
      )}
      <label className="print-tick">
        <input
          type="checkbox"
          checked={large}
          onChange={({ target }) => onChoose({ large: target.checked })}
        />
        {phrase`Large type`}
      </label>
    </div>
  );
}

/** Which pieces, or what of the book. */
function Which({ choices, book, page, pieces, onChoose }: Props) {
  const hasPieces = takes(choices, "pieces");
  const hasPage = takes(choices, "page");
  const chosen = pieces?.find(({ isChosen }) => isChosen);
  const hasChosen = takesChosen(choices);
  const isSome = hasPieces && pieces?.some(({ isToCut }) => isToCut) === true;
  const isEvery = isSome && pieces.some(({ isToCut }) => !isToCut);
  const known = [
    WHOLE_BOOK,
    ...(isEvery ? [EVERY_PIECE] : []),
    ...(hasPage ? [THIS_PAGE] : []),
    ...(hasChosen ? [CHOSEN_CELL] : []),
    ...(hasPieces ? (pieces ?? []).map(({ address }) => address) : []),
  ];
  return (
    <label>
      <span>{hasPieces ? phrase`Pieces` : phrase`From`}</span>
      <select
        value={known.includes(choices.of) ? choices.of : WHOLE_BOOK}
        onChange={({ target }) => onChoose({ of: target.value })}
      >
        <option value={WHOLE_BOOK}>
          {!hasPieces
            ? phrase`the whole book`
            : isSome
              ? phrase`all pieces to cut`
              : phrase`all pieces of the book`}
        </option>
        {isEvery && <option value={EVERY_PIECE}>{phrase`every piece of the book`}</option>}
        {hasPage && (
          <option value={THIS_PAGE}>
            {hasPieces ? phrase`those of the page ${page}` : phrase`the page ${page}`}
          </option>
        )}
        {hasChosen && (!hasPieces || chosen || choices.of === CHOSEN_CELL) && (
          <option value={CHOSEN_CELL}>
            {phrase`the selected cell`}
            {hasPieces && chosen && `: ${chosen.title}`}
          </option>
        )}
        {hasPieces && pieces && pieces.length > 0 && (
          <optgroup label={phrase`One piece`}>
            {pieces.map(({ title, called, address, page: at }) => (
              <option key={address} value={address}>
                {called === title ? title : `${called}: ${title}`} ({book.pages[at]!.title})
              </option>
            ))}
          </optgroup>
        )}
      </select>
    </label>
  );
}
