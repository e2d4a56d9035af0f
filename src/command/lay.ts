/** The verb `lay`: pieces from a file on a strip of cloth, searched for the least length. */

import { availableParallelism } from "node:os";
import { withPoints } from "../../functions/decimal.ts";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { layDrawing } from "./lay-drawing.ts";
import { readLayFile } from "./lay-file.ts";
import { searchOnThreads } from "./lay-threads.ts";
import { type Io, JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

/** What the command line asks for. */
interface LayRequest {
  readonly file: string;
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  readonly json: boolean;
  readonly svg: string | null;
}

const OPTIONS = {
  seconds: {
    type: "string",
    value: "N",
    about: phrase`how long to search; 10 when left out, 0 for the quick lay alone`,
  },
  seed: {
    type: "string",
    value: "N",
    about: phrase`a number that chooses where the search begins: with the same seed, the same time and one thread the search mostly finds the same lay; 1 when left out`,
  },
  threads: {
    type: "string",
    value: "N",
    about: phrase`how many threads search, 0 for the program itself alone; one less than the machine has when left out`,
  },
  ...JSON_OPTION,
  svg: { type: "string", value: "FILE", about: phrase`draws the lay into this file` },
} as const satisfies VerbOptions;

export const lay: Verb = {
  name: "lay",
  usage: "FILE [--seconds N] [--seed N] [--threads N] [--json] [--svg FILE]",
  about: phrase`Lays the pieces of FILE on a strip of cloth and searches for the least length, 10 seconds unless --seconds says otherwise; density is a share, 0 to 1. FILE is JSON: {stripWidth, allowedRotations: [0, 180], gap: least distance between cut lines, repeat: pattern repeat along the strip, pieces: [{id, quantity, outline: [[x, y], ...], allowedRotations, match: [x, y] that keeps its place in the repeat}]}; gap, repeat, match and every allowedRotations may be left out.`,
  options: OPTIONS,
  examples: ["lay pieces.json --seconds 1 --threads 0", "lay pieces.json --seconds 0 --svg lay.svg --json"],
  writes: phrase`The lay on standard output; with --svg, a drawing in FILE.`,
  async run(args, io) {
    const began = performance.now();
    const request = requestFrom(args);
    const file = readLayFile(io.read(request.file));
    const found = await searchOnThreads(file.question, {
      ...request,
      began,
      complain: (text) => io.err(text),
    });
    if ("refusal" in found) throw new Wrong(found.refusal);
    const seconds = Math.round(performance.now() - began) / 1000;
    if (request.svg !== null) io.write(request.svg, layDrawing(file.question, found));
    if (request.json) io.out(JSON.stringify(answer(file.ids, found, seconds)));
    else writeLines(file.question, found, seconds, io);
    return 0;
  },
};

/** The lay as the JSON document has it. */
function answer(ids: readonly (string | number)[], found: Lay, seconds: number) {
  return {
    length: found.lengths[0]!,
    density: found.density,
    seconds,
    placements: found.placements.map(({ piece, copy, turn, x, y }) => ({
      piece: ids[piece]!,
      copy,
      rotation: turn,
      x,
      y,
    })),
  };
}

/** The lay in words: a line of what it takes, then a line for each copy. */
function writeLines(question: LayQuestion, found: Lay, seconds: number, io: Io): void {
  const share = (100 * found.density).toFixed(2);
  io.out(
    phrase`${plural(found.placements.length, "# piece", "# pieces")} on a length of ${found.lengths[0]!.toFixed(4)}, ${share} % of the cloth used, ${seconds} s`,
  );
  for (const { piece, copy, turn, x, y } of found.placements)
    io.out(
      phrase`${question.pieces[piece]!.name} ${copy + 1}: turned ${turn}°, at ${x.toFixed(4)}, ${y.toFixed(4)}`,
    );
}

function requestFrom(args: readonly string[]): LayRequest {
  let file: string | null = null;
  let seconds = 10;
  let seed = 1;
  let threads = Math.max(1, availableParallelism() - 1);
  let json = false;
  let svg: string | null = null;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    const next = () => {
      const value = args[++i];
      if (value === undefined) throw new Wrong(phrase`${arg} needs a value after it`);
      return value;
    };
    if (arg === "--seconds") seconds = numberFrom(arg, next(), 0, 86_400, false);
    else if (arg === "--seed") seed = numberFrom(arg, next(), 0, 2 ** 32 - 1, true);
    else if (arg === "--threads") threads = numberFrom(arg, next(), 0, 256, true);
    else if (arg === "--json") json = true;
    else if (arg === "--svg") svg = next();
    else if (arg.startsWith("-") && arg !== "-")
      throw new Wrong(phrase`${"lay"} has no option ${arg}: it takes ${lay.usage}`);
    else if (file === null) file = arg;
    else throw new Wrong(phrase`${"lay"} takes one file, not ${file} and ${arg}`);
  }
  if (file === null)
    throw new Wrong(phrase`${"lay"} needs a file: ${`lay ${lay.usage}`}, or - for standard input`);
  return { file, seconds, seed, threads, json, svg };
}

function numberFrom(option: string, text: string, from: number, to: number, whole: boolean): number {
  const value = text.trim() === "" ? Number.NaN : Number(withPoints(text, "point") ?? Number.NaN);
  if (!(value >= from && value <= to) || (whole && !Number.isInteger(value)))
    throw new Wrong(
      whole
        ? phrase`${option} must be a whole number from ${from} to ${to}, not ${text}`
        : phrase`${option} must be a number from ${from} to ${to}, not ${text}`,
    );
  return value;
}
