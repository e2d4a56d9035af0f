/** A topic of the help, its labels and code marked. */

import type { ReactNode } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Topic } from "./topics/topic.ts";

export function TopicHelp({ topic, onGo }: { topic: Topic; onGo: (name: string) => void }) {
  const { name, summary, says, table, see } = topic;
  return (
    <>
      <h3>{name}</h3>
      <p className="help-summary">{marked(summary)}</p>
      {says.map((paragraph) => (
        <p key={paragraph}>{marked(paragraph)}</p>
      ))}
      {table && (
        <dl className="keys">
          {table.map(([sign, means]) => (
            <div key={sign}>
              <dt>{sign}</dt>
              <dd>{means}</dd>
            </div>
          ))}
        </dl>
      )}
      {see && (
        <p className="help-see">
          {phrase`See also: `}
          {see.map((other) => (
            <button key={other} type="button" className="link" onClick={() => onGo(other)}>
              {other}
            </button>
          ))}
        </p>
      )}
    </>
  );
}

/** A text with its *labels* and `code` as elements. */
export function marked(text: string): ReactNode[] {
  let at = 0;
  return text.split(/(`[^`]+`|(?<![\w=])\*[^*`\s][^*`]*\*)/).map((part) => {
    at += part.length;
    if (part.startsWith("`")) return <code key={at}>{part.slice(1, -1)}</code>;
    return /^\*.+\*$/.test(part) ? <b key={at}>{part.slice(1, -1)}</b> : part;
  });
}
