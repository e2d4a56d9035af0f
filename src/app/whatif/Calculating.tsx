/** That an answer is being worked out, with a way to stop it; or that it was stopped or failed, with a way to ask again. */
import { phrase } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";
import { Progress } from "../progress/Progress.tsx";
import type { StoppableAnswer } from "./useAnswer.ts";

interface Props {
  readonly answer: StoppableAnswer;
  /** Whether nothing is said in the first second: where each move of a slider asks anew. */
  readonly late?: boolean;
}

export function Calculating({ answer, late = false }: Props) {
  const { busy, isStopped, problem, stop, again } = answer;
  if (isStopped || (problem && !busy))
    return (
      <p className="aside">
        {isStopped && phrase`The calculation was stopped. `}
        <button
          type="button"
          onClick={() => {
            handOn(".part");
            again();
          }}
        >{phrase`Calculate again`}</button>
      </p>
    );
  if (!busy) return null;
  return (
    <p>
      <Progress
        what={phrase`Calculating`}
        late={late}
        onStop={stop}
        onAgain={again}
        news={answer.newsCount}
      />
    </p>
  );
}
