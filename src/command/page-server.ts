/** Serves the built page from a folder to this machine alone. */

import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import sirv from "sirv";
import { phrase } from "../../functions/phrase.ts";

/** The loopback address: no other machine reaches it. */
const HOST = "127.0.0.1";

/** How many ports after the first are tried when it is taken. */
const MORE_PORTS = 20;

export interface PageServer {
  readonly address: string;
  close(): Promise<void>;
}

/** A port is taken by another program, or may not be used: `code` is the machine's word for it. */
export class PortRefused extends Error {
  constructor(
    readonly port: number,
    readonly code: string,
  ) {
    super(`port ${port}: ${code}`);
  }
}

/**
 * Serves a folder on the loopback address. With `exact` only that port will do; else the next free
 * one is taken. 0 stands for any free port. Throws `PortRefused`.
 */
export async function servePage(folder: string, port: number, exact: boolean): Promise<PageServer> {
  // Every file is read anew and compared by its date, so that a page that was built again is served at once.
  const files = sirv(folder, {
    dev: true,
    etag: true,
    setHeaders(response) {
      response.setHeader("X-Content-Type-Options", "nosniff");
      response.setHeader("Referrer-Policy", "no-referrer");
      response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
    },
  });
  const server = createServer((request, response) =>
    files(request, response, () => {
      response.statusCode = 404;
      response.end(`${phrase`There is no such file here.`}\n`);
    }),
  );
  const listen = (at: number) =>
    new Promise<void>((done, fail) => {
      server.once("error", (reason: NodeJS.ErrnoException) =>
        fail(new PortRefused(at, reason.code ?? phrase`for no known reason`)),
      );
      server.listen(at, HOST, () => {
        server.removeAllListeners("error");
        done();
      });
    });
  for (let at = port; ; at++) {
    try {
      await listen(at);
      break;
    } catch (reason) {
      const taken = (reason as PortRefused).code === "EADDRINUSE";
      if (exact || !taken || at >= port + MORE_PORTS) throw reason;
    }
  }
  return {
    address: `http://${HOST}:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
