/** The help of one built-in function, with the cells that its examples use. */
import { phrase } from "../../../functions/phrase.ts";
import {
  type BuiltIn,
  builtInSignature,
  EXAMPLE_CELLS,
  EXAMPLE_COLUMNS,
} from "../../engine/built-ins/built-in.ts";

export function BuiltInHelp({ builtIn }: { builtIn: BuiltIn }) {
  const { name, summary, takes, examples, cautions } = builtIn;
  const usesCells = examples.some(({ formula }) => /\b[A-E][1-6]\b|waist|hip/.test(formula));
  return (
    <>
      <h3>{name}</h3>
      <p>{summary}</p>
      <p className="formula">={builtInSignature(builtIn)}</p>
      <dl className="takes">
        {Object.entries(takes).map(([argument, about]) => (
          <div key={argument}>
            <dt>{argument}</dt>
            <dd>{about}</dd>
          </div>
        ))}
      </dl>
      {cautions && (
        <p className="caution">
          <b>{phrase`Take care:`}</b> {cautions}
        </p>
      )}
      <h4>{phrase`Examples`}</h4>
      <ul className="examples">
        {examples.map(({ formula, gives, because }) => (
          <li key={formula}>
            <p className="formula">{formula}</p>
            <p>
              <b>{gives}</b> <small>{because}</small>
            </p>
          </li>
        ))}
      </ul>
      {usesCells && <ExampleCells />}
    </>
  );
}

function ExampleCells() {
  return (
    <table className="example-cells">
      <caption>{phrase`The cells of the examples, in inches; D5 is named waist, D6 hip.`}</caption>
      <thead>
        <tr>
          <td />
          {EXAMPLE_COLUMNS.map(({ heading }, column) => (
            <th key={heading} scope="col">
              {"ABCDE"[column]} <small>{heading}</small>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {EXAMPLE_CELLS.map((cells, row) => (
          <tr key={cells[0]}>
            <th scope="row">{row + 1}</th>
            {cells.map((text, column) => (
              <td key={EXAMPLE_COLUMNS[column]!.heading}>{text}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
