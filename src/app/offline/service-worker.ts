/**
 * Keeps each build of the page whole in the browser, so that Ellwand opens without a network. A build
 * is kept under a name of its own; the page is only ever served from a build of which every file is
 * there, letter for letter as it was built. A build stays as long as a tab uses it.
 *
 * It is one file without imports. `src/setup/offline.ts` puts the list of the build's files in.
 */

/** The build's own name, and the checksums of its files by path, as `src/setup/offline.ts` describes them. */
declare const __BUILT__: { readonly build: string; readonly files: Readonly<Record<string, string>> };

/** What this file uses of a service worker's own objects; the types of pages have no such thing. */
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Heard extends Waiting {
  readonly source: { postMessage(data: unknown): void } | null;
}
interface Scope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: {
      includeUncontrolled: boolean;
    }): Promise<readonly { postMessage(data: unknown): void }[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (event: Waiting) => void): void;
  addEventListener(type: "message", listener: (event: Heard) => void): void;
  addEventListener(type: "fetch", listener: (event: Fetching) => void): void;
}

const worker = self as unknown as Scope;
const { build, files } = __BUILT__;
const START = "ellwand.build.";
const OWN = START + build;
/** Put in last: a build that has it is whole. */
const WHOLE = "whole-build";
/** How long the page may wait for a newer build, in milliseconds; it then comes from the build that is there. */
const PATIENCE = 1_500;

const at = (path: string): string => new URL(path, worker.registration.scope).href;

/** Names in `assets` change with the content; such a file may come from the browser's own cache. */
const isNamedByContent = (path: string): boolean => path.startsWith("assets/");

/** A file that an older build has already, if it is this one letter for letter. */
async function known(url: string, integrity: string): Promise<Response | null> {
  const file = await caches.match(url);
  if (!file) return null;
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", await file.clone().arrayBuffer()));
  return `sha256-${btoa(String.fromCharCode(...sum))}` === integrity ? file : null;
}

/**
 * A file as it was built. The browser's own cache may hold a torn copy under the same name, which would keep every
 * later build away; then the server is asked again.
 */
async function fetched(url: string, integrity: string, cache: RequestCache): Promise<Response> {
  const file = await fetch(new Request(url, { integrity, cache })).catch(() => null);
  return file?.ok ? file : fetch(new Request(url, { integrity, cache: "reload" }));
}

async function install(): Promise<void> {
  await caches.delete(OWN);
  const cache = await caches.open(OWN);
  try {
    // One after another: the page that is open goes first.
    for (const [path, integrity] of Object.entries(files)) {
      const url = at(path);
      const mode = isNamedByContent(path) ? "default" : "no-cache";
      const file = (await known(url, integrity)) ?? (await fetched(url, integrity, mode));
      if (!file.ok) throw new Error(`${path} is not there`);
      await cache.put(url, file);
    }
    await cache.put(at(WHOLE), new Response(build));
  } catch (fault) {
    await caches.delete(OWN);
    throw fault;
  }
  await worker.skipWaiting();
}

/** Which files this build has; a tab sees from it whether it is older. */
const newest = () => ({ newest: Object.keys(files).map(at) });

/** Takes over the tabs that are open and says to them that this build is the newest. */
async function activate(): Promise<void> {
  await worker.clients.claim();
  for (const tab of await worker.clients.matchAll({ includeUncontrolled: true })) tab.postMessage(newest());
}

/** The names of the builds that are here, the oldest first. */
const builds = async (): Promise<string[]> => (await caches.keys()).filter((name) => name.startsWith(START));

/** Looks for a newer build on the server, and waits until it is here whole, in the limits of patience. */
async function lookForNewer(): Promise<void> {
  const { registration } = worker;
  const newer = async () => {
    await registration.update();
    const next = registration.installing;
    if (!next) return;
    await new Promise((done) => {
      next.addEventListener("statechange", done);
    });
  };
  await Promise.race([newer(), new Promise((done) => setTimeout(done, PATIENCE))]);
}

/** The page, from the newest build that is whole. */
async function page(request: Request): Promise<Response> {
  try {
    await lookForNewer();
  } catch {
    // A server without this file serves something else at this address; without a server the page is kept here.
    const there = await fetch(at("service-worker.js"), { cache: "no-store" }).catch(() => null);
    if (there?.status === 404) return fetch(request);
  }
  for (const name of (await builds()).toReversed()) {
    const cache = await caches.open(name);
    const kept = (await cache.match(at(WHOLE))) && (await cache.match(at("")));
    if (kept) return kept;
  }
  return fetch(request);
}

/** Answers a tab that has started: a build that became whole before the tab could hear is not lost to it. */
async function answer({ source }: Heard): Promise<void> {
  for (const name of (await builds()).toReversed()) {
    if (!(await (await caches.open(name)).match(at(WHOLE)))) continue;
    // Where a newer build is whole, its own worker says so as soon as it is active.
    if (name === OWN) source?.postMessage(newest());
    return;
  }
}

/** A part of the page: from this build, else from the older one that the tab was started with. */
async function part(url: string, request: Request): Promise<Response> {
  const own = await (await caches.open(OWN)).match(url);
  return own ?? (await caches.match(url)) ?? fetch(request);
}

/** Lets go of the builds before this one that no tab uses any more. A tab holds a lock with the name of its first script. */
async function letGo(): Promise<void> {
  const { held = [] } = await navigator.locks.query();
  const used = held.flatMap(({ name }) => (name?.startsWith("ellwand.page.") ? [name.slice(13)] : []));
  const all = await builds();
  for (const name of all.slice(0, Math.max(0, all.indexOf(OWN)))) {
    const cache = await caches.open(name);
    const inUse = await Promise.all(used.map((script) => cache.match(script)));
    if (!inUse.some(Boolean)) await caches.delete(name);
  }
}

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(activate()));
// A page that has started says so.
worker.addEventListener("message", (event) => event.waitUntil(Promise.all([answer(event), letGo()])));
worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname, href } = new URL(request.url);
  const root = new URL(worker.registration.scope);
  if (request.method !== "GET" || origin !== root.origin || !pathname.startsWith(root.pathname)) return;
  const path = pathname.slice(root.pathname.length);
  if (path === "" || path === "index.html") event.respondWith(page(request));
  else if (Object.hasOwn(files, path) || isNamedByContent(path))
    event.respondWith(part(href.replace(/[?#].*/, ""), request));
});

// Its names are its own.
export {};
