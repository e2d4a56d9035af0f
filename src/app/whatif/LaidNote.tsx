/** What is to be known of a what-if answer that rests on pieces laid on cloth: how its lays were found, and how sure it is. */
import { uncertaintyOf } from "../../engine/laid.ts";

interface Props {
  /** Seconds that each lay was searched for, 0 for quick lays; null where nothing is laid. */
  readonly seconds: number | null;
  /** Whether longer searches are going on. */
  readonly refining: boolean;
}

export function LaidNote({ seconds, refining }: Props) {
  if (seconds === null) return null;
  const share = uncertaintyOf(seconds > 0 ? { by: "search", seconds } : { by: "quick" });
  return (
    <p className="aside laid-note">
      {seconds > 0 ? `Every lay here was searched for ${seconds} s` : "Every lay here is a quick lay"}: a
      difference below {Number((100 * share).toFixed(1))} % may come from the lays, not from what was changed.
      {refining && " Longer searches are going on."}
    </p>
  );
}
