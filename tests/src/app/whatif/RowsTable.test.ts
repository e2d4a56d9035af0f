import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { RowsTable } from "../../../../src/app/whatif/RowsTable.tsx";
import { blankBook } from "../../../../src/book/shape.ts";

test("a table of rows that are not all there never says that it has all", () => {
  const book = blankBook("Withy Green", "in", "1/8");
  const rows = [8, 8.125].map((figure) => ({ figures: [figure], readings: [] }));
  const summary = (busy: boolean, stopped: boolean) => {
    const table = createElement(RowsTable, { book, varied: [], watched: [], rows, busy, stopped });
    return /<summary>(.*)<\/summary>/.exec(renderToStaticMarkup(table))?.[1];
  };
  expect(summary(false, false)).toBe("All 2 steps as a table");
  expect(summary(true, false)).toBe("The 2 steps calculated so far, as a table");
  expect(summary(false, true)).toBe("The first 2 steps as a table: the calculation was stopped");
});
