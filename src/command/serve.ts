import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { phrase } from "../../functions/phrase.ts";
import { readOptions } from "./options.ts";
import { PortRefused, servePage } from "./page-server.ts";
import { type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  port: {
    type: "string",
    value: "N",
    about: phrase`serves on this port and no other; without it on 4600, or the next that is free`,
  },
} as const satisfies VerbOptions;

const FIRST_PORT = 4600;

/** The built page lies beside the built command line, in a clone and in the packed library. */
const PAGE = fileURLToPath(new URL("../app/", import.meta.url));

function refusalOf({ port, code }: PortRefused): string {
  if (code === "EADDRINUSE")
    return phrase`port ${port} is taken by another program; give another with --port`;
  if (code === "EACCES") return phrase`port ${port} may not be used by you; give another with --port`;
  return phrase`port ${port} can't be used (${code}); give another with --port`;
}

function portOf(text: string | undefined): number {
  if (text === undefined) return FIRST_PORT;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535)
    throw new Wrong(phrase`--port must be a whole number from 0 to 65535, not ${text}`);
  return port;
}

export const serve: Verb = {
  name: "serve",
  usage: "[--port N]",
  about: phrase`Serves the page on this machine only, prints where, and goes on until Ctrl+C. The books stay in the browser.`,
  options: OPTIONS,
  examples: ["serve", "serve --port 8080"],
  writes: phrase`The page's address on standard output.`,
  lasting: true,
  async run(args, io) {
    const { values } = readOptions(args, OPTIONS, 0);
    const port = portOf(values.port);
    if (!existsSync(join(PAGE, "index.html")))
      throw new Wrong(
        phrase`the page has not been built here; in a clone, ${"npm start"} builds and serves it`,
      );
    try {
      const { address, close } = await servePage(PAGE, port, values.port !== undefined);
      io.out(phrase`Ellwand is at ${address}  (Ctrl+C ends it)`);
      await new Promise<void>((end) => {
        for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => end());
      });
      await close();
      return 0;
    } catch (reason) {
      if (!(reason instanceof PortRefused)) throw reason;
      throw new Wrong(refusalOf(reason));
    }
  },
};
