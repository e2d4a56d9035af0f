/** One part of the page takes the whole window: everything else is out of reach of keys and pointer until it gives it back. */
import { type RefObject, useEffect } from "react";

export function useAlone(element: RefObject<HTMLElement | null>, on: boolean, onEnd: () => void): void {
  useEffect(() => {
    if (!on) return;
    const hidden: Element[] = [];
    for (
      let one: Element = element.current!;
      one.parentElement && one !== document.body;
      one = one.parentElement
    )
      for (const other of one.parentElement.children)
        if (other !== one && !other.hasAttribute("inert")) {
          other.setAttribute("inert", "");
          hidden.push(other);
        }
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || event.defaultPrevented || document.querySelector("dialog[open]")) return;
      event.preventDefault();
      event.stopPropagation();
      onEnd();
    };
    document.addEventListener("keydown", onKey, true);
    return () => {
      for (const other of hidden) other.removeAttribute("inert");
      document.removeEventListener("keydown", onKey, true);
    };
  }, [element, on, onEnd]);
}
