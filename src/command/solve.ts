import { phrase } from "../../functions/phrase.ts";
import { BOOK_UNITS } from "../../functions/units.ts";
import type { Engine } from "../engine/engine.ts";
import { leftOut } from "../engine/left-out.ts";
import { numberOf } from "../engine/question-engine.ts";
import type { Watched } from "../engine/sweep.ts";
import type { Target } from "../engine/target.ts";
import { clean, figureFor } from "../engine/varied-cell.ts";
import { answerTo } from "./answer.ts";
import { laidNote } from "./laid.ts";
import { openBook, setCells } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { notALength, notANumber, VARIED_OPTIONS, variedCellsOf, watchesOf } from "./varied-cells.ts";
import { type Verb, type VerbOptions, Wrong } from "./verb.ts";

const AIMS = ["atmost", "atleast", "equal", "minimise", "maximise"] as const;
const AIMS_TYPED = AIMS.map((aim) => `--${aim}`).join(", ");

const OPTIONS = {
  ...VARIED_OPTIONS,
  make: { type: "string", value: "NAME", about: phrase`the cell whose value is to meet the target` },
  atmost: { type: "string", value: "V", about: phrase`the target: no more than V` },
  atleast: { type: "string", value: "V", about: phrase`the target: no less than V` },
  equal: { type: "string", value: "V", about: phrase`the target: exactly V, or as near as the tape allows` },
  minimise: { type: "boolean", about: phrase`the target: as small as possible` },
  maximise: { type: "boolean", about: phrase`the target: as large as possible` },
  least: { type: "boolean", about: phrase`answers with the smallest value that works, not the largest` },
} as const satisfies VerbOptions;

export const solve: Verb = {
  name: "solve",
  usage:
    "BOOK --cell NAME --make NAME --atmost V|--atleast V|--equal V|--minimise|--maximise [--from A] [--to B] [--step S] [--cell NAME --from A --to B ...] [--least] [--set NAME=VALUE]... [--seconds N] [--json]",
  about: phrase`Finds the largest (or with --least the smallest) value of a typed cell that keeps another cell where it should be; with --seconds N the lays at the answer and near it are searched for N seconds each, and the answer is corrected by them.`,
  options: OPTIONS,
  examples: [
    "solve templates/peplum-bodice.json --cell depth --make hem --atmost 80",
    "solve templates/peplum-bodice.json --cell depth --from 6 --to 12 --make hem --atleast 60 --least --json",
  ],
  writes: phrase`The answer on standard output, and no file.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined) throw needsBook("solve");
    const engine = openBook(positionals[0], io);
    setCells(engine, values.set ?? []);
    const { varied, spans } = variedCellsOf(engine, values, "solve");
    const [make] = watchesOf(engine, values.make === undefined ? [] : [values.make], "--make");
    if (!make) throw new Wrong(phrase`${"solve"} needs --make and the name of the cell to bring to a value`);
    const { value } = engine.view(make.place);
    if (typeof value === "boolean" || (typeof value === "string" && value !== ""))
      throw new Wrong(
        phrase`${make.label} says "${String(value).slice(0, 60)}" and holds no number; name a cell that holds one`,
      );
    const aim = aimOf(engine, make, values);
    const places = varied.map(({ place }) => place);
    const answer = answerTo(
      { is: "solve", book: engine.book, varied: places, spans, make, aim, least: values.least ?? false },
      values.seconds,
    );
    const { found, sentence, sureness } = answer.solution!;
    if (!found) throw new Wrong([sentence, sureness ?? []].flat().join("; "));
    const warnings = leftOut(engine, [make.place], places);
    const note = laidNote(answer.laid);
    if (!values.json) {
      const lines = [sentence, ...warnings.map((one) => phrase`check: ${one}`), sureness ?? [], note || []];
      io.out(lines.flat().join("\n"));
    } else {
      const data = [
        ...varied.map(({ label }, i) => [label, found.figures[i]]),
        [make.label, clean(numberOf(found.readings[0])!)],
        ["says", sentence],
        ...(sureness ? [["sure", sureness]] : []),
        ...(warnings.length > 0 ? [["check", warnings]] : []),
        ...(answer.laid ? [["how laid", answer.laid]] : []),
      ];
      io.out(JSON.stringify(Object.fromEntries(data), null, 2));
    }
    return 0;
  },
};

type Typed = { readonly [K in (typeof AIMS)[number]]?: string | boolean | undefined };

function aimOf(engine: Engine, make: Watched, typed: Typed): Target {
  const given = AIMS.filter((aim) => typed[aim] !== undefined && typed[aim] !== false);
  const [is] = given;
  if (is === undefined || given.length > 1)
    throw new Wrong(
      is
        ? phrase`${"solve"} needs one of ${AIMS_TYPED}, not ${given.length}`
        : phrase`${"solve"} needs one of ${AIMS_TYPED}`,
    );
  if (is === "minimise" || is === "maximise") return { is: is === "minimise" ? "lowest" : "highest" };
  const text = String(typed[is]);
  const value = figureFor(engine.book, make, text);
  if (value === null)
    throw new Wrong(
      make.kind === "length"
        ? notALength(is, BOOK_UNITS[engine.book.unit].cloth, text)
        : notANumber(is, text),
    );
  return { is, value };
}
