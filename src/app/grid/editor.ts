/** The editor in a cell. It never holds the truth: it tells the edit session what is typed, and saving goes through a command. */

import { TextEditor } from "handsontable/editors/textEditor";
import { phrase } from "../../../functions/phrase.ts";
import type { EditSession } from "./edit-session.ts";

/** `save` takes what was typed in one cell. */
export function cellEditor(
  session: EditSession,
  pageOf: () => number,
  save: (row: number, column: number, text: unknown) => void,
): typeof TextEditor {
  return class CellEditor extends TextEditor {
    static override get EDITOR_TYPE() {
      return "ellwand";
    }

    override createElements() {
      super.createElements();
      const { init, unObserve } = this.autoResize;
      let isMeasured = false;
      // The library would also measure the field after each key, and once more when Enter has closed it.
      this.autoResize.init = (field, limits) => {
        isMeasured = true;
        init(field, limits);
      };
      // Delete closes a field that was never opened, and the library then throws: what is typed next would be lost.
      this.autoResize.unObserve = () => {
        if (isMeasured) unObserve();
      };
      this.eventManager.addEventListener(this.TEXTAREA, "input", () => this.autoResize.resize());
      this.TEXTAREA.setAttribute("aria-label", phrase`Cell text`);
      this.TEXTAREA.setAttribute("aria-autocomplete", "list");
      this.TEXTAREA.setAttribute("spellcheck", "false");
      for (const type of ["input", "keyup", "click", "focus"]) {
        this.eventManager.addEventListener(this.TEXTAREA, type, () => this.tell());
      }
      // Whatever takes the keyboard away, what was typed is kept; another window taking it changes nothing.
      this.eventManager.addEventListener(this.TEXTAREA, "blur", () => {
        if (!this.isOpened() || !document.hasFocus()) return;
        // A dialog gives the keyboard back when it closes; an unfinished formula waits for it.
        if (document.querySelector("dialog[open]")) return;
        session.leave();
      });
    }

    override open() {
      super.open();
      this.tell();
    }

    /** The library would also measure the field for a cell that is only chosen; it is measured when typing begins. */
    override refreshDimensions(force = false) {
      if (this.isOpened()) super.refreshDimensions(force);
    }

    override close() {
      super.close();
      if (session.draft?.where === "cell") session.write(null);
    }

    override setValue(value?: unknown) {
      super.setValue(value);
      if (this.isOpened()) this.autoResize.resize();
      this.tell();
    }

    /** Straight to the command: the library would go through its own data and draw the whole grid once more. */
    override saveValue(value: unknown, ctrlDown: boolean) {
      if (ctrlDown || !Array.isArray(value)) super.saveValue(value as never, ctrlDown);
      else save(this.row ?? 0, this.col ?? 0, value[0]?.[0]);
    }

    tell() {
      if (!this.isOpened()) return;
      const field = this.TEXTAREA as HTMLTextAreaElement;
      const place = { page: pageOf(), row: this.row ?? 0, column: this.col ?? 0 };
      session.write({ place, text: field.value, caret: field.selectionStart, where: "cell", field });
    }
  };
}
