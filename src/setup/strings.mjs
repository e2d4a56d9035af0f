/** `npm run strings`: collects the sentences of the code into the catalogues of src/languages/; `-- de` begins one for German. */
import { runnerImport } from "vite";
import { root } from "./build.mjs";

const { module } = await runnerImport(`${root}/src/setup/strings/collect.ts`, { configFile: false, root });
for (const line of module.collect(root, process.argv.slice(2))) process.stdout.write(`${line}\n`);
