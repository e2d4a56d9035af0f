/**
 * The page as a first start shows it before its program is there: the ready book's first page as a plain
 * table, where the grid will stand. The build renders it into index.html (src/setup/first-screen.ts); the
 * page itself loads nothing of this file.
 */
import { phrase } from "../../../functions/phrase.ts";
import { columnLetters, noteAt } from "../../book/address.ts";
import { BLANK_COLUMN, type Page } from "../../book/shape.ts";
import { estimateText } from "../../engine/estimates.ts";
import { fittedText } from "../../engine/fitted-text.ts";
import type { Store } from "../../store/store.ts";
import { KeepingState } from "../files/keeping.ts";
import { type Looks, looksOf } from "../grid/looks.ts";
import { kindWord } from "../grid/paint.ts";
import { Pages } from "../pages/Pages.tsx";
import { Top } from "../shell/Top.tsx";

const PAGE = 0;

/** The widest that a column is on a narrow screen, as in src/app/grid/settings.ts. */
const MOST_NARROW = "10.3125rem, 45vw";

const NOTICE = phrase`The program is still being loaded: this ready book can be read, but nothing can be typed yet.`;
const LONG = phrase`If this text stays, the program could not be loaded: see that the server is running, then reload the page.`;

/** How a figure is set, which a blank cell does without. */
const NO_FIGURE = / cell-(?:figure|typed)/g;

const nothing = () => {};

/** Nothing is kept yet: the page says how its book is kept only once it knows. */
const { now: KEEPING } = new KeepingState({
  id: "",
  opening: 0,
  place: { page: PAGE, row: 0, column: 0 },
  state: "saving",
  elsewhere: false,
  keptAt: null,
  copied: null,
  trouble: null,
  news: null,
});

function looksAt({ engine, book }: Store, row: number, column: number): Looks {
  const place = { page: PAGE, row, column };
  return looksOf(engine.view(place), place, book, {
    note: noteAt(book, place),
    draft: null,
    said: engine.saidOf(place),
    estimate: estimateText(engine, place),
    fitted: fittedText(engine, place),
    cut: false,
  });
}

/** The widths of the columns as style rules: the page's policy allows none in the elements. */
export const columnStyles = ({ book }: Store): string =>
  book.pages[PAGE]!.columns.map(({ width = BLANK_COLUMN.width }, column) => {
    const col = `.first-table col:nth-child(${column + 2})`;
    const rem = `${width / 16}rem`;
    return `${col}{width:${rem}}@media(max-width:37.5em){${col}{width:min(${rem},${MOST_NARROW})}}`;
  }).join("");

export function FirstScreen({ store }: { readonly store: Store }) {
  const { title, pages } = store.book;
  const page = pages[PAGE]!;
  return (
    <div className="open-book first-screen">
      <div className="first-frame" inert>
        <Top
          store={store}
          keeping={KEEPING}
          onNew={nothing}
          onBooks={nothing}
          onSave={nothing}
          onPrint={nothing}
          onHelp={nothing}
          onRefused={nothing}
        />
        <Pages store={store} page={PAGE} onPage={nothing} onSaid={nothing} onRefused={nothing} />
      </div>
      <main className="middle">
        {/* As tall as the bar that comes in its place. */}
        <div className="formula-bar">
          <span className="formula-place starting-room">A1</span>
          <span className="name-field starting-room" inert>
            <input disabled />
          </span>
          <p className="formula-text first-notice" id="first-notice">
            {NOTICE}
          </p>
          <div className="cell-message">
            <p className="starting-long">{LONG}</p>
          </div>
          <span className="formula-keys starting-room" inert>
            <button type="button" disabled>
              {phrase`Note`}
            </button>
          </span>
        </div>
        <div className="grid-page">
          <div className="grid-host ht-theme-ellwand first-table">
            <Table store={store} page={page} name={`${title}: ${page.title}`} />
          </div>
        </div>
      </main>
      <div className="side" inert>
        <div className="part part-open">
          <div className="part-head">
            <h2>
              <button type="button" className="part-name" aria-expanded="true">
                {phrase`Drawing`}
              </button>
            </h2>
          </div>
        </div>
      </div>
      <footer className="foot" inert>
        <button type="button" className="count">
          {"\u00a0"}
        </button>
      </footer>
    </div>
  );
}

function Table(props: { readonly store: Store; readonly page: Page; readonly name: string }) {
  const { store, page, name } = props;
  const { columns, rows, frozen = 0 } = page;
  const inSight = (column: number) => (column < frozen ? " first-in-sight" : "");
  return (
    <table className="htCore" aria-label={name} aria-describedby="first-notice">
      <colgroup>
        <col />
        {columns.map((_, column) => (
          <col key={columnLetters(column)} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <td />
          {columns.map((column, at) => (
            <th key={columnLetters(at)} scope="col" className={inSight(at)}>
              <span className="column-letter">
                {columnLetters(at)}
                <span className="column-kind">{kindWord(column)}</span>
              </span>
              <span className="column-heading">{column.heading}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((_, row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its number
          <tr key={row}>
            <th scope="row">{row + 1}</th>
            {columns.map((_, column) => {
              const { text, classes, sign } = looksAt(store, row, column);
              return (
                <td
                  key={columnLetters(column)}
                  className={(text === "" ? classes.replace(NO_FIGURE, "") : classes) + inSight(column)}
                  data-laid={sign || undefined}
                  aria-colindex={column === 0 ? 2 : undefined}
                >
                  {text}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
