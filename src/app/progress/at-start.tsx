/** Shows what the start is busy with in the frame of the page, before the page itself stands there. */
import { createRoot } from "react-dom/client";
import { phrase } from "../../../functions/phrase.ts";
import { Ongoing } from "./Ongoing.tsx";

/** Shows it until the function that is returned is called. */
export function showInFrame(): () => void {
  const place = document.createElement("section");
  place.className = "messages";
  place.setAttribute("aria-label", phrase`Messages`);
  document.querySelector(".open-book:not(.first-screen)")?.append(place);
  const root = createRoot(place);
  root.render(<Ongoing />);
  return () => {
    root.unmount();
    place.remove();
  };
}
