/** What is to be known of a what-if answer that rests on pieces laid on cloth: how its lays were found, and how sure it is. */

import type { Decimal } from "../../../functions/decimal.ts";
import type { LayOrigin } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import { uncertaintyOf } from "../../engine/laid.ts";
import { plainNumber } from "../../engine/show.ts";

interface Props {
  /** How the least searched lay was found; null where nothing is laid. */
  readonly laid: LayOrigin | null;
  /** Whether longer searches are going on. */
  readonly refining: boolean;
  /** The mark of the book. */
  readonly decimal: Decimal | undefined;
}

export function LaidNote({ laid, refining, decimal }: Props) {
  if (!laid) return null;
  const share = uncertaintyOf(laid);
  if (share === 0)
    return <p className="aside laid-note">{phrase`Every lay here is proved: no lay can be shorter.`}</p>;
  const percent = plainNumber(100 * share, 1, decimal);
  return (
    <p className="aside laid-note">
      {laid.by === "search"
        ? phrase`Every lay here was searched for ${laid.seconds} s: a difference below ${percent} % may come from the lays, not from what was changed.`
        : phrase`Every lay here is a quick lay: a difference below ${percent} % may come from the lays, not from what was changed.`}
      {refining && phrase` Longer searches are going on.`}
    </p>
  );
}
