/** A menu at a point of the window: arrow keys choose, Enter or a click takes, Escape and Tab close it. */
import "./menu.css";
import { type KeyboardEvent, useEffect, useLayoutEffect, useRef, useState } from "react";

/** One line of a menu. */
export interface MenuItem {
  readonly label: string;
  /** What it does; true when it takes the keyboard elsewhere, such as to a dialog. */
  readonly act: () => boolean;
  /** Whether a line stands above it: the first of its kind. */
  readonly apart?: boolean | undefined;
  /** Why it can't be done now. */
  readonly not?: string | undefined;
}

interface Props {
  /** What a screen reader calls the menu. */
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly items: readonly MenuItem[];
  /** Called when the menu is to close; true when what was there before is to have the keyboard again. */
  readonly onDone: (back: boolean) => void;
}

export function Menu({ name, x, y, items, onDone }: Props) {
  const list = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ left: x, top: y });

  useLayoutEffect(() => {
    const { offsetWidth, offsetHeight } = list.current!;
    setPlace({
      left: Math.max(4, Math.min(x, window.innerWidth - offsetWidth - 4)),
      top: Math.max(4, Math.min(y, window.innerHeight - offsetHeight - 4)),
    });
  }, [x, y]);
  useEffect(() => (list.current?.firstElementChild as HTMLElement | null)?.focus(), []);

  const run = ({ act, not }: MenuItem) => {
    if (not === undefined) onDone(!act());
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    const all = [...list.current!.children] as HTMLElement[];
    const now = all.indexOf(document.activeElement as HTMLElement);
    const steps: Record<string, number> = {
      ArrowDown: (now + 1) % all.length,
      ArrowUp: (now + all.length - 1) % all.length,
      Home: 0,
      End: all.length - 1,
    };
    if (event.key in steps) all[steps[event.key]!]!.focus();
    else if (event.key === "Escape" || event.key === "Tab") onDone(true);
    else if (event.key === "Enter" || event.key === " ") run(items[now]!);
    else return;
    event.preventDefault();
  };

  return (
    <div
      ref={list}
      role="menu"
      aria-label={name}
      tabIndex={-1}
      className="menu"
      style={place}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) onDone(false);
      }}
      onKeyDown={onKeyDown}
    >
      {items.map((item) => (
        <button
          key={item.label}
          className={item.apart ? "menu-apart" : undefined}
          type="button"
          role="menuitem"
          tabIndex={-1}
          aria-disabled={item.not !== undefined}
          title={item.not}
          onClick={() => run(item)}
        >
          {item.label}
        </button>
      ))}
    </div>
  );
}
