/** The pages of the book under the stages of the work. */
import "./pages.css";
import { type KeyboardEvent, type MouseEvent, useState } from "react";
import { blankPage, type Page, STAGES, type Stage } from "../../book/shape.ts";
import { addPage, removePage, renamePage } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { lostWith, pageDrag, pageDrop, pageStep, runPageMove } from "../grid/page-moves.ts";
import type { Message } from "./Messages.tsx";
import { TitleForm } from "./TitleForm.tsx";

interface Props {
  readonly store: Store;
  readonly page: number;
  readonly onPage: (page: number) => void;
  readonly onMessage: (message: Message | null) => void;
}

/** A title that no page has yet. */
function freeTitle(pages: readonly Page[], stage: Stage): string {
  const taken = new Set(pages.map(({ title }) => title.toLowerCase()));
  const titles = [stage, ...Array.from({ length: pages.length + 1 }, (_, i) => `${stage} ${i + 2}`)];
  return titles.find((title) => !taken.has(title.toLowerCase()))!;
}

/** Lets a click through, but not the later clicks of a double or triple click. */
function onlyFirstClick(event: MouseEvent): void {
  if (event.detail > 1) event.stopPropagation();
}

/** What is done with the pages of a book; `page` is the one in sight. */
function usePageActs({ store, page, onPage, onMessage }: Props) {
  const { pages } = store.shown;
  const [renaming, setRenaming] = useState(false);

  const add = (stage: Stage) => {
    const title = freeTitle(pages, stage);
    const order = STAGES.indexOf(stage);
    const after = pages.findLastIndex((one) => STAGES.indexOf(one.stage) <= order) + 1;
    const refusal = store.run(addPage(blankPage(title, stage), after));
    if (refusal) return onMessage({ refused: true, text: refusal });
    onPage(after);
    setRenaming(true);
  };
  const rename = (title: string) => {
    setRenaming(false);
    if (title === pages[page]!.title) return;
    const refusal = store.run(renamePage(page, title));
    if (refusal) onMessage({ refused: true, text: refusal });
  };
  const deletePage = () => {
    const { title } = pages[page]!;
    const lost = lostWith(store.book, page);
    const refusal = store.run(removePage(page));
    if (refusal) return onMessage({ refused: true, text: refusal });
    onPage(Math.min(page, store.shown.pages.length - 1));
    onMessage({ refused: false, text: `The page ${title} is deleted${lost}; Undo brings it back` });
  };
  const move: Parameters<typeof pageDrop>[2] = (index, target) => {
    const moved = runPageMove(store, index, target);
    if (typeof moved === "string") onMessage({ refused: true, text: moved });
    else onPage(moved);
  };
  return { renaming, add, rename, deletePage, move, beginRenaming: () => setRenaming(true) };
}

export function Pages(props: Props) {
  const { page, onPage } = props;
  const { pages } = props.store.shown;
  const { renaming, add, rename, deletePage, move, beginRenaming } = usePageActs(props);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "F2") beginRenaming();
    if (!event.altKey || !event.shiftKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    const target = pageStep(pages, page, event.key === "ArrowUp" ? -1 : 1);
    if (target) move(page, target);
  };

  return (
    <nav className="pages" aria-label="Pages">
      {STAGES.map((stage) => (
        <section
          key={stage}
          className="stage"
          aria-label={stage}
          {...pageDrop(pages.findLastIndex((one) => one.stage === stage) + 1, stage, move)}
        >
          <h2>
            {stage}
            <button type="button" className="quiet" onClick={() => add(stage)}>
              <span aria-hidden="true">+</span>
              <span className="unseen">Add a page to {stage}</span>
            </button>
          </h2>
          <ul>
            {pages.map(({ title, stage: own }, i) => {
              if (own !== stage) return null;
              if (i !== page) {
                return (
                  <li key={title} {...pageDrag(i, stage, move)}>
                    <button type="button" className="page" onClick={() => onPage(i)}>
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
                    <button type="button" className="page" aria-current="page" onKeyDown={onKeyDown}>
                      {title}
                    </button>
                  )}
                  {/* The list has moved under the pointer: the second click of a double click is not meant for these. */}
                  <div className="page-acts" onClickCapture={onlyFirstClick}>
                    <button type="button" className="quiet" onClick={beginRenaming}>
                      Rename
                    </button>
                    <button
                      type="button"
                      className="quiet"
                      disabled={pages.length === 1}
                      onClick={deletePage}
                    >
                      Delete
                    </button>
                  </div>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </nav>
  );
}
