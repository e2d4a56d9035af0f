/** The pages of the book under the stages of the work. */
import { phrase } from "../../../functions/phrase.ts";
import "./pages.css";
import { type KeyboardEvent, type MouseEvent, Suspense, useState } from "react";
import { type Page, STAGES } from "../../book/shape.ts";
import type { Figures } from "../../exchange/page-csv.ts";
import { lazily } from "../faults/lazily.tsx";
import { Menu, type MenuItem } from "../menu/Menu.tsx";
import { pageDrag, pageDrop, pageStep } from "./page-moves.ts";
import { TitleForm } from "./TitleForm.tsx";
import { focusPage, type PagesOf, usePageActs } from "./use-page-acts.ts";

/** It comes while the menu that offers it is open. */
const CopyPage = lazily(async () => (await import("./CopyPage.tsx")).CopyPage);

/** What the menu of a page offers. */
function itemsOf(
  pages: readonly Page[],
  page: number,
  acts: ReturnType<typeof usePageActs>,
  onCopyFor: () => void,
): MenuItem[] {
  const elsewhere = (act: () => void) => () => {
    act();
    return true;
  };
  const saving = (figures: Figures) => () => {
    void acts.saveCsv(figures);
    return false;
  };
  const savingAll = (ending: "xlsx" | "ods") => () => {
    void acts.saveSpreadsheet(ending);
    return false;
  };
  const step = (label: string, by: 1 | -1): MenuItem => {
    const target = pageStep(pages, page, by);
    return {
      label,
      apart: by < 0,
      not: target
        ? undefined
        : by < 0
          ? phrase`it is the first page already`
          : phrase`it is the last page already`,
      act: () => {
        if (target) acts.move(page, target);
        return false;
      },
    };
  };
  return [
    { label: phrase`Rename`, act: elsewhere(acts.beginRenaming) },
    { label: phrase`Copy`, act: elsewhere(acts.copyPlainly) },
    { label: phrase`Copy for another wearer…`, act: elsewhere(onCopyFor) },
    { label: phrase`Save as CSV, as shown`, act: saving("shown"), apart: true },
    { label: phrase`Save as CSV, figures in full`, act: saving("full") },
    { label: phrase`Save the book as a spreadsheet, .xlsx`, act: savingAll("xlsx") },
    { label: phrase`Save the book as a spreadsheet, .ods`, act: savingAll("ods") },
    step(phrase`Move up`, -1),
    step(phrase`Move down`, 1),
    {
      label: phrase`Delete`,
      apart: true,
      not: pages.length === 1 ? phrase`a book keeps at least one page` : undefined,
      act: () => {
        acts.deletePage();
        return false;
      },
    },
  ];
}

export function Pages(props: PagesOf) {
  const { store, page, onPage } = props;
  const { pages } = store.shown;
  const acts = usePageActs(props);
  const { renaming, add, rename, move, beginRenaming } = acts;
  const [menu, setMenu] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const [copying, setCopying] = useState(false);

  const openMenu = ({ currentTarget }: { readonly currentTarget: Element }) => {
    const { left, bottom } = currentTarget.getBoundingClientRect();
    CopyPage.preload().catch(() => {});
    setMenu({ x: left, y: bottom + 2 });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "F2") beginRenaming();
    if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) {
      event.preventDefault();
      openMenu(event);
    }
    if (!event.altKey || !event.shiftKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    const target = pageStep(pages, page, event.key === "ArrowUp" ? -1 : 1);
    if (target) move(page, target);
  };
  const onRightClick = (index: number) => (event: MouseEvent) => {
    event.preventDefault();
    if (index !== page) onPage(index);
    CopyPage.preload().catch(() => {});
    setMenu({ x: event.clientX, y: event.clientY });
  };

  return (
    <nav className="pages" aria-label={phrase`Pages`}>
      {STAGES.map((stage) => (
        <section
          key={stage}
          className="stage"
          aria-label={stage}
          {...pageDrop(pages.findLastIndex((one) => one.stage === stage) + 1, stage, move)}
        >
          <h2>
            <span>{stage}</span>
            <button type="button" className="quiet" onClick={() => add(stage)}>
              <span aria-hidden="true">+</span>
              <span className="unseen">{phrase`Add a page to ${stage}`}</span>
            </button>
          </h2>
          <ul>
            {pages.map(({ title, stage: own }, i) => {
              if (own !== stage) return null;
              if (i !== page) {
                return (
                  <li key={title} {...pageDrag(i, stage, move)}>
                    <button
                      type="button"
                      className="page"
                      dir="auto"
                      onClick={() => onPage(i)}
                      onContextMenu={onRightClick(i)}
                    >
                      {title}
                    </button>
                  </li>
                );
              }
              return (
                <li key={title} className="page-now" {...(!renaming && pageDrag(i, stage, move))}>
                  {renaming ? (
                    <TitleForm title={title} onTitle={rename} />
                  ) : (
                    <button
                      type="button"
                      className="page"
                      dir="auto"
                      aria-current="page"
                      onKeyDown={onKeyDown}
                      onContextMenu={onRightClick(i)}
                    >
                      {title}
                    </button>
                  )}
                  <button
                    type="button"
                    className="quiet page-acts"
                    aria-haspopup="menu"
                    // The second click of a double click on a title is not meant for this.
                    onClick={(event) => event.detail < 2 && openMenu(event)}
                  >
                    <span aria-hidden="true">⋯</span>
                    <span className="unseen">{phrase`Change the page ${title}`}</span>
                  </button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
      {menu && (
        <Menu
          {...menu}
          name={phrase`The page ${pages[page]!.title}`}
          items={itemsOf(pages, page, acts, () => setCopying(true))}
          onDone={(back) => {
            setMenu(null);
            // After the list is shown anew: the page may have moved.
            if (back) setTimeout(focusPage);
          }}
        />
      )}
      {copying && (
        <Suspense>
          <CopyPage
            store={store}
            page={page}
            onCopy={acts.copy}
            onDone={() => {
              setCopying(false);
              setTimeout(focusPage);
            }}
          />
        </Suspense>
      )}
    </nav>
  );
}
