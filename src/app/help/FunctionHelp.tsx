/** The help of one function: all of it from its declaration, its examples worked as one reads. */

import type { Declaration, Example } from "../../../functions/define.ts";
import { DEFAULT_MARK } from "../../../functions/fractions.ts";
import {
  allowed,
  argumentText,
  blockSignatures,
  exampleFormula,
  kindText,
  signature,
} from "../../../functions/help.ts";
import { phrase } from "../../../functions/phrase.ts";
import { isRefused, run } from "../../../functions/run.ts";
import { BOOK_UNITS } from "../../../functions/units.ts";
import { type Rule, show } from "../../engine/show.ts";
import { layDesk } from "../../lay/desk.ts";

export function FunctionHelp({ declaration, rule }: { declaration: Declaration; rule: Rule }) {
  const { name, summary, takes, returns, examples, source, cautions } = declaration;
  const { block, twoBlocks } = declaration;
  return (
    <>
      <h3>{name}</h3>
      <p>{summary}</p>
      {blockSignatures(declaration).map((line) => (
        <p className="formula" key={line}>
          ={line}
        </p>
      ))}
      <p className="formula">={signature(declaration)}</p>
      <dl className="takes">
        {Object.entries({ ...block?.takes, ...twoBlocks?.takes, ...takes }).map(([argument, take]) => (
          <div key={argument}>
            <dt>{argumentText(argument, take)}</dt>
            <dd>
              {take.about} <small>({allowed(take, rule.unit)})</small>
            </dd>
          </div>
        ))}
        <div>
          <dt>{phrase`result`}</dt>
          <dd>{kindText(returns)}</dd>
        </div>
      </dl>
      {Object.entries({ ...twoBlocks?.takes, ...takes }).map(
        ([argument, { list }]) =>
          list && (
            <div key={argument}>
              <h4>{phrase`Headings of ${argument}`}</h4>
              <dl className="takes">
                {Object.values(list.columns).map(({ headings, about, needed }) => (
                  <div key={headings[0]}>
                    <dt>{headings[0]}</dt>
                    <dd>
                      {about} {!needed && <small>{phrase`(may be left out)`}</small>}
                    </dd>
                  </div>
                ))}
              </dl>
            </div>
          ),
      )}
      {cautions && (
        <p className="caution">
          <b>{phrase`Take care:`}</b> {cautions}
        </p>
      )}
      <h4>{phrase`Examples`}</h4>
      <ul className="examples">
        {[...(twoBlocks?.examples ?? []), ...(block?.examples ?? [])].map(({ formula, because }) => (
          <li key={formula}>
            <p className="formula">{formula}</p>
            <p>
              <small>{because}</small>
            </p>
          </li>
        ))}
        {examples.map((example) => (
          <li key={example.because}>
            <p className="formula">{exampleFormula(declaration, example)}</p>
            <p>
              <b>{answerOf(declaration, example)}</b>
              {example.unit ? phrase` (in ${example.unit})` : ""} <small>{example.because}</small>
            </p>
          </li>
        ))}
      </ul>
      <p className="source">{phrase`Source: ${source}`}</p>
    </>
  );
}

function answerOf(declaration: Declaration, { given, unit = "in" }: Example): string {
  const args = Object.keys(declaration.takes).map((name) => given[name] ?? null);
  const answer = run(declaration, args, { unit, plan: (question) => layDesk(question, {}) });
  if (isRefused(answer)) return answer.refusal;
  return show(answer, declaration.returns, {
    unit,
    mark: BOOK_UNITS[unit].tape === "in" ? "1/16" : DEFAULT_MARK[unit],
  });
}
