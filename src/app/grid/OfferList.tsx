/** The names, functions or choices that fit the word being typed. */

import { useLayoutEffect, useSyncExternalStore } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { EditSession } from "./edit-session.ts";

export function OfferList({ session }: { session: EditSession }) {
  useSyncExternalStore(session.subscribe, session.version);
  const { draft } = session;
  const { all: offers, chosen } = session.offers;
  const field = offers.length > 0 ? draft?.field : undefined;

  useLayoutEffect(() => {
    if (!field) return;
    field.setAttribute("aria-controls", "offers");
    if (chosen === null) field.removeAttribute("aria-activedescendant");
    else field.setAttribute("aria-activedescendant", `offer-${chosen}`);
    return () => {
      field.removeAttribute("aria-controls");
      field.removeAttribute("aria-activedescendant");
    };
  }, [field, chosen]);

  if (!field) return null;
  return (
    <div
      id="offers"
      role="listbox"
      tabIndex={-1}
      aria-label={offers[0]?.is === "choice" ? phrase`Choices` : phrase`Matching names and functions`}
      className="offers"
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
            session.offers.accept(offer);
          }}
        >
          <span className="offer-text">{offer.text}</span>
          <span className="offer-about">{offer.about}</span>
          {i === (chosen ?? 0) && (
            <kbd>{chosen !== null ? phrase`Enter` : offer.is === "choice" ? "↓" : phrase`Tab`}</kbd>
          )}
        </div>
      ))}
    </div>
  );
}
