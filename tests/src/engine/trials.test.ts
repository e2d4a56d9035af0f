import { expect, test } from "vitest";
import { finish } from "../../../src/engine/sweep.ts";
import { comparing, withTrial } from "../../../src/engine/trials.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { afresh, cell } from "./ask.ts";
import { panelSkirt } from "./whatif-books.ts";

const book = {
  ...panelSkirt(),
  trials: [
    { title: "fuller by half", cells: { "Draft!B2": "3.75", "Draft!B4": "30 in" } },
    { title: "too deep", cells: { "Draft!B4": "70 in", "Draft!B9": "" } },
  ],
};

test("trials stand side by side: the settings that differ and the answers that differ", () => {
  const { titles, inputs, outputs } = finish(comparing(book, layDesk));
  expect(titles).toEqual(["as it stands", "fuller by half", "too deep"]);
  expect(inputs.map(({ label, typed }) => [label, ...typed])).toEqual([
    ["fullness", "2.5", "3.75", "2.5"],
    ["depth", "30 in", "30 in", "70 in"],
    ["buy", "=CEILING(cloth;4.5)", "=CEILING(cloth;4.5)", ""],
  ]);
  const shown = Object.fromEntries(
    outputs.map(({ label, views }) => [label, views.map((view) => view.value)]),
  );
  expect(shown.panels).toEqual([3, 4, 3]);
  expect(shown.cloth).toEqual([99, 132, 219]);
  expect(shown.cloth?.[2]).toBe(afresh(book, { depth: 70 }, "cloth"));
  expect(outputs.find(({ label }) => label === "verdict")!.views[2]!.problem?.sentence).toBe(
    "more than the 200 in at hand",
  );
});

test("an answer that is asked for is told even when all trials agree on it", () => {
  const same = { ...book, trials: [book.trials[0]!] };
  const labels = (also: string[]) =>
    finish(
      comparing(
        same,
        layDesk,
        also.map((name) => cell(same, name)),
      ),
    ).outputs.map(({ label }) => label);
  expect(labels([])).not.toContain("cut");
  expect(labels(["cut"])).toContain("cut");
});

test("cloth that comes out the same is told too, for it rests on what the trials change", () => {
  const close = { ...book, trials: [{ title: "an eighth shorter", cells: { "Draft!B4": "29 7/8" } }] };
  const buy = finish(comparing(close, layDesk)).outputs.find(({ label }) => label === "buy");
  expect(buy?.views.map(({ value }) => value)).toEqual([99, 99]);
});

test("a trial whose cell is gone is still compared, without it", () => {
  const gone = { ...book, trials: [{ title: "old", cells: { "Lost!B4": "9", "Draft!B4": "20 in" } }] };
  expect(finish(comparing(gone, layDesk)).inputs.map(({ label }) => label)).toEqual(["depth"]);
  expect(withTrial(gone, gone.trials[0]!).pages[0]!.rows[3]).toEqual(["depth", "20 in"]);
});
