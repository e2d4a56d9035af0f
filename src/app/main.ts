/**
 * The page's first script. It is small and loads the rest, so that a fault in the rest is shown. The
 * styles of the frame in index.html come with it, so that the frame is painted before the rest is there.
 */
import "./shell/theme.css";
import "./shell/shell.css";
import "./shell/top.css";
import "./shell/side.css";
import "./pages/pages.css";
import "./checks/checks.css";
import "./grid/bar.css";
import "./grid/grid.css";
import "./first-screen/first-screen.css";
import { takeUpLanguage } from "./language/language.ts";
import { rescue } from "./rescue.ts";
import { setSideWidth } from "./shell/side-width.ts";

setSideWidth();
try {
  // Before the rest, which has sentences that are made as it is loaded.
  await takeUpLanguage();
  const { show } = await import("./page.tsx");
  await show(document.getElementById("page")!);
} catch (fault) {
  console.error(fault);
  rescue(fault);
}
