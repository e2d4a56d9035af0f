/** The editor in a cell. It never holds the truth: it tells the hand what is typed, and saving goes through a command. */
import { TextEditor } from "handsontable/editors/textEditor";
import type { Hand } from "./hand.ts";

export function cellEditor(hand: Hand, pageOf: () => number): typeof TextEditor {
  return class CellEditor extends TextEditor {
    static override get EDITOR_TYPE() {
      return "ellwand";
    }

    override createElements() {
      super.createElements();
      this.TEXTAREA.setAttribute("aria-label", "Cell text");
      this.TEXTAREA.setAttribute("aria-autocomplete", "list");
      this.TEXTAREA.setAttribute("spellcheck", "false");
      for (const type of ["input", "keyup", "click", "focus"]) {
        this.eventManager.addEventListener(this.TEXTAREA, type, () => this.tell());
      }
      // Whatever takes the keyboard away, what was typed is kept; another window taking it changes nothing.
      this.eventManager.addEventListener(this.TEXTAREA, "blur", () => {
        if (this.isOpened() && document.hasFocus()) this.finishEditing();
      });
    }

    override open() {
      super.open();
      this.tell();
    }

    override close() {
      super.close();
      if (hand.draft?.where === "cell") hand.write(null);
    }

    override setValue(value?: unknown) {
      super.setValue(value);
      this.tell();
    }

    tell() {
      if (!this.isOpened()) return;
      const field = this.TEXTAREA as HTMLTextAreaElement;
      const place = { page: pageOf(), row: this.row ?? 0, column: this.col ?? 0 };
      hand.write({ place, text: field.value, caret: field.selectionStart, where: "cell", field });
    }
  };
}
