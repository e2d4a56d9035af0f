import { expect, test } from "vitest";
import { remember, rememberLike, rememberWithObject, rememberWithObjects } from "../../functions/memo.ts";

test("an answer is made once for each key, an answer of undefined too", () => {
  const made: string[] = [];
  const kept = remember<string, string | undefined>(10);
  const ask = (key: string) =>
    kept(key, () => {
      made.push(key);
      return key === "nothing" ? undefined : key.toUpperCase();
    });
  expect([ask("a"), ask("b"), ask("a"), ask("nothing"), ask("nothing")]).toEqual([
    "A",
    "B",
    "A",
    undefined,
    undefined,
  ]);
  expect(made).toEqual(["a", "b", "nothing"]);
});

test("the oldest answer leaves when the memory is full", () => {
  const made: number[] = [];
  const kept = remember<number, number>(2);
  const ask = (key: number) =>
    kept(key, () => {
      made.push(key);
      return key * key;
    });
  for (const key of [1, 2, 3, 2, 3, 1]) expect(ask(key)).toBe(key * key);
  expect(made).toEqual([1, 2, 3, 1]);
});

test("what fails is not kept", () => {
  const kept = remember<string, number>(2);
  expect(() =>
    kept("a", () => {
      throw new Error("no");
    }),
  ).toThrow("no");
  expect(kept("a", () => 7)).toBe(7);
});

test("an answer about an object goes with the object itself, not with one that looks like it", () => {
  const kept = rememberWithObject<readonly number[], { readonly sum: number }>();
  const list = [1, 2];
  const first = kept(list, () => ({ sum: 3 }));
  expect(kept(list, () => ({ sum: 99 }))).toBe(first);
  expect(kept([1, 2], () => ({ sum: 4 })).sum).toBe(4);
});

test("two keys with the same words share an answer when the memory is told that they are alike", () => {
  let made = 0;
  const kept = rememberLike<readonly string[], number>(2, (a, b) => a.join() === b.join());
  const ask = (...key: string[]) =>
    kept(key, () => {
      made += 1;
      return key.length;
    });
  expect([ask("a", "b"), ask("a", "b"), ask("c"), ask("d"), ask("a", "b")]).toEqual([2, 2, 1, 1, 2]);
  expect(made).toBe(4);
});

test("an answer that rests on two objects and a text is another one when any of them is another", () => {
  const kept = rememberWithObjects<{ readonly said: string }>();
  const [list, form] = [["a"], { noun: "list" }];
  const first = kept([list, form], "in", () => ({ said: "first" }));
  expect(kept([list, form], "in", () => ({ said: "again" }))).toBe(first);
  expect(kept([list, form], "cm", () => ({ said: "in cm" })).said).toBe("in cm");
  expect(kept([["a"], form], "in", () => ({ said: "other list" })).said).toBe("other list");
  expect(kept([list, { noun: "list" }], "in", () => ({ said: "other form" })).said).toBe("other form");
  expect(kept([list], "in", () => ({ said: "without a form" })).said).toBe("without a form");
});
