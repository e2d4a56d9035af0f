/** What the page answers to a lay question before its planner is there. */
import { expect, it, vi } from "vitest";
import type { LayQuestion } from "../../../functions/lay.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { plannerDidNotCome, startDesk, takePlanner, whenPlannerComes } from "../../../src/lay/start-desk.ts";

const square = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
] as const;
const question: LayQuestion = {
  pieces: [{ name: "pocket", outline: square, quantity: 2, turns: [0] }],
  cloths: [{ name: "linen", width: 20, length: null }],
  gap: 0,
  repeat: 0,
};

it("a lay is pending until the planner comes, and says why when it does not come", () => {
  const tell = vi.fn();
  whenPlannerComes(tell);
  expect(startDesk(question, {})).toEqual({
    refusal: "the lay of 2 pieces is being worked out",
    pending: { least: 10 },
  });
  // What can't be laid needs no planner.
  const none = startDesk({ ...question, pieces: [] }, {});
  expect(none).toEqual({ refusal: expect.stringContaining("there is no piece to lay") });
  plannerDidNotCome("no server");
  expect(startDesk(question, {})).toEqual({
    refusal:
      "the lay planner could not be loaded (no server): see that the server is running, then reload the page",
  });
  takePlanner(layDesk);
  expect(tell).toHaveBeenCalledTimes(2);
  expect(startDesk(question, {})).toMatchObject({ lengths: [10], missing: [] });
});
