/** The question a cell asks and the lay that answers it now. */
import type { Lay } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { type Asked, laysAsked } from "../../engine/lays-asked.ts";
import type { Store } from "../../store/store.ts";

export interface Answered extends Asked {
  readonly lay: Lay;
}

/** Null for a cell that lays nothing, or whose pieces can not be laid. */
export function answeredAt({ engine }: Store, place: Place): Answered | null {
  const [asked] = laysAsked(engine, place);
  const lay = asked && engine.setting.plan?.(asked.question);
  return asked && lay && !("refusal" in lay) ? { ...asked, lay } : null;
}
