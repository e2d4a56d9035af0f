/** The first page of the help: every topic with its answer in a sentence, chapter by chapter. */

import { catalogue } from "../../../functions/catalogue.ts";
import { phrase } from "../../../functions/phrase.ts";
import { builtIns } from "../../engine/built-ins/all.ts";
import { marked } from "./TopicHelp.tsx";
import { CHAPTERS } from "./topics/all.ts";

export function FirstPage({ onGo }: { onGo: (name: string) => void }) {
  return (
    <>
      <p>{phrase`Type what you want to do, in your own words, or a function's name. There is help for everything on the page, for ${catalogue.size} sewing functions, and for ${builtIns.size} functions of figures, lists and texts.`}</p>
      {CHAPTERS.map(({ title, topics }) => (
        <section key={title} className="help-chapter" aria-label={title}>
          <h3>{title}</h3>
          <dl>
            {topics.map(({ name, summary }) => (
              <div key={name}>
                <dt>
                  <button type="button" className="link" onClick={() => onGo(name)}>
                    {name}
                  </button>
                </dt>
                <dd>{marked(summary)}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </>
  );
}
