/** The program itself: `main` with what was typed after its name, in the reader's language. */
import { takeUpLanguage } from "./language.ts";

const languages = new URL("./languages/", import.meta.url);
const { args, fault } = takeUpLanguage(process.argv.slice(2), process.env, languages);
const { outputFault } = await import("./machine.ts");
const { main, refuse } = await import("./main.ts");

process.stdout.on("error", (reason) => {
  const fault = outputFault(reason);
  if (fault !== null) process.stderr.write(`${fault}\n`);
  process.exit(fault === null ? 0 : 2);
});
process.exitCode = fault === null ? await main(args) : refuse(fault, args.includes("--json"));
