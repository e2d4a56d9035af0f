/**
 * `npm run attack`: tries random cases of every generator and prints what it found.
 * `--minutes 10` in all, `--seed 7`, `--only formulas`, `--case 123` for one case of one generator.
 */
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import { generators } from "./catalogue.ts";
import { inShort, seedOf } from "./generator.ts";
import { Random } from "./random.ts";
import type { Finding, Orders } from "./worker.ts";

const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "1" },
    seed: { type: "string", default: "1" },
    only: { type: "string" },
    case: { type: "string" },
    show: { type: "boolean" },
  },
});
const seed = Number(values.seed);
const chosen = generators.filter(({ name }) => values.only === undefined || name === values.only);
if (chosen.length === 0) {
  console.error(
    `no generator is called "${values.only}"; there are ${generators.map(({ name }) => name).join(", ")}`,
  );
  process.exit(2);
}
const share = (Number(values.minutes) * 60_000) / chosen.length;
/** A machine that shares its processors with others is slower than one that does nothing else. */
const PATIENCE = 3;
/** How often longer a case may take by the clock than by its own work: a case that waits for ever ends too. */
const WAITING = 20;

/** The work that this program has done so far, in milliseconds of a processor. Only one thread works at a time. */
const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Tries the cases of a generator for its share of the time; a case that never ends costs its thread. */
async function attack(index: number): Promise<{ tried: number; findings: Finding[] }> {
  const generator = generators[index]!;
  const longest = (generator.longest ?? 5000) * PATIENCE;
  const findings: Finding[] = [];
  const until = performance.now() + share;
  const [start, most] = values.case === undefined ? [0, 2 ** 31] : [Number(values.case), 1];
  let first = start!;
  let tried = 0;
  while (performance.now() < until) {
    const shared = new SharedArrayBuffer(12);
    const state = new Int32Array(shared);
    state[0] = first;
    const orders: Orders = { generator: index, seed, first, most: most!, shared };
    const worker = new Worker(new URL("./worker.js", import.meta.url), {
      workerData: orders,
      resourceLimits: { maxOldGenerationSizeMb: 1500 },
    });
    worker.on("message", (finding: Finding) => findings.push(finding));
    const ended = await new Promise<string | null>((resolve) => {
      let [last, since, before] = [-1, performance.now(), worked()];
      const watch = setInterval(() => {
        const now = performance.now();
        const number = Atomics.load(state, 0);
        if (number !== last) [last, since, before] = [number, now, worked()];
        if (now > until && values.case === undefined) Atomics.store(state, 1, 1);
        if (worked() - before > longest) resolve(`did not end within ${longest / 1000} s of work`);
        if (now - since > longest * WAITING) resolve(`did not end within ${(longest * WAITING) / 1000} s`);
      }, 100);
      worker.on("error", (error) => resolve(`ended its thread: ${error.message}`));
      worker.on("exit", () => {
        clearInterval(watch);
        resolve(null);
      });
    });
    const number = Atomics.load(state, 0);
    tried += Atomics.load(state, 2) + (ended === null ? 0 : 1);
    await worker.terminate();
    if (ended === null) break;
    findings.push({
      number,
      says: ended,
      case: inShort(generator.make(new Random(seedOf(seed, index, number)))),
    });
    first = number + 1;
    if (values.case !== undefined) break;
  }
  return { tried, findings };
}

let wrong = 0;
for (const generator of chosen) {
  const index = generators.indexOf(generator);
  if (values.show) {
    console.log(
      JSON.stringify(generator.make(new Random(seedOf(seed, index, Number(values.case ?? 0)))), null, 1),
    );
    continue;
  }
  const { tried, findings } = await attack(index);
  console.log(`${generator.name}: ${tried} cases, ${findings.length} findings (${generator.about})`);
  for (const { number, says, case: text } of findings) {
    console.log(
      `  --seed ${seed} --only ${JSON.stringify(generator.name)} --case ${number}: ${says}\n    ${text}`,
    );
  }
  wrong += findings.length;
}
process.exit(wrong === 0 ? 0 : 1);
