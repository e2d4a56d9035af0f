/** What the page has to tell, each in one sentence: a refusal, news of the book, trouble with keeping it. */
import type { Keeper, Keeping } from "../files/keeper.ts";

export interface Message {
  readonly refused: boolean;
  readonly text: string;
}

interface Props {
  readonly message: Message | null;
  readonly onDone: () => void;
  readonly keeping: Keeping;
  readonly keeper: Keeper;
}

export function Messages({ message, onDone, keeping, keeper }: Props) {
  const { trouble, news, elsewhere } = keeping;
  return (
    <section className="messages" aria-label="Messages">
      <div role="alert">
        {message?.refused && <Line text={message.text} look onDone={onDone} />}
        {trouble && <Line text={trouble} look onDone={() => keeper.dismiss()} />}
      </div>
      <div role="status">
        {message && !message.refused && <Line text={message.text} onDone={onDone} />}
        {news && <Line text={news} onDone={() => keeper.dismiss()} />}
        {elsewhere && (
          <Line text="This book is open in another tab too. Work in one of them: what you change here beside changes there is kept as a second copy." />
        )}
      </div>
    </section>
  );
}

function Line({ text, look = false, onDone }: { text: string; look?: boolean; onDone?: () => void }) {
  return (
    <p className={look ? "message message-look" : "message"}>
      {text}
      {onDone && (
        <button type="button" onClick={onDone}>
          Put away
        </button>
      )}
    </p>
  );
}
