/** The names and functions that fit the word being typed, in a list beside the field. */
import { useLayoutEffect, useRef, useState, useSyncExternalStore } from "react";
import type { EditSession } from "./edit-session.ts";

const WIDE = 420;

export function OfferList({ session }: { session: EditSession }) {
  useSyncExternalStore(session.subscribe, session.version);
  const list = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ left: 0, top: 0 });
  const { draft, offers, chosen } = session;
  const count = offers.length;
  const field = count > 0 ? draft?.field : undefined;

  useLayoutEffect(() => {
    if (!field || count === 0) return;
    const box = field.getBoundingClientRect();
    const height = list.current?.offsetHeight ?? 0;
    const below = box.bottom + height + 4 < window.innerHeight;
    setPlace({
      left: Math.max(4, Math.min(box.left, window.innerWidth - WIDE - 4)),
      top: below ? box.bottom + 3 : Math.max(4, box.top - height - 3),
    });
    field.setAttribute("aria-controls", "offers");
    if (chosen === null) field.removeAttribute("aria-activedescendant");
    else field.setAttribute("aria-activedescendant", `offer-${chosen}`);
    return () => {
      field.removeAttribute("aria-controls");
      field.removeAttribute("aria-activedescendant");
    };
  }, [field, chosen, count]);

  if (!field) return null;
  return (
    <div
      id="offers"
      ref={list}
      role="listbox"
      tabIndex={-1}
      aria-label={offers[0]?.is === "choice" ? "Choices" : "Matching names and functions"}
      className="offers"
      style={place}
    >
      {offers.map((offer, i) => (
        <div
          key={offer.text}
          id={`offer-${i}`}
          role="option"
          tabIndex={-1}
          aria-selected={i === chosen}
          className={i === (chosen ?? 0) ? "offer-next" : undefined}
          onMouseDown={(event) => {
            event.preventDefault();
            session.accept(offer);
          }}
        >
          <span className="offer-text">{offer.text}</span>
          <span className="offer-about">{offer.about}</span>
          {i === (chosen ?? 0) && (
            <kbd>{chosen !== null ? "Enter" : offer.is === "choice" ? "↓" : "Tab"}</kbd>
          )}
        </div>
      ))}
    </div>
  );
}
