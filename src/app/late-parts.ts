/** What the page's start leaves out of the program. The planner comes first: a function that lays finds it there. */
import "../lay/planner.ts";
import "../engine/all-functions.ts";
