import type { Locator, Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import { cell, download, open } from "./page.ts";

let page: Page;

beforeEach(async () => {
  page = await open();
  await turn("Draft");
});

const bar = () => page.getByLabel("Text or formula of the cell");
const key = (keys: string) => page.keyboard.press(keys);
const type = (text: string) => page.keyboard.type(text);
const clipboard = () => page.evaluate(() => navigator.clipboard.readText());
const toClipboard = (text: string) => page.evaluate((put) => navigator.clipboard.writeText(put), text);
const told = () => page.locator("#cell-message").textContent();

async function turn(title: string): Promise<void> {
  await page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();
}

/** Chooses a cell by a click; a click beside it first, so that two in a row are no double click. */
async function choose(address: string, to = address): Promise<void> {
  await page.locator(".formula-place").click();
  await cell(page, `${address[0]}${address.slice(1) === "1" ? 2 : 1}`).click();
  await cell(page, address).click();
  if (to !== address) await cell(page, to).click({ modifiers: ["Shift"] });
}

/** What is typed in a cell, as the bar says. */
async function typedIn(address: string): Promise<string> {
  await choose(address);
  return bar().inputValue();
}

async function enter(address: string, text: string): Promise<void> {
  await choose(address);
  await type(text);
  await key("Enter");
}

const chosen = () => page.locator(".formula-place").textContent();

describe("typing", () => {
  it("what was typed is kept to the letter and shown again on editing; the cell shows the tape's figure", async () => {
    await enter("B8", "10 4/8");
    expect(await cell(page, "B8").textContent()).toBe("10 1/2");
    expect(await chosen()).toBe("B9");
    await choose("B8");
    await key("F2");
    expect(await page.getByLabel("Cell text").inputValue()).toBe("10 4/8");
    expect(await bar().inputValue()).toBe("10 4/8");
  });

  it("Tab goes on to the right, Escape leaves the cell as it was, Delete empties it", async () => {
    await choose("B8");
    await type("12");
    await key("Tab");
    expect(await chosen()).toBe("C8");
    expect(await typedIn("B8")).toBe("12");
    await key("F2");
    await type("99");
    await key("Escape");
    expect(await bar().inputValue()).toBe("12");
    await key("Delete");
    expect(await bar().inputValue()).toBe("");
    expect(await cell(page, "B8").textContent()).toBe("");
  });

  it("Enter after Tab leads back to the first column, and Ctrl and an arrow to the end of the block", async () => {
    await turn("Fit");
    await choose("A20");
    for (const text of ["band", "left", "2"]) {
      await type(text);
      await key(text === "2" ? "Enter" : "Tab");
    }
    expect(await chosen()).toBe("A21");
    await type("cuff");
    await key("Tab");
    await key("Enter");
    expect(await chosen()).toBe("A22");
    await key("Control+ArrowUp");
    expect(await chosen()).toBe("A21");
    await key("Control+ArrowUp");
    expect(await chosen()).toBe("A20");
    await key("Control+ArrowRight");
    expect(await chosen()).toBe("C20");
    await key("Control+Shift+ArrowLeft");
    await key("Delete");
    expect(await typedIn("B20")).toBe("");
  });

  it("one draft has two views: the bar follows the cell, and the cell the bar", async () => {
    await choose("B8");
    await type("10");
    expect(await bar().inputValue()).toBe("10");
    await key("Escape");
    await bar().click();
    await bar().fill("11 1/4");
    expect(await cell(page, "B8").textContent()).toBe("11 1/4");
    await key("Escape");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("9");
    await bar().click();
    await bar().fill("11 1/4");
    await key("Enter");
    await expect.poll(chosen).toBe("B9");
    await type("2");
    await key("Enter");
    expect(await typedIn("B8")).toBe("11 1/4");
    expect(await typedIn("B9")).toBe("2");
  });

  it("a half typed text is kept when another page is turned to, and the other page is left alone", async () => {
    await choose("B8");
    await type("13");
    await turn("Fit");
    await turn("Draft");
    expect(await typedIn("B8")).toBe("13");
  });

  it("a text that can't be kept stays in hand with the reason, also while another cell is seen to", async () => {
    const much = "x".repeat(100_001);
    await choose("C8");
    await bar().fill(much);
    await key("Enter");
    const reason = "a cell holds at most 100000 characters, not 100001";
    expect(await told()).toContain(reason);
    expect((await bar().inputValue()).length).toBe(much.length);
    await enter("B8", "10");
    await choose("C8");
    expect(await told()).toContain(reason);
    expect((await bar().inputValue()).length).toBe(much.length);
    await bar().fill(much.slice(1));
    await key("Enter");
    await expect.poll(chosen).toBe("C9");
    await choose("C8");
    expect(await told()).toBe("");
    expect((await bar().inputValue()).length).toBe(much.length - 1);
  });

  it("what is half typed is in the file that is saved", async () => {
    await choose("B8");
    await type("14 1/2");
    expect((await download(page, () => key("Control+s"))).text).toContain('"14 1/2"');
    expect(await typedIn("B8")).toBe("14 1/2");
  });

  it("undo and redo go back and forth from the grid and from beside it", async () => {
    await enter("B8", "10");
    await key("Control+z");
    expect(await cell(page, "B8").textContent()).toBe("9");
    await page.getByRole("button", { name: "Rows and columns" }).focus();
    await key("Control+y");
    expect(await cell(page, "B8").textContent()).toBe("10");
    await key("Control+z");
    await key("Control+Shift+Z");
    expect(await cell(page, "B8").textContent()).toBe("10");
  });
});

describe("cells speak of themselves", () => {
  it("a cell to look at says why, to the pointer, to a screen reader and in the bar", async () => {
    await enter("B13", "2.5");
    const open = cell(page, "B15");
    const reason = "sections must be a whole number, not 2.5";
    expect(await open.textContent()).toBe("error");
    expect(await open.getAttribute("title")).toContain(reason);
    expect(await open.getAttribute("aria-description")).toContain(reason);
    await choose("B15");
    expect(await told()).toContain(reason);
    await key("Control+z");
    expect(await open.textContent()).toBe("2 3/8");
    expect(await open.getAttribute("title")).not.toContain(reason);
  });

  it("typed, worked-out and wrong cells differ without colour", async () => {
    await enter("B7", "=1/0");
    const look = (address: string) =>
      cell(page, address).evaluate((td) => {
        const { fontWeight, textDecorationLine, textAlign } = getComputedStyle(td);
        const mark = getComputedStyle(td, "::before").content;
        return [Number(fontWeight) > 500, textDecorationLine, mark.slice(0, 3), textAlign];
      });
    expect(await look("B8")).toEqual([true, "none", "non", "right"]);
    expect(await look("B15")).toEqual([false, "none", '"="', "right"]);
    expect(await look("B7")).toEqual([false, "underline", '"!"', "start"]);
  });

  it("the exact value is told on demand", async () => {
    await choose("B11");
    await page.getByRole("button", { name: "Full precision" }).click();
    // 54 1/4 is the nearest eighth of the hem, which comes of the hip, the ease and the fullness.
    const exactly = Number(/full precision: ([\d.]+) in/.exec((await told())!)![1]);
    expect(Math.abs(exactly - 54.25)).toBeLessThanOrEqual(1 / 16);
  });

  it("a cell is named in the bar; formulas may use the name at once; a taken name is refused in words", async () => {
    await choose("B5");
    const name = page.getByLabel("Name of the cell");
    await name.fill("waist");
    await key("Enter");
    expect(await page.locator(".name-field").getByRole("alert").textContent()).toContain(
      "waist is already the name of",
    );
    expect(await name.inputValue()).toBe("waist");
    await name.fill("plain_waist");
    await key("Enter");
    await expect.poll(() => cell(page, "B5").getAttribute("title")).toContain("named plain_waist");
    await enter("C5", "=plain_waist*2");
    expect(await cell(page, "C5").textContent()).toBe("53 1/2");
  });
});

describe("names from labels", () => {
  const dialog = () => page.getByRole("dialog", { name: /^Names from the labels of/ });
  const openNames = async () => {
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Names from labels…" }).click();
    await dialog().waitFor();
  };

  it("are looked at, changed, and given in one step; a list is named whole, and the field says whose a name is", async () => {
    await turn("Fit");
    await toClipboard("Waist girth\t27\nWaist girth\t28\ndepth\t9\nSeam A1\t=B20\nA note\t");
    await choose("A20");
    await key("Control+v");
    await choose("A20", "B24");
    await openNames();
    const name = (address: string) => dialog().getByLabel(`Name for ${address}`, { exact: true });
    expect(await name("B20").inputValue()).toBe("waist_girth");
    expect(await name("B21").inputValue()).toBe("waist_girth_2");
    expect(await dialog().getByText("waist_girth is the name of Fit!B20").count()).toBe(1);
    expect(
      await dialog()
        .getByText(/^depth is the name of Draft!B8/)
        .count(),
    ).toBe(1);
    // A blank cell is offered a name, and left out until it is asked for.
    expect(await dialog().getByLabel("Give B24 a name").isChecked()).toBe(false);
    expect(await violations(page, ".dialog")).toEqual([]);
    const give = dialog().getByRole("button", { name: /^Give \d names?$/ });
    await name("B21").fill("waist_girth");
    expect(await dialog().getByText("waist_girth is given twice here").count()).toBe(2);
    expect(await give.isDisabled()).toBe(true);
    await name("B21").fill("B7");
    expect(await dialog().getByText('"B7" reads like a cell').count()).toBe(1);
    await dialog().getByLabel("Give B21 a name").uncheck();
    await dialog().getByLabel("The names belong to").selectOption("page");
    expect(await name("B22").inputValue()).toBe("depth");
    expect(await give.textContent()).toBe("Give 3 names");
    await give.click();
    await dialog().waitFor({ state: "detached" });
    const field = page.locator(".name-field");
    await choose("B22");
    expect(await field.getByRole("textbox").inputValue()).toBe("depth");
    expect(await field.textContent()).toContain("on Fit alone");
    await enter("C20", "=depth*2+waist_girth");
    expect(await cell(page, "C20").textContent()).toBe("45");
    await key("Control+z");
    await key("Control+z");
    await choose("B20");
    expect(await field.getByRole("textbox").inputValue()).toBe("");

    await choose("B20", "B22");
    await openNames();
    await dialog().getByLabel("Name for B20:B22").fill("girths");
    await dialog().getByRole("button", { name: "Give 1 name" }).click();
    await choose("B21");
    expect(await field.textContent()).toContain("in girths");
    await choose("B20", "B22");
    expect(await page.getByLabel("Name of the cells B20:B22").inputValue()).toBe("girths");
    await enter("C20", "=COUNTA(girths)");
    expect(await cell(page, "C20").textContent()).toBe("3");
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
    expect(await cell(page, "B8").getAttribute("class")).toContain("cell-noted");
    expect(await page.locator(".cell-message-note").textContent()).toBe(
      "Note: taken over the pad\nsecond fitting",
    );
    await key("ArrowDown");
    await expect.poll(chosen).toBe("B9");
    expect(await page.locator(".cell-message-note").count()).toBe(0);

    await key("ArrowUp");
    await key("Shift+F2");
    expect(await noteField().inputValue()).toBe("taken over the pad\nsecond fitting");
    await noteField().fill("x".repeat(5001));
    await key("Control+Enter");
    expect(await page.getByRole("dialog").getByRole("alert").textContent()).toContain(
      "a note holds at most 5000 characters, not 5001",
    );
    await noteField().fill("dropped by Escape");
    await key("Escape");
    await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
    expect(await described("B8")).toContain("note: taken over the pad");

    await cell(page, "B8").click({ button: "right" });
    await page.getByRole("menuitem", { name: "Note on B8…" }).click();
    await page.getByRole("button", { name: "Delete note" }).click();
    await expect.poll(() => described("B8")).not.toContain("note:");
    await key("Control+z");
    await expect.poll(() => described("B8")).toContain("note: taken over the pad");
    expect(await typedIn("B8")).toBe("9");
  });
});

describe("formulas", () => {
  const offers = () => page.locator("#offers").getByRole("option").allTextContents();

  it("names are completed by Tab, by Enter only after an arrow key", async () => {
    await choose("B7");
    await type("=wai");
    expect((await offers())[0]).toMatch(/^waist/);
    await key("Tab");
    await type("+wai");
    await key("ArrowDown");
    await key("ArrowDown");
    await key("Enter");
    await type("+hem");
    expect(await offers()).not.toHaveLength(0);
    await key("Enter");
    expect(await typedIn("B7")).toBe("=waist+waist_seam+hem");
  });

  it("the first Escape puts the offers away, the second leaves the cell", async () => {
    await choose("B7");
    await type("=wai");
    await key("Escape");
    expect(await offers()).toEqual([]);
    expect(await bar().inputValue()).toBe("=wai");
    await key("Escape");
    expect(await bar().inputValue()).toBe("");
  });

  it("the hint of the argument stands beside the cell with its meaning and drawing, and F1 leads to the help and back", async () => {
    const hint = page.locator(".argument-hint");
    const box = async (locator: Locator) => (await locator.boundingBox())!;
    await choose("B7");
    await type("=SPREAD_P");
    await key("Tab");
    await type("10;12;");
    expect(await hint.locator("strong").textContent()).toBe("sections");
    expect(await hint.textContent()).toContain("whole number, 1 to 200");
    expect(await hint.locator("svg.measured").count()).toBe(1);
    for (const edge of [false, true]) {
      // Beside the cell, and beside the cell of a draft in the bar.
      if (edge) await bar().fill("=SPREAD_PER_GAP(10;");
      const [over, head, own] = [
        await box(hint),
        await box(page.locator(".ht_clone_top")),
        await box(cell(page, "B7")),
      ];
      expect(over.y).toBeGreaterThanOrEqual(head.y + head.height);
      expect(over.y >= own.y + own.height || over.y + over.height <= own.y).toBe(true);
      await key("F1");
      await page.getByRole("region", { name: "Help for SPREAD_PER_GAP" }).waitFor();
      await key("Escape");
      await type(edge ? "2" : "3");
      expect(await bar().inputValue()).toBe(edge ? "=SPREAD_PER_GAP(10;2" : "=SPREAD_PER_GAP(10;12;3");
      if (!edge) {
        await key("Escape");
        await bar().click();
      }
    }
    expect(await hint.locator("strong").textContent()).toBe("hem");
    await key("Escape");
  });

  it("an unfinished formula goes on in the bar from page to page, takes in their cells, and Enter puts it into its own", async () => {
    await choose("B7");
    await type("=SUM(");
    await turn("Measure");
    await expect.poll(chosen).toBe("Draft!B7");
    await cell(page, "A4").click();
    await type(";");
    await cell(page, "C5").click();
    await type(";1");
    await cell(page, "D9").click();
    expect(await bar().inputValue()).toBe("=SUM(Measure!A4;Measure!C5;1");
    expect(await page.locator(".hint-away").textContent()).toContain("belongs to The hem (Draft!B7)");
    await type(")");
    await key("Enter");
    await expect.poll(chosen).toBe("B8");
    expect(await typedIn("B7")).toBe("=SUM(Measure!A4;Measure!C5;1)");

    await choose("C9");
    await type("=SUM(B2");
    await cell(page, "B20").click();
    await key("Escape");
    await expect.poll(chosen).toBe("C9");
    expect(await bar().inputValue()).toBe("");

    // Typing into another cell leaves the formula at its own, and a step that moves cells puts it in first.
    await type("=SUM(B2");
    await cell(page, "B20").click();
    await cell(page, "B21").dblclick();
    await type("5");
    await key("Enter");
    expect(await typedIn("C9")).toBe("=SUM(B2");
    expect(await told()).toContain("is not in the book yet");
    await key("F2");
    await type(";B3");
    await turn("Measure");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Redo" }).click();
    await turn("Draft");
    expect(await typedIn("C9")).toBe("=SUM(B2;B3");
  });

  it("a cell pointed at comes into the formula by its name, a block by its corners", async () => {
    await choose("B7");
    await type("=");
    await cell(page, "B9").click();
    await cell(page, "B8").click();
    await type("+SUM(");
    await cell(page, "B2").hover();
    await page.mouse.down();
    await cell(page, "B4").hover();
    await page.mouse.up();
    await type(")");
    await key("Enter");
    expect(await typedIn("B7")).toBe("=depth+SUM(B2:B4)");
  });
});

describe("blocks", () => {
  it("shown values are copied as plain text", async () => {
    await choose("A2", "B3");
    await key("Control+c");
    expect(await clipboard()).toBe(
      "Waist after the fittings\t26 3/4\nShare of the half girth that runs level\t0.5",
    );
  });

  it("a copied formula moves along, on another page too, and one undo takes it back", async () => {
    await enter("B7", "=B2*2");
    await choose("B7");
    await key("Control+c");
    await choose("B12", "C12");
    await key("Control+v");
    expect(await typedIn("B12")).toBe("=B7*2");
    expect(await typedIn("C12")).toBe("=C7*2");
    await key("Control+z");
    expect(await typedIn("C12")).toBe("");
    expect(await typedIn("B12")).toBe("");
    await turn("Trimmings");
    await choose("B20");
    await key("Control+v");
    expect(await typedIn("B20")).toBe("=B15*2");
  });

  it("a block of another program comes in as one step and brings the columns it needs", async () => {
    await toClipboard('a\t12 1/4\tx\ty\r\n=B2\t"say ""when"""\t"two\nlines"\tw\r\n');
    await choose("A12");
    await key("Control+v");
    expect(await typedIn("B12")).toBe("12 1/4");
    expect(await typedIn("A13")).toBe("=B2");
    expect(await typedIn("B13")).toBe('say "when"');
    expect(await typedIn("C13")).toBe("two\nlines");
    expect(await typedIn("D13")).toBe("w");
    await key("Control+z");
    await expect.poll(() => cell(page, "D13").count()).toBe(0);
    expect(await typedIn("B13")).toBe("5");
  });

  it("an HTML table comes in as cells with what was doubtful said, and cells go out as text and as a table", async () => {
    const paste = (html: string, text: string) =>
      page.evaluate(
        ([asHtml, asText]) => {
          const data = new DataTransfer();
          data.setData("text/html", asHtml!);
          data.setData("text/plain", asText!);
          document.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, cancelable: true }));
        },
        [html, text],
      );
    await choose("A8", "B9");
    const out = await page.evaluate(() => {
      const data = new DataTransfer();
      document.dispatchEvent(new ClipboardEvent("copy", { clipboardData: data, cancelable: true }));
      return [data.getData("text/plain"), data.getData("text/html")];
    });
    expect(out).toEqual([
      "Depth below the seam\t9\nEase at the hip\t1",
      "<table><tr><td>Depth below the seam</td><td>9</td></tr><tr><td>Ease at the hip</td><td>1</td></tr></table>",
    ]);
    await turn("Fit");
    await choose("A20");
    await paste(
      '<table><tr><td rowspan="2">skirt<img src="x" onerror="document.title=1"><td>28&nbsp;1/2<tr><td>two</table>',
      "skirt 28 1/2 two",
    );
    await expect.poll(() => typedIn("B20")).toBe("28 1/2");
    expect(await typedIn("B21")).toBe("two");
    const said = page.locator(".grid-hidden");
    expect(await said.textContent()).toContain("1 cell of the table spanned several");
    await said.getByRole("button", { name: "Paste as plain lines" }).click();
    expect(await typedIn("A20")).toBe("skirt 28 1/2 two");
    expect(await page.title()).not.toBe("1");
  });

  it("markup on the clipboard or in a heading is text", async () => {
    await toClipboard("<img src=x onerror=alert(1)>");
    await choose("C7");
    await key("Control+v");
    expect(await cell(page, "C7").textContent()).toBe("<img src=x onerror=alert(1)>");
    expect(await cell(page, "C7").locator("img").count()).toBe(0);
  });

  it("cells are filled down, to the right, and by the handle", async () => {
    await enter("C8", "=B8");
    await choose("C8", "C9");
    await key("Control+d");
    expect(await typedIn("C9")).toBe("=B9");
    await choose("B12");
    await key("Control+r");
    expect(await typedIn("B12")).toBe(await typedIn("A12"));
    await choose("C8");
    const handle = (await page.locator(".ht_master .wtBorder.corner").first().boundingBox())!;
    await page.mouse.move(handle.x + 3, handle.y + 3);
    await page.mouse.down();
    const end = (await cell(page, "C11").boundingBox())!;
    await page.mouse.move(end.x + 30, end.y + 10, { steps: 6 });
    await page.mouse.up();
    expect(await typedIn("C11")).toBe("=B11");
  });

  it("a cut cell stays until it is pasted, and then its name and what refers to it come along, to another page too", async () => {
    await enter("C21", "=B11*2");
    await enter("C19", "=hem");
    await choose("B11");
    const [formula, shown] = [await bar().inputValue(), await cell(page, "B11").textContent()];
    const doubled = await cell(page, "C21").textContent();
    await key("Control+x");
    expect(await told()).toBe(
      "B11 is cut: select a cell and paste to move it there, or press Escape to cancel.",
    );
    expect(await cell(page, "B11").getAttribute("class")).toContain("cell-cut");
    expect(await cell(page, "B11").textContent()).toBe(shown);
    await key("Escape");
    expect(await cell(page, "B11").getAttribute("class")).not.toContain("cell-cut");
    await key("Control+x");
    await choose("C22");
    await key("Control+v");
    expect(await typedIn("B11")).toBe("");
    expect(await typedIn("C22")).toBe(formula);
    expect(await typedIn("C21")).toBe("=C22*2");
    expect(await cell(page, "C19").textContent()).toBe(shown);
    await choose("C22");
    expect(await page.getByLabel("Name of the cell").inputValue()).toBe("hem");
    expect(await cell(page, "C21").textContent()).toBe(doubled);
    await key("Control+z");
    expect(await typedIn("B11")).toBe(formula);
    expect(await typedIn("C21")).toBe("=B11*2");

    await choose("C21");
    await key("Control+x");
    await turn("Trimmings");
    await choose("C2");
    await key("Control+v");
    expect(await typedIn("C2")).toBe("=Draft!B11*2");
    expect(await cell(page, "C2").textContent()).toBe(doubled);
    await choose("C3");
    await key("Control+v");
    expect(await typedIn("C3")).toBe("=Draft!B12*2");
    expect(await typedIn("C2")).toBe("=Draft!B11*2");
    await turn("Draft");
    expect(await typedIn("C21")).toBe("");
  });
});

describe("rows and columns", () => {
  it("a right click puts a row in above, and formulas and names follow", async () => {
    await cell(page, "B13").click({ button: "right" });
    await page.getByRole("menuitem", { name: "Insert row above" }).click();
    expect(await typedIn("B14")).toBe("5");
    expect(await page.getByLabel("Name of the cell").inputValue()).toBe("sections");
    expect(await cell(page, "B16").textContent()).toBe("2 3/8");
    await key("Control+z");
    expect(await typedIn("B13")).toBe("5");
  });

  it("Shift+F10 takes rows out, and the keyboard is back in the grid", async () => {
    await choose("B13", "B14");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Delete 2 rows" }).focus();
    await key("Enter");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("Opening at each slash");
    await key("ArrowDown");
    expect(await chosen()).toBe("B14");
  });

  it("the button gives a column another heading and kind", async () => {
    await choose("B8");
    await page.getByRole("button", { name: "Rows and columns" }).click();
    await page.getByRole("menuitem", { name: "Heading and kind of column B…" }).click();
    await page.getByLabel("Heading").fill("Inches <i>");
    await page.getByLabel("Width on screen, in pixels").fill("200");
    await key("Enter");
    const heads = () => page.locator(".ht_clone_top .column-heading").allTextContents();
    await expect.poll(heads).toContain("Inches <i>");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(200);
    await key("Control+z");
    await expect.poll(heads).toContain("Value");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(150);
  });

  it("a column drawn wider is a step that undo takes back", async () => {
    const head = (await page.locator(".ht_clone_top th").nth(2).boundingBox())!;
    await page.mouse.move(head.x + head.width - 3, head.y + 10);
    await page.mouse.down();
    await page.mouse.move(head.x + head.width + 57, head.y + 10, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await cell(page, "B8").boundingBox())!.width).toBe(210);
    await choose("B8");
    await key("Control+z");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(150);
  });

  it("rows are moved by keys and by their heads, hidden with a mark, and shown again", async () => {
    await choose("B4");
    await key("Alt+Shift+ArrowDown");
    expect(await chosen()).toBe("B5");
    expect(await typedIn("B5")).toMatch(/^=SEAM_GIRTH/);
    await key("Control+z");
    const head = async (row: number) =>
      (await page
        .locator(".ht_clone_inline_start tbody th")
        .nth(row - 1)
        .boundingBox())!;
    const [from, to] = [await head(13), await head(16)];
    await page.mouse.click(from.x + 20, from.y + 13);
    await page.mouse.move(from.x + 20, from.y + 13);
    await page.mouse.down();
    await page.mouse.move(to.x + 20, to.y + 22, { steps: 6 });
    await page.mouse.up();
    expect(await typedIn("B16")).toBe("5");
    expect(await page.getByLabel("Name of the cell").inputValue()).toBe("sections");
    await key("Control+z");
    await choose("B8", "B9");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Hide 2 rows" }).click();
    const line = page.locator(".grid-hidden");
    expect(await line.textContent()).toContain("Rows 8 to 9 are hidden; they count all the same.");
    await expect.poll(chosen).toBe("B10");
    await key("ArrowUp");
    expect(await chosen()).toBe("B7");
    await line.getByRole("button").click();
    await expect.poll(() => line.count()).toBe(0);
  });

  it("a block is sorted by a column, and one whose formulas use its other rows says why not", async () => {
    await page.getByRole("button", { name: "Add a page to Cut" }).click();
    await key("Escape");
    await toClipboard("skirt\t2\nband\t1\ncuff\t4");
    await choose("A1");
    await key("Control+v");
    await choose("B2");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Sort…" }).click();
    await page.getByLabel("Order").selectOption("true");
    await page.getByRole("button", { name: "Sort" }).click();
    await expect.poll(() => cell(page, "A1").textContent()).toBe("cuff");
    expect(await cell(page, "B3").textContent()).toBe("1");
    await enter("C2", "=B1+B2");
    await choose("B2");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Sort…" }).click();
    await page.getByRole("button", { name: "Sort" }).click();
    expect(await page.getByRole("dialog").getByRole("alert").textContent()).toMatch(
      /C2 uses B1, another row of this block/,
    );
  });

  it("a cell with choices offers them, and another value is kept and listed among the problems", async () => {
    await choose("B20");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals and unit…" }).click();
    await page.getByLabel("Chosen from").fill("1; 2; 3");
    await page.getByRole("button", { name: "Keep" }).click();
    await choose("B20");
    await key("Alt+ArrowDown");
    expect(await page.getByRole("listbox", { name: "Choices" }).getByRole("option").count()).toBe(3);
    for (const step of ["ArrowDown", "Enter", "Enter"]) await key(step);
    expect(await typedIn("B20")).toBe("1");
    await enter("B20", "4");
    expect(await cell(page, "B20").textContent()).toBe("4");
    await choose("B20");
    expect(await told()).toContain('"4" is not among the choices 1, 2, 3');
    const looks = await page.evaluate(() => {
      const style = (text: string) => {
        const td = [...document.querySelectorAll(".ht_master td")].find((one) => one.textContent === text)!;
        return getComputedStyle(td).backgroundColor;
      };
      return [style("9"), style("54 1/4"), document.querySelectorAll(".ht_master td svg.cell-piece").length];
    });
    expect(looks[0]).not.toBe(looks[1]);
  });

  it("a text is found in the book, gone to, and replaced in one step", async () => {
    await key("Control+f");
    await type("sections");
    const dialog = page.getByRole("dialog");
    expect(await dialog.getByRole("status").textContent()).toMatch(/^Found in \d+ cells\.$/);
    await dialog.getByLabel("Look in").selectOption("texts");
    await dialog.getByLabel("Replace with").fill("parts");
    await dialog.getByRole("button", { name: /^Replace in \d+ cell/ }).click();
    expect(await dialog.getByRole("status").textContent()).toMatch(
      /^Replaced in \d+ cells?; Undo brings it back$/,
    );
    await dialog.getByLabel("Find").fill("Parts of the paper strip");
    await dialog.getByRole("button", { name: "Draft!A13", exact: true }).click();
    expect(await chosen()).toBe("A13");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("parts of the paper strip");
    await key("Control+z");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("Sections of the paper strip");
  });

  it("column A stays in sight; a column is fitted to what it holds; a cell is shown in yards", async () => {
    await page.locator(".ht_master .wtHolder").evaluate((holder) => {
      holder.scrollLeft = 400;
    });
    await expect
      .poll(() => page.locator(".ht_clone_inline_start tbody tr").nth(7).textContent())
      .toContain("Depth");
    await page.locator(".ht_master .wtHolder").evaluate((holder) => {
      holder.scrollLeft = 0;
    });
    const box = (await cell(page, "B1").boundingBox())!;
    await page.mouse.move(box.x + box.width - 2, box.y - 30);
    await page.mouse.dblclick(box.x + box.width - 2, box.y - 30);
    await expect.poll(async () => (await cell(page, "B1").boundingBox())!.width).not.toBe(150);
    await choose("B11");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals and unit…" }).click();
    await page.getByLabel("Decimal places").selectOption("2");
    await page.getByLabel("Lengths in").selectOption("yd");
    await page.getByRole("button", { name: "Keep" }).click();
    await expect.poll(() => cell(page, "B11").textContent()).toBe("1.51 yd");
  });

  it("a short page has blank rows to type in, and grows by what is typed", async () => {
    await turn("Fit");
    await enter("A20", "a late note");
    expect(await typedIn("A20")).toBe("a late note");
  });
});

describe("for everyone", () => {
  it.each(["light", "dark"] as const)("nothing stands against use by everyone (%s)", async (scheme) => {
    await page.emulateMedia({ colorScheme: scheme });
    await enter("B13", "2.5");
    await choose("B7");
    await type("=SPREAD_PER_GAP(wai");
    expect(await violations(page, ".middle")).toEqual([]);
    await key("Escape");
    await key("Escape");
    await key("Shift+F10");
    expect(await violations(page, ".middle")).toEqual([]);
  });

  it("the keyboard comes into the grid and out of it again", async () => {
    await page.getByLabel("Text or formula of the cell").focus();
    const inGrid = () => page.evaluate(() => document.activeElement?.closest(".ht_master") !== null);
    for (let tabs = 0; tabs < 5 && !(await inGrid()); tabs += 1) await key("Tab");
    expect(await inGrid()).toBe(true);
    await choose("A1");
    await key("Shift+Tab");
    expect(await inGrid()).toBe(false);
  });
});

describe("figures that would not count", () => {
  it("are told at the cell and in the list, one button makes their column count, and one undo takes that back", async () => {
    await turn("Fit");
    await choose("F13");
    await toClipboard("38 1/4\n27,5\n29");
    await key("Control+v");
    await enter("E13", "=MAX(F13:F15)");
    expect(await cell(page, "E13").textContent()).toBe("0");
    await choose("F14");
    expect(await told()).toContain("F13, F14 and F15 read as numbers but column F holds text");
    await page.getByRole("button", { name: "1 problem" }).click();
    const list = page.locator("#checks li");
    expect(await list.count()).toBe(1);
    await list.getByRole("button", { name: "Calculate with column F" }).click();
    await expect.poll(() => cell(page, "E13").textContent()).toBe("38 1/4");
    expect(await page.getByRole("button", { name: "No problems" }).count()).toBe(1);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => cell(page, "E13").textContent()).toBe("0");
    await page.getByLabel("Decimal mark").selectOption("comma");
    await choose("F14");
    await page.locator("#cell-message").getByRole("button", { name: "Calculate with column F" }).click();
    await enter("F14", "27,25");
    await expect.poll(() => cell(page, "F14").textContent()).toBe("27 1/4");
    await enter("E14", "=F14*1 1/10");
    await enter("F15", "1.250");
    await choose("F15");
    expect(await told()).toContain(
      "1.250 has two readings: 1,250 with the point as its decimal mark, or 1250",
    );
  });
});
