/** The page's first script. It is small and loads the rest, so that a fault in the rest is shown. */
import "./shell/theme.css";
import { rescue } from "./rescue.ts";

try {
  const { show } = await import("./page.tsx");
  await show(document.getElementById("page")!);
} catch (fault) {
  console.error(fault);
  rescue(fault);
}
