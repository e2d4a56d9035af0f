/** `npm start`: installs, builds and serves the page on this machine only, and prints where. */
import { build, root } from "./build.mjs";

build("app");
const { preview } = await import("vite");
const port = process.env.PORT ? Number(process.env.PORT) : 4600;
const server = await preview({
  configFile: `${root}/vite.config.ts`,
  mode: "app",
  logLevel: "warn",
  preview: { host: "127.0.0.1", port, strictPort: process.env.PORT !== undefined },
});
process.stdout.write(`Ellwand is at ${server.resolvedUrls?.local[0] ?? "?"}  (Ctrl+C ends it)\n`);
