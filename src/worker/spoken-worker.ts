/** Takes up the page's language, then loads the worker's own program, which gets all messages that came meanwhile. */
import type { Language } from "../../functions/phrase.ts";
import { speak } from "../../functions/speech.ts";

/** The first message. */
export interface SpokenOrder {
  readonly language: Language;
  /** The address of the worker's own program. */
  readonly program: string;
}

self.onmessage = ({ data: { language, program } }: MessageEvent<SpokenOrder>) => {
  const waiting: MessageEvent[] = [];
  self.onmessage = (event) => {
    waiting.push(event);
  };
  speak(language);
  import(/* @vite-ignore */ program).then(
    () => {
      for (const event of waiting) self.onmessage?.call(self, event);
    },
    (fault) => {
      // A promise that fails is no error of the worker to its client: thrown anew, it is.
      setTimeout(() => {
        throw fault;
      });
    },
  );
};
