import { expect, test } from "vitest";
import { EYELET_MARK } from "../../../functions/notions/EYELET_MARK.ts";
import { isRefused, run } from "../../../functions/run.ts";

const mark = (number: number, ...more: (number | string)[]) =>
  run(EYELET_MARK, [number, ...more], { unit: "in" });

test("the first stands the inset from the top, the last the inset from the end, and after it none", () => {
  expect(mark(1, 15, 8, 0.75)).toBeCloseTo(0.75, 12);
  expect(mark(8, 15, 8, 0.75)).toBeCloseTo(14.25, 12);
  expect(mark(9, 15, 8, 0.75)).toBe("");
});

test("two eyelets half an inch from the ends of a four-inch edge are three inches apart", () => {
  // McGlauflin, Handicraft for Girls, 1910, book cover exercise: 3 in apart, 1/2 in from the edge (printed).
  expect((mark(2, 4, 2, 0.5) as number) - (mark(1, 4, 2, 0.5) as number)).toBe(3);
});

test("staggered edges alternate evenly, one beginning at the top and the other ending at the bottom", () => {
  const at = (stagger: string) => [1, 2, 3, 4, 5].map((n) => mark(n, 20, 5, 1, stagger) as number);
  const woven = [...at("upper"), ...at("lower")].sort((a, b) => a - b);
  expect(woven[0]).toBe(1);
  expect(woven[9]).toBeCloseTo(19, 12);
  for (let i = 1; i < 10; i += 1) expect(woven[i]! - woven[i - 1]!).toBeCloseTo(2, 12);
});

test("an inset that leaves the eyelets no room is refused", () => {
  const answer = mark(1, 4, 3, 2);
  expect(isRefused(answer) && answer.refusal).toMatch(/^inset must be less than half of the edge/);
});
