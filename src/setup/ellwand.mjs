/** `npm run -s ellwand -- VERB ...`: the command line, built first when its sources are newer. */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build, root } from "./build.mjs";

build("command");
await import(pathToFileURL(join(root, "dist/command/main.js")).href);
