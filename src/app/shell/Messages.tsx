/** What the page has to say, each in one sentence: a refusal, news of the book, trouble with saving it, a fault. */

import { useSyncExternalStore } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { faults } from "../faults/faults.ts";
import type { Keeper } from "../files/keeper.ts";
import type { Keeping } from "../files/keeping.ts";
import { handOn } from "../keyboard.ts";
import { Ongoing } from "../progress/Ongoing.tsx";

export interface Message {
  readonly refused: boolean;
  readonly text: string;
}

interface Props {
  readonly message: Message | null;
  readonly onDone: () => void;
  readonly keeping: Keeping;
  readonly keeper: Keeper;
  /** Takes the keyboard when the last message is dismissed. */
  readonly onLast: () => void;
}

export function Messages({ message, onDone, keeping, keeper, onLast }: Props) {
  const { trouble, news, elsewhere } = keeping;
  const dismiss = (done: () => void) => () => {
    handOn(".messages", onLast);
    done();
  };
  const fault = useSyncExternalStore(faults.subscribe, () => faults.current);
  return (
    <section className="messages" aria-label={phrase`Messages`}>
      <div role="alert">
        {message?.refused && <Line text={message.text} look onDone={dismiss(onDone)} />}
        {trouble && <Line text={trouble} look onDone={dismiss(() => keeper.dismiss())} />}
        {fault && <Line text={fault} look onDone={dismiss(() => faults.dismiss())} />}
      </div>
      <Ongoing />
      <div role="status">
        {message && !message.refused && <Line text={message.text} onDone={dismiss(onDone)} />}
        {news && <Line text={news} onDone={dismiss(() => keeper.dismiss())} />}
        {elsewhere && (
          <Line
            text={phrase`This book is open in another tab too. Work in one of them: if both change it, the changes of one are saved as a second copy.`}
          />
        )}
      </div>
    </section>
  );
}

function Line({ text, look = false, onDone }: { text: string; look?: boolean; onDone?: () => void }) {
  return (
    <p className={look ? "message message-look" : "message"}>
      {text}
      {onDone && <button type="button" onClick={onDone}>{phrase`Dismiss`}</button>}
    </p>
  );
}
