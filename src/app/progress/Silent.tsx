/** Says that nothing has been heard of some work for long, and offers to begin it again: nobody can tell a long step from a worker that is stuck. */
import { useEffect, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";

/** Silence of this length is said, in milliseconds. A single step of a large book may take as long. */
const LONG_SILENCE = 60_000;

interface Props {
  /** What has been heard of the work: whenever it is another one, the work has shown that it goes on. */
  readonly news: unknown;
  /** Begins the work again with another worker. */
  readonly onAgain: () => void;
}

export function Silent({ news, onAgain }: Props) {
  const [isSilent, setIsSilent] = useState(false);
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: news and another round begin the time anew
  useEffect(() => {
    setIsSilent(false);
    const timer = setTimeout(() => setIsSilent(true), LONG_SILENCE);
    return () => clearTimeout(timer);
  }, [news, round]);
  if (!isSilent) return null;
  return (
    <>
      <span role="status" className="look">
        {phrase` Nothing has been heard of it for a minute: it may still be at work on a long step, or it may be stuck. You can wait, or try again. `}
      </span>
      <button
        type="button"
        onClick={() => {
          handOn(".dialog, section, form");
          setRound(round + 1);
          onAgain();
        }}
      >{phrase`Try again`}</button>
    </>
  );
}
