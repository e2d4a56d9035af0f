/** A dialog over the page: it takes the focus, Escape closes it, and the focus goes back where it was. */
import { phrase } from "../../../functions/phrase.ts";
import "./dialog.css";
import { type ReactNode, useEffect, useRef } from "react";

interface Props {
  readonly title: string;
  readonly wide?: boolean;
  readonly onDone: () => void;
  readonly children: ReactNode;
}

export function Dialog({ title, wide = false, onDone, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    const caret = before instanceof HTMLTextAreaElement ? [before.selectionStart, before.selectionEnd] : null;
    dialog.current!.showModal();
    return () => {
      if (!(before instanceof HTMLElement)) return;
      before.focus();
      if (caret) (before as HTMLTextAreaElement).setSelectionRange(caret[0]!, caret[1]!);
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className={wide ? "dialog dialog-wide" : "dialog"}
      aria-labelledby="dialog-title"
      onClose={onDone}
      // Keys typed here are not the grid's.
      onKeyDown={(event) => event.stopPropagation()}
    >
      <div className="dialog-head">
        <h2 id="dialog-title">{title}</h2>
        <button type="button" onClick={onDone}>{phrase`Close`}</button>
      </div>
      {children}
    </dialog>
  );
}
