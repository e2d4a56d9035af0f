/** The program itself: `main` with what was typed after its name. */
import { outputFault } from "./machine.ts";
import { main } from "./main.ts";

process.stdout.on("error", (reason) => {
  const fault = outputFault(reason);
  if (fault !== null) process.stderr.write(`${fault}\n`);
  process.exit(fault === null ? 0 : 2);
});
process.exitCode = await main(process.argv.slice(2));
