/** Brings the lay planner, which the page does not load at its start. */
import { pageDesk } from "./desk.ts";
import { takePlanner } from "./start-desk.ts";

takePlanner(pageDesk);
