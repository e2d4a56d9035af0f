/** What the maker does with the lay of a cell by hand, and the lay that is on the table. */
import { useEffect, useMemo, useState, useSyncExternalStore } from "react";
import type { Lay, Placement } from "../../../functions/lay.ts";
import { answerFrom } from "../../lay/answer.ts";
import { toKeep } from "../../lay/desk.ts";
import { FreePlaces } from "../../lay/free-places.ts";
import type { Store } from "../../store/store.ts";
import { copyKey } from "./arrange.ts";
import type { Answered } from "./asked.ts";
import { sessionOf } from "./search-session.ts";

/** What the maker has done with a lay by hand. */
interface Work {
  /** The copies as they were put; null while none was moved. */
  readonly moved: readonly Placement[] | null;
  readonly pins: ReadonlySet<string>;
  readonly chosen: string | null;
}

const UNTOUCHED: Work = { moved: null, pins: new Set(), chosen: null };

/** `cell` is the name or the address of the cell that asks. */
export function useLayByHand(store: Store, { question, hash, lay: answer }: Answered, cell: string) {
  const [{ moved, pins, chosen }, setWork] = useState(UNTOUCHED);
  const session = sessionOf(store);
  const searching = useSyncExternalStore(session.subscribe, session.state);
  const freePlaces = useMemo(() => new FreePlaces(question), [question]);

  // The pieces or the cloth have changed: no cell asks for the lay that is searched for any more.
  useEffect(() => {
    if (searching.running && searching.cell === cell && searching.hash !== hash) session.stop();
  }, [session, searching, cell, hash]);

  const pinnedLay = searching.hash === hash ? searching.apart : null;
  const lay: Lay = moved ? answerFrom(question, moved) : (pinnedLay ?? answer);
  const change = (next: Partial<Work>) => setWork((old) => ({ ...old, ...next }));
  const back = () => {
    change({ moved: null });
    session.forget();
  };
  return {
    lay,
    /** Whether the lay on the table is not the book's. */
    own: lay !== answer,
    freePlaces,
    pins,
    chosen,
    pinned: lay.placements.filter((one) => pins.has(copyKey(one))),
    choose: (key: string | null) => change({ chosen: key }),
    move: (placements: readonly Placement[] | null) => change({ moved: placements }),
    pin: (key: string) => change({ pins: toggled(pins, key) }),
    back,
    keep: () => {
      store.keepLay(hash, toKeep({ ...lay, origin: { by: "hand" } }));
      back();
    },
  };
}

function toggled(pins: ReadonlySet<string>, key: string): Set<string> {
  const next = new Set(pins);
  if (!next.delete(key)) next.add(key);
  return next;
}
