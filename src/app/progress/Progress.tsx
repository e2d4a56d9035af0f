/**
 * Says that something is going on; after the first second also for how long, with a button that stops it where it can
 * be stopped. When nothing has been heard of it for long, it may be busy or stuck: then it may be begun again, too.
 */

import { useEffect, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";
import { Silent } from "./Silent.tsx";

interface Props {
  /** What is going on, without a full stop: "Calculating". */
  readonly what: string;
  readonly onStop?: (() => void) | undefined;
  /** Whether nothing is said in the first second. */
  readonly late?: boolean;
  /** Begins the work again with another worker. */
  readonly onAgain?: (() => void) | undefined;
  /** What has been heard of the work. */
  readonly news?: unknown;
}

export function Progress({ what, onStop, late = false, onAgain, news }: Props) {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const begun = performance.now();
    const ticking = setInterval(() => setSeconds(Math.floor((performance.now() - begun) / 1000)), 1000);
    return () => clearInterval(ticking);
  }, []);
  return (
    <span className="aside progress">
      <span role="status">{(seconds > 0 || !late) && `${what} …`}</span>
      {seconds > 0 && <span aria-hidden="true">{phrase` ${seconds} s `}</span>}
      {seconds > 0 && onStop && (
        <button
          type="button"
          onClick={() => {
            handOn(".dialog, section, form");
            onStop();
          }}
        >{phrase`Stop`}</button>
      )}
      {onAgain && <Silent news={news} onAgain={onAgain} />}
    </span>
  );
}
