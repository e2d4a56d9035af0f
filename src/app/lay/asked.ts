/** The question a cell asks and the lay that answers it now. */
import type { Lay } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { type Asked, laysAsked } from "../../engine/lays-asked.ts";
import type { Store } from "../../store/store.ts";

export interface Answered extends Asked {
  readonly lay: Lay;
}

/** The lays that a cell rests on; none for a cell that lays nothing, or whose pieces can not be laid. */
export const answersAt = ({ engine }: Store, place: Place): Answered[] =>
  laysAsked(engine, place).flatMap((asked) => {
    const lay = engine.setting.plan?.(asked.question);
    return lay && !("refusal" in lay) ? [{ ...asked, lay }] : [];
  });

/** The first of them. */
export const answeredAt = (store: Store, place: Place): Answered | null => answersAt(store, place)[0] ?? null;
