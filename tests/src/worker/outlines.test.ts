import { expect, test } from "vitest";
import { readOutlines } from "../../../src/exchange/outlines/read-outlines.ts";
import { OutlinesReading } from "../../../src/worker/outlines.ts";

const drawing = new TextEncoder().encode(
  '<svg viewBox="0 0 200 130"><path id="yoke" d="M 0 0 H 200 V 120 H 0 Z"/><rect id="pocket" x="60" y="40" width="50" height="40"/></svg>',
);

test("a drawing is read once, and what its inner lines are is answered anew, all as plain data", () => {
  const reading = new OutlinesReading();
  expect(reading.answer({ inner: "marks" })).toEqual({ refusal: "no file was read; open it again" });
  const first = reading.answer({ bytes: drawing, inner: "marks" });
  expect(first).toEqual({ found: readOutlines(drawing, "marks"), inner: "marks" });
  expect(structuredClone(first)).toEqual(first);
  const again = reading.answer({ inner: "pieces" });
  expect(again).toMatchObject({ inner: "pieces", found: { pieces: [{ name: "yoke" }, { name: "pocket" }] } });
  expect(reading.answer({ bytes: new Uint8Array(), inner: "marks" })).toEqual({ refusal: "it is empty" });
});
