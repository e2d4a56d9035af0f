/** Lets the browser keep the whole page, in the background, so that it opens without a network; calls `onNewer` once when a newer build is there. */

/** How often a page that stays open looks for a newer build, in milliseconds. */
const HOURLY = 3_600_000;

export async function keepOffline(onNewer: () => void): Promise<void> {
  const { serviceWorker } = navigator;
  const own = document.querySelector<HTMLScriptElement>("script[type=module][src]")?.src ?? "";
  // Held until the tab is gone: the build that this tab was started with stays as long.
  navigator.locks
    ?.request(`ellwand.page.${own}`, { mode: "shared" }, () => new Promise(() => {}))
    .catch(() => {});
  let called = false;
  const heard = () => {
    if (called) return;
    called = true;
    onNewer();
  };
  serviceWorker.addEventListener("message", ({ data }) => {
    if (Array.isArray(data?.newest) && !data.newest.includes(own)) heard();
  });
  serviceWorker.startMessages();
  const registration = await serviceWorker.register("./service-worker.js", { updateViaCache: "none" });
  // A build that becomes whole from now on is newer than this page, even while the browser holds its worker back.
  registration.addEventListener("updatefound", () => {
    const next = registration.installing;
    next?.addEventListener("statechange", () => {
      if (next.state === "installed" && serviceWorker.controller) heard();
    });
  });
  const look = () => {
    if (document.visibilityState === "visible") registration.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", look);
  setInterval(look, HOURLY);
  const { active, waiting } = await serviceWorker.ready;
  for (const worker of [active, waiting]) worker?.postMessage("started");
}
