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
  serviceWorker.addEventListener("message", ({ data }) => {
    if (called || !Array.isArray(data?.newest) || data.newest.includes(own)) return;
    called = true;
    onNewer();
  });
  serviceWorker.startMessages();
  const registration = await serviceWorker.register("./service-worker.js", { updateViaCache: "none" });
  const look = () => {
    if (document.visibilityState === "visible") registration.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", look);
  setInterval(look, HOURLY);
  (await serviceWorker.ready).active?.postMessage("started");
}
