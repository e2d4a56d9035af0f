import { afterEach, expect, test, vi } from "vitest";
import type { EditSession } from "../../../../src/app/grid/edit-session.ts";
import { listenToUndo } from "../../../../src/app/grid/keys.ts";
import { blankBook } from "../../../../src/book/shape.ts";

afterEach(() => vi.unstubAllGlobals());

/** A page of which only the keys are heard; one step can be taken back, and one again. */
function pageWith(acts: { undo: () => string | null; redo: () => string | null }) {
  const book = blankBook("Withy Green", "in", "1/8");
  const store = {
    ...acts,
    book,
    past: [{ book, label: "type in A1" }],
    future: [{ book, label: "type in A2" }],
  };
  const page = new EventTarget();
  vi.stubGlobal("document", page);
  vi.stubGlobal("HTMLElement", class {});
  const heard: string[] = [];
  const off = listenToUndo({ store } as unknown as EditSession, (sentence) => heard.push(sentence));
  const press = (key: string, more: object = {}) => {
    const event = Object.assign(new Event("keydown", { cancelable: true }), { key, ctrlKey: true, ...more });
    page.dispatchEvent(event);
    return event.defaultPrevented;
  };
  return { heard, off, press };
}

test("a step that its keys can't take back or take again says why", () => {
  const { heard, off, press } = pageWith({ undo: () => "no step back", redo: () => "no step again" });
  expect(press("z")).toBe(true);
  expect(press("y")).toBe(true);
  expect(press("Z", { shiftKey: true })).toBe(true);
  expect(heard).toEqual(["no step back", "no step again", "no step again"]);
  expect(press("z", { ctrlKey: false })).toBe(false);
  expect(press("x")).toBe(false);
  off();
  press("z");
  expect(heard).toHaveLength(3);
});

test("a step that is taken says nothing", () => {
  const { heard, press } = pageWith({ undo: () => null, redo: () => null });
  press("z");
  press("y");
  expect(heard).toEqual([]);
});
