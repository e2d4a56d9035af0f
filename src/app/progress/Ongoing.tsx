/** What the page is busy with, a line for each. */
import { useSyncExternalStore } from "react";
import { ongoing } from "./ongoing.ts";
import { Progress } from "./Progress.tsx";

export function Ongoing() {
  const list = useSyncExternalStore(ongoing.subscribe, () => ongoing.list);
  return list.map((work) => (
    <p key={work.what} className="message">
      {work.isOver ? (
        <span role="status">{work.what}</span>
      ) : (
        <Progress what={work.what} onStop={work.onStop} onAgain={work.onAgain} />
      )}
    </p>
  ));
}
