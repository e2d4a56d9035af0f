/** The program itself: `main` with what was typed after its name. */
import { main } from "./main.ts";

process.stdout.on("error", () => process.exit(0));
process.exitCode = await main(process.argv.slice(2));
