/** One function at work: its arguments, its steps with the numbers in them, its answer, its source. */
import "../function-words.ts";
import { Suspense } from "react";
import { phrase, translated } from "../../../functions/phrase.ts";
import type { CallWorking } from "../../engine/explain.ts";
import { lazily } from "../faults/lazily.tsx";

const Source = lazily(async () => (await import("./Source.tsx")).Source);

export function CallSteps({ call }: { call: CallWorking }) {
  const { declaration, given, steps, answer, refused } = call;
  const { takes, name, summary, cautions } = declaration;
  return (
    <div className="call">
      <p className="call-name">
        <b>{name}</b> {translated(summary)}
      </p>
      <table className="figures">
        <caption className="unseen">{phrase`Arguments of ${name}`}</caption>
        <tbody>
          {given.map((one) => (
            <tr key={one.name}>
              <th scope="row" title={translated(takes[one.name]?.about ?? "")}>
                {one.name}
              </th>
              <td>{one.shown === "" ? phrase`left out` : one.shown}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {steps.length > 0 && (
        <ol className="steps">
          {steps.map((step) => (
            <li key={step.name}>
              <span className="step-name">{step.name}</span>
              <span className="step-value">{step.shown}</span>
              {step.formula ? (
                <>
                  <span className="step-rule">= {step.rule}</span>
                  {step.filled !== step.rule && <span className="step-rule">= {step.filled}</span>}
                </>
              ) : (
                <span className="step-words">{step.rule}</span>
              )}
              {step.parts && <span className="step-words">{step.parts}</span>}
            </li>
          ))}
        </ol>
      )}
      <p className={refused ? "look" : "answer"}>{refused ? answer : phrase`gives ${answer}`}</p>
      {cautions && (
        <p className="caution">
          <b>{phrase`Take care:`}</b> {translated(cautions)}
        </p>
      )}
      <Suspense>
        <Source of={declaration} />
      </Suspense>
    </div>
  );
}
