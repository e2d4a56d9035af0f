import { describe, expect, it } from "vitest";
import { bar, choose, chosen, enter, key, message, onDraft, page, turn, type, typedIn } from "./grid.ts";
import { cell, download } from "./page.ts";

onDraft();

describe("typing", () => {
  it("what was typed is kept to the letter and shown again on editing; the cell shows the tape's figure", async () => {
    // Delete is the first key of all in this grid.
    await choose("B8");
    await key("Delete");
    await type("10 4/8");
    await key("Enter");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("10 1/2");
    await expect.poll(() => chosen()).toBe("B9");
    await choose("B8");
    await key("F2");
    await expect.poll(() => page.getByLabel("Cell text").inputValue()).toBe("10 4/8");
    await expect.poll(() => bar().inputValue()).toBe("10 4/8");
  });

  it("Tab goes on to the right, Escape leaves the cell as it was, Delete empties it", async () => {
    await choose("B8");
    await type("12");
    await key("Tab");
    await expect.poll(() => chosen()).toBe("C8");
    await expect.poll(() => typedIn("B8")).toBe("12");
    await key("F2");
    await type("99");
    await key("Escape");
    await expect.poll(() => bar().inputValue()).toBe("12");
    await key("Delete");
    await expect.poll(() => bar().inputValue()).toBe("");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("");
  });

  it("Enter after Tab leads back to the first column, and Ctrl and an arrow to the end of the block", async () => {
    await turn("Fit");
    await choose("A20");
    for (const text of ["band", "left", "2"]) {
      await type(text);
      await key(text === "2" ? "Enter" : "Tab");
    }
    await expect.poll(() => chosen()).toBe("A21");
    await type("cuff");
    await key("Tab");
    await key("Enter");
    await expect.poll(() => chosen()).toBe("A22");
    await key("Control+ArrowUp");
    await expect.poll(() => chosen()).toBe("A21");
    await key("Control+ArrowUp");
    await expect.poll(() => chosen()).toBe("A20");
    await key("Control+ArrowRight");
    await expect.poll(() => chosen()).toBe("C20");
    await key("Control+Shift+ArrowLeft");
    await key("Delete");
    await expect.poll(() => typedIn("B20")).toBe("");
  });

  it("Tab after typing in the last column leads to the next row, where the run began: nothing that is typed on is lost", async () => {
    await turn("Fit");
    await choose("D20");
    for (const text of ["side", "1/4", "first", "waist", "1/2"]) {
      await type(text);
      await key("Tab");
    }
    await expect.poll(() => chosen()).toBe("F21");
    await expect.poll(() => typedIn("F20")).toBe("first");
    await expect.poll(() => typedIn("D21")).toBe("waist");
    await expect.poll(() => typedIn("E21")).toBe("1/2");
    // Without typing Tab leaves the grid from there, as it does on any page.
    await choose("F20");
    await key("Tab");
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest(".grid-host"))).toBeNull();
  });

  it("one draft has two views: the bar follows the cell, and the cell the bar", async () => {
    await choose("B8");
    await type("10");
    await expect.poll(() => bar().inputValue()).toBe("10");
    await key("Escape");
    await bar().click();
    await bar().fill("11 1/4");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("11 1/4");
    await key("Escape");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("9");
    await bar().click();
    await bar().fill("11 1/4");
    await key("Enter");
    await expect.poll(chosen).toBe("B9");
    await type("2");
    await key("Enter");
    await expect.poll(() => typedIn("B8")).toBe("11 1/4");
    await expect.poll(() => typedIn("B9")).toBe("2");
  });

  it("a half typed text is kept when another page is turned to, and the other page is left alone", async () => {
    await choose("B8");
    await type("13");
    await turn("Fit");
    await turn("Draft");
    await expect.poll(() => typedIn("B8")).toBe("13");
  });

  it("a text that can't be kept stays in hand with the reason, also while another cell is seen to", async () => {
    const much = "x".repeat(100_001);
    await choose("C8");
    await bar().fill(much);
    await key("Enter");
    const reason = "a cell holds at most 100000 characters, not 100001";
    await expect.poll(() => message()).toContain(reason);
    expect((await bar().inputValue()).length).toBe(much.length);
    await enter("B8", "10");
    await choose("C8");
    await expect.poll(() => message()).toContain(reason);
    expect((await bar().inputValue()).length).toBe(much.length);
    await bar().fill(much.slice(1));
    await key("Enter");
    await expect.poll(chosen).toBe("C9");
    await choose("C8");
    await expect.poll(() => message()).toBe("");
    expect((await bar().inputValue()).length).toBe(much.length - 1);
  });

  it("what is half typed is in the file that is saved", async () => {
    await choose("B8");
    await type("14 1/2");
    expect((await download(page, () => key("Control+s"))).text).toContain('"14 1/2"');
    await expect.poll(() => typedIn("B8")).toBe("14 1/2");
  });

  it("undo and redo go back and forth from the grid and from beside it", async () => {
    await enter("B8", "10");
    await key("Control+z");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("9");
    await page.getByRole("button", { name: "Rows and columns" }).focus();
    await key("Control+y");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("10");
    await key("Control+z");
    await key("Control+Shift+Z");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("10");
  });
});

describe("cells speak of themselves", () => {
  it("a cell to look at says why, to the pointer, to a screen reader and in the bar", async () => {
    await enter("B13", "2.5");
    const open = cell(page, "B15");
    const reason = "sections must be a whole number, not 2.5";
    await expect.poll(() => open.textContent()).toBe("error");
    await expect.poll(() => open.getAttribute("title")).toContain(reason);
    await expect.poll(() => open.getAttribute("aria-description")).toContain(reason);
    await choose("B15");
    await expect.poll(() => message()).toContain(reason);
    await key("Control+z");
    await expect.poll(() => open.textContent()).toBe("2 3/8");
    await expect.poll(() => open.getAttribute("title")).not.toContain(reason);
  });

  it("typed, worked-out and wrong cells differ without colour", async () => {
    await enter("B7", "=1/0");
    const look = (address: string) =>
      cell(page, address).evaluate((td) => {
        const { fontWeight, textDecorationLine, textAlign } = getComputedStyle(td);
        const mark = getComputedStyle(td, "::before").content;
        return [Number(fontWeight) > 500, textDecorationLine, mark.slice(0, 3), textAlign];
      });
    await expect.poll(() => look("B8")).toEqual([true, "none", "non", "end"]);
    await expect.poll(() => look("B15")).toEqual([false, "none", '"="', "end"]);
    await expect.poll(() => look("B7")).toEqual([false, "underline", '"!"', "start"]);
  });

  it("the exact value is shown on demand", async () => {
    await choose("B11");
    await page.getByRole("button", { name: "Full precision" }).click();
    // 54 1/4 is the nearest eighth of the hem, which comes of the hip, the ease and the fullness.
    const exactly = Number(/full precision: ([\d.]+) in/.exec((await message())!)![1]);
    expect(Math.abs(exactly - 54.25)).toBeLessThanOrEqual(1 / 16);
  });

  it("a cell is named in the bar; formulas may use the name at once; a taken name is refused in words", async () => {
    await choose("B5");
    const name = page.getByLabel("Name of the cell");
    await name.fill("waist");
    await key("Enter");
    await expect
      .poll(() => page.locator(".name-field").getByRole("alert").textContent())
      .toContain("waist is already the name of");
    await expect.poll(() => name.inputValue()).toBe("waist");
    await name.fill("plain_waist");
    await key("Enter");
    await expect.poll(() => cell(page, "B5").getAttribute("title")).toContain("named plain_waist");
    await enter("C5", "=plain_waist*2");
    await expect.poll(() => cell(page, "C5").textContent()).toBe("53 1/2");
  });
});

describe("the note of a cell", () => {
  it("is written by button, menu or key, read above the grid and by a screen reader, undone and deleted", async () => {
    const noteField = () => page.getByRole("dialog").getByLabel("Note", { exact: true });
    const described = (address: string) => cell(page, address).getAttribute("aria-description");
    await choose("B8");
    await page.getByRole("button", { name: "Note", exact: true }).click();
    await noteField().fill("taken over the pad\nsecond fitting");
    await page.getByRole("button", { name: "Save note" }).click();
    await expect.poll(() => described("B8")).toContain("note: taken over the pad");
    await expect.poll(() => cell(page, "B8").getAttribute("class")).toContain("cell-noted");
    await expect
      .poll(() => page.locator(".cell-message-note").textContent())
      .toBe("Note: taken over the pad\nsecond fitting");
    await key("ArrowDown");
    await expect.poll(chosen).toBe("B9");
    await expect.poll(() => page.locator(".cell-message-note").count()).toBe(0);

    await key("ArrowUp");
    await key("Shift+F2");
    await expect.poll(() => noteField().inputValue()).toBe("taken over the pad\nsecond fitting");
    await noteField().fill("x".repeat(5001));
    await key("Control+Enter");
    await expect
      .poll(() => page.getByRole("dialog").getByRole("alert").textContent())
      .toContain("a note holds at most 5000 characters, not 5001");
    await noteField().fill("dropped by Escape");
    await key("Escape");
    await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
    await expect.poll(() => described("B8")).toContain("note: taken over the pad");

    await cell(page, "B8").click({ button: "right" });
    await page.getByRole("menuitem", { name: "Note on B8…" }).click();
    await page.getByRole("button", { name: "Delete note" }).click();
    await expect.poll(() => described("B8")).not.toContain("note:");
    await key("Control+z");
    await expect.poll(() => described("B8")).toContain("note: taken over the pad");
    await expect.poll(() => typedIn("B8")).toBe("9");
  });
});
