/** `npm start`: installs, builds, then serves the page on this machine only and prints where; PORT chooses the port. */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build, root } from "./build.mjs";

build("app");
build("command");
process.argv = [
  ...process.argv.slice(0, 2),
  "serve",
  ...(process.env.PORT ? ["--port", process.env.PORT] : []),
];
await import(pathToFileURL(join(root, "dist/command/main.js")).href);
