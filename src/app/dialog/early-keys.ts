/**
 * Keys that are pressed after a dialog was asked for and before it is there. They are meant for the dialog:
 * the cell behind it must not get them, and its first field gets them once it has the keyboard.
 */

/** A dialog that is not there after this time may never come: the page has the keys again, in milliseconds. */
const LONGEST = 3_000;

let end = (): void => {};

/** Call it when a dialog is asked for. */
export function keepEarlyKeys(): void {
  end();
  let text = "";
  const hear = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    if (event.key === "Escape") return end();
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.key === "Backspace") text = text.slice(0, -1);
    else if (event.key.length === 1) text += event.key;
  };
  const until = performance.now() + LONGEST;
  let frame = 0;
  const look = () => {
    const dialog = document.querySelector("dialog[open]");
    const isOver = performance.now() > until || document.querySelector(".guard-over");
    if (!dialog && !isOver) {
      frame = requestAnimationFrame(look);
      return;
    }
    end();
    const field = document.activeElement;
    const isText = field instanceof HTMLInputElement && /^(?:text|search)$/.test(field.type);
    if (isText && dialog?.contains(field) && text !== "") write(field, text);
  };
  end = () => {
    cancelAnimationFrame(frame);
    removeEventListener("keydown", hear, true);
  };
  addEventListener("keydown", hear, true);
  frame = requestAnimationFrame(look);
}

/** As if it was typed: React hears of a value only where the element's own setter was called. */
function write(field: HTMLInputElement, text: string): void {
  const own = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value");
  own?.set?.call(field, field.value + text);
  field.dispatchEvent(new Event("input", { bubbles: true }));
}
