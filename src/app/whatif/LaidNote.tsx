/** What is to be known of a what-if answer that rests on pieces laid on cloth: how its lays were found, and how sure it is. */
import type { LayOrigin } from "../../../functions/lay.ts";
import { uncertaintyOf } from "../../engine/laid.ts";

interface Props {
  /** How the least searched lay was found; null where nothing is laid. */
  readonly laid: LayOrigin | null;
  /** Whether longer searches are going on. */
  readonly refining: boolean;
}

export function LaidNote({ laid, refining }: Props) {
  if (!laid) return null;
  const share = uncertaintyOf(laid);
  if (share === 0) return <p className="aside laid-note">Every lay here is proved: no lay can be shorter.</p>;
  return (
    <p className="aside laid-note">
      {laid.by === "search"
        ? `Every lay here was searched for ${laid.seconds} s`
        : "Every lay here is a quick lay"}
      : a difference below {Number((100 * share).toFixed(1))} % may come from the lays, not from what was
      changed.
      {refining && " Longer searches are going on."}
    </p>
  );
}
