import { expect, test } from "vitest";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { printed } from "../../../src/paper/documents.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { readPdf } from "./read-pdf.ts";

test("the sheets for a preview have the words, the size and the lines of the PDF's pages", async () => {
  const engine = new Engine(
    bookOf({ yoke: "=RECTANGLE(10; 4)", cape: "=CIRCLE_PANEL(10; 14; 1/2)" }, "in"),
    layDesk,
  );
  const done = await printed(engine, { what: "pattern", paper: "letter", day: new Date(2026, 4, 20) });
  if ("reason" in done) throw new Error(done.reason);
  const { bytes, drawn } = done;
  const pages = await readPdf(bytes);
  expect(drawn.length).toBe(pages.length);
  expect(drawn.length).toBeGreaterThan(3);
  // The first sheet has the map; each of the others is a part of the pattern.
  expect(drawn.map(({ tile }) => tile?.name)).toEqual([
    undefined,
    ...pages.slice(1).map(({ text }) => /[A-Z]\d+(?=\s+page)/.exec(text)![0]),
  ]);
  expect(new TextDecoder("latin1").decode(bytes)).toContain("/PrintScaling /None");
  const squashed = (text: string) => text.replaceAll(/\s/g, "");
  for (const [i, { width, height, marks }] of drawn.entries()) {
    expect([width, height]).toEqual([expect.closeTo(pages[i]!.width), expect.closeTo(pages[i]!.height)]);
    const words = marks.flatMap((mark) => (mark.is === "text" ? [mark] : []));
    const joined = words.map(({ text }) => squashed(text)).join("\n");
    // The reader leaves out the letters that lie beyond the border of the page.
    const read = pages[i]!.text.split("\n").map(squashed);
    expect(read.filter((line) => !joined.includes(line))).toEqual([]);
    const whole = words.filter(({ x, wide, y }) => x >= 0 && x + wide <= width && y > 0 && y < height);
    expect(
      whole.filter(({ text }) => !read.join("").includes(squashed(text))).map(({ text }) => text),
    ).toEqual([]);
    const strokes = marks.filter(
      (mark) =>
        mark.is === "line" ||
        mark.is === "box" ||
        (mark.is === "ink" && !mark.ink.filled && mark.ink.subpaths.length > 0),
    );
    expect(strokes.length, `sheet ${i + 1}`).toBe(pages[i]!.paths.length);
  }
});
