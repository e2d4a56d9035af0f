import { expect, test } from "vitest";
import { FESTOON_CLOTH } from "../../../functions/cloth/FESTOON_CLOTH.ts";
import { run } from "../../../functions/run.ts";

test("five feet take five yards of cloth and eight of fringe", () => {
  // Stephenson, Cutting and Draping, 1905, French festoon (printed).
  const yards = (goods: string) => (run(FESTOON_CLOTH, [60, goods], { unit: "in" }) as number) / 36;
  expect([yards("cloth"), yards("fringe")]).toEqual([5, 8]);
});
