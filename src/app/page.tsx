/** The page: opens the book that was open last and shows it. */
import { phrase } from "../../functions/phrase.ts";
import "./shell/shell.css";
import { flushSync } from "react-dom";
import { createRoot } from "react-dom/client";
import { allFunctions } from "./all-functions.ts";
import { listenForFaults } from "./faults/faults.ts";
import { reasonOf } from "./faults/in-time.ts";
import type { Keeper } from "./files/keeper.ts";
import { start } from "./files/start.ts";
import { remember } from "./files/storage.ts";
import { GridForm, RowsAndColumns, TypingHelp } from "./grid/late-forms.ts";
import { loadClipboardReader } from "./grid/late-paste.ts";
import { language } from "./language/language.ts";
import { rescue } from "./rescue.ts";
import { App } from "./shell/App.tsx";
import { loadBehind } from "./shell/behind.ts";

/** How long after the start the rest is loaded and the page is put by for use without a network, in milliseconds. */
const SETTLED = 2_000;

function keepWhole(keeper: Keeper): void {
  const tell = () =>
    keeper.tellNews(
      phrase`A new version of Ellwand is ready: it is used from the next time this page is loaded, and until then your work goes on with this one`,
    );
  // Where the browser can't keep the page, it works with its server as before.
  import("./offline/keep-offline.ts").then(({ keepOffline }) => keepOffline(tell)).catch(() => {});
}

export async function show(root: HTMLElement): Promise<void> {
  listenForFaults();
  const begun = await start();
  if (language.fault)
    begun.keeper.tellNews(
      phrase`The page is in English: the sentences of your language could not be loaded (${reasonOf(language.fault)})`,
    );
  // From now on the ready book is not shown before the start (first-screen/first-start.ts).
  remember("localStorage", "ellwand.started", "yes");
  const page = createRoot(root, {
    // What no part's guard holds.
    onUncaughtError: (fault) => {
      console.error(fault);
      // React empties the page first.
      setTimeout(() => rescue(fault));
    },
  });
  // React takes the first screen or the frame away when the page takes its place; the grid is there at once.
  flushSync(() => page.render(<App {...begun} />));
  // What does not come is asked for again by the first formula that needs it, and that says why.
  Promise.all([
    allFunctions(),
    GridForm.preload(),
    RowsAndColumns.preload(),
    TypingHelp.preload(),
    loadClipboardReader(),
  ]).then(
    () => root.setAttribute("data-functions", "all"),
    () => {},
  );
  setTimeout(loadBehind, SETTLED);
  // Behind everything else, and only as it is built: a page that is served for development changes with every edit.
  if (import.meta.env.PROD && "serviceWorker" in navigator)
    setTimeout(() => keepWhole(begun.keeper), SETTLED);
}
