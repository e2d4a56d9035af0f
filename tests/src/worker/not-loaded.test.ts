import { expect, test } from "vitest";
import { whyEnded } from "../../../src/worker/not-loaded.ts";

test("the reason of a worker that ended comes without the browser's own words before it", () => {
  expect(whyEnded({ message: "Uncaught RangeError: out of memory" })).toBe("out of memory");
  expect(whyEnded({ message: "Uncaught no room" })).toBe("no room");
  expect(whyEnded({ message: "out of memory" })).toBe("out of memory");
});

test("a worker that ended without a word is one whose program did not come", () => {
  expect(whyEnded({ message: "" })).toMatch(/^a part of the page's program could not be loaded/);
  expect(whyEnded({})).toMatch(/^a part of the page's program could not be loaded/);
});
