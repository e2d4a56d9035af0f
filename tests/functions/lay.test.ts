import { expect, test } from "vitest";
import { originText } from "../../functions/lay.ts";

test("how a lay was found is said in words; a lay that does not say is a quick one", () => {
  expect(originText(undefined)).toBe("quick");
  expect(originText({ by: "quick" })).toBe("quick");
  expect(originText({ by: "hand" })).toBe("laid by hand");
  const after = (seconds: number) => originText({ by: "search", seconds });
  expect([0, 0.01, 0.44, 2, 9.96, 20, 119.4, 150].map(after)).toEqual([
    "found by a search",
    "searched for 0.1 s",
    "searched for 0.4 s",
    "searched for 2 s",
    "searched for 10 s",
    "searched for 20 s",
    "searched for 119 s",
    "searched for 3 min",
  ]);
  expect(originText({ by: "search", seconds: 3, proved: true })).toBe("proved: no lay can be shorter");
});
