/** The page: opens the book that was open last and shows it. */
import "./shell/shell.css";
import { createRoot } from "react-dom/client";
import { listenForFaults } from "./faults/faults.ts";
import { start } from "./files/start.ts";
import { rescue } from "./rescue.ts";
import { App } from "./shell/App.tsx";

export async function show(root: HTMLElement): Promise<void> {
  listenForFaults();
  const begun = await start();
  root.replaceChildren();
  createRoot(root, {
    // What no part's guard holds.
    onUncaughtError: (fault) => {
      console.error(fault);
      // React empties the page first.
      setTimeout(() => rescue(fault));
    },
  }).render(<App {...begun} />);
}
