import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import { UNITS, type Unit } from "../../functions/units.ts";
import { type Garment, type Question, readGarment } from "../book/garment.ts";
import { UNIT_WORDS } from "../book/unit-words.ts";
import { writeBook } from "../book/write.ts";
import { begin as beginBook, exampleOf } from "../engine/begin.ts";
import { fileName } from "./machine.ts";
import { readOptions, unitFrom } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  answer: {
    type: "string",
    multiple: true,
    value: "NAME=VALUE",
    about: phrase`the answer to the question NAME; may be repeated`,
  },
  unit: {
    type: "string",
    default: "in",
    value: "UNIT",
    about: phrase`the unit of the new book: ${UNITS.join(", ")}`,
  },
  out: {
    type: "string",
    value: "FILE",
    about: phrase`writes the new book into FILE; without it the questions are listed`,
  },
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const begin: Verb = {
  name: "begin",
  usage: "GARMENT [--answer NAME=VALUE]... [--unit UNIT] [--out FILE] [--json]",
  about: phrase`Begins a book from a garment's file: lists its questions, or with --out writes the book with the answers in it.`,
  options: OPTIONS,
  examples: [
    "begin templates/garments/gored-skirt.json --unit cm",
    "begin templates/garments/gored-skirt.json --answer waist=27 --answer hip=39 --answer hip_drop=8 --answer skirt_length=38 --out skirt.json",
  ],
  writes: phrase`The new book into the file of --out, and what is unusual about the answers on standard error.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined)
      throw new Wrong(
        phrase`${"begin"} needs a garment's file, such as ${"templates/garments/gored-skirt.json"}`,
      );
    const reading = readGarment(io.read(positionals[0]));
    if ("reason" in reading) throw new Wrong(`${fileName(positionals[0])}: ${reading.reason}`);
    const unit = unitFrom(values.unit);
    const { garment } = reading;
    const answers = answersIn(values.answer ?? [], garment);
    const how = { unit, today: today() };
    if (values.out === undefined) {
      io.out(values.json ? asData(garment, unit) : inWords(garment, unit));
      return 0;
    }
    const { book, remarks } = beginBook(garment, answers, how);
    const faults = remarks.filter(({ fault }) => fault);
    if (faults.length > 0) throw new Wrong(faults.map(({ sentence }) => sentence).join("; "));
    io.write(values.out, writeBook(book));
    for (const { sentence } of remarks) io.err(sentence);
    if (values.json) io.out(JSON.stringify({ file: values.out, title: book.title, remarks }, null, 2));
    else io.out(`${values.out}: ${book.title}`);
    return 0;
  },
};

/** The day in the machine's own time, as ISO writes it. */
function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function answersIn(given: readonly string[], { questions }: Garment): Record<string, string> {
  const names = questions.map(({ name }) => name);
  return Object.fromEntries(
    given.map((answer) => {
      const cut = answer.indexOf("=");
      if (cut < 1) throw new Wrong(phrase`${"--answer"} needs NAME=VALUE, not "${answer}"`);
      const name = answer.slice(0, cut);
      if (names.includes(name)) return [name, answer.slice(cut + 1)];
      const near = nearestWord(name, names);
      throw new Wrong(
        near
          ? phrase`${name} is not a question of this garment; is ${near} meant?`
          : phrase`${name} is not a question of this garment; it asks for ${names.join(", ")}`,
      );
    }),
  );
}

const describe = (garment: Garment, unit: Unit) =>
  garment.questions.map((question) => ({
    ...question,
    example: exampleOf(garment, question, { unit, today: today() }),
  }));

const asData = (garment: Garment, unit: Unit): string =>
  JSON.stringify(
    {
      title: garment.title,
      about: garment.about,
      unit,
      mark: DEFAULT_MARK[unit],
      questions: describe(garment, unit),
    },
    null,
    2,
  );

function inWords(garment: Garment, unit: Unit): string {
  const lines = describe(garment, unit).map((question) => {
    const example = question.kind === "choice" ? question.choices.join(", ") : question.example;
    return `  ${question.name}: ${question.ask}${hintOf(question)}\n      ${question.needed ? phrase`needed, for example ${example}` : phrase`${example} when left out`}`;
  });
  return [phrase`${garment.title}, in ${UNIT_WORDS[unit]}`, garment.about, "", ...lines].join("\n");
}

const hintOf = ({ hint }: Question): string => (hint === "" ? "" : ` (${hint})`);
