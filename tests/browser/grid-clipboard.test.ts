/** What uses the clipboard stands in one file: files run side by side in one browser, which has one clipboard. */
import { describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import {
  bar,
  choose,
  clipboard,
  enter,
  key,
  message,
  onDraft,
  page,
  toClipboard,
  turn,
  typedIn,
} from "./grid.ts";
import { cell } from "./page.ts";

onDraft();

describe("blocks", () => {
  it("shown values are copied as plain text", async () => {
    await choose("A2", "B3");
    await key("Control+c");
    await expect
      .poll(() => clipboard())
      .toBe("Waist after the fittings\t26 3/4\nShare of the half girth that runs level\t0.5");
  });

  it("a copied formula moves along, on another page too, and one undo takes it back", async () => {
    await enter("B7", "=B2*2");
    await choose("B7");
    await key("Control+c");
    await choose("B12", "C12");
    await key("Control+v");
    await expect.poll(() => typedIn("B12")).toBe("=B7*2");
    await expect.poll(() => typedIn("C12")).toBe("=C7*2");
    await key("Control+z");
    await expect.poll(() => typedIn("C12")).toBe("");
    await expect.poll(() => typedIn("B12")).toBe("");
    await turn("Trimmings");
    await choose("B20");
    await key("Control+v");
    await expect.poll(() => typedIn("B20")).toBe("=B15*2");
  });

  it("a block of another program comes in as one step and brings the columns it needs", async () => {
    await toClipboard('a\t12 1/4\tx\ty\r\n=B2\t"say ""when"""\t"two\nlines"\tw\r\n');
    await choose("A12");
    await key("Control+v");
    await expect.poll(() => typedIn("B12")).toBe("12 1/4");
    await expect.poll(() => typedIn("A13")).toBe("=B2");
    await expect.poll(() => typedIn("B13")).toBe('say "when"');
    await expect.poll(() => typedIn("C13")).toBe("two\nlines");
    await expect.poll(() => typedIn("D13")).toBe("w");
    await key("Control+z");
    await expect.poll(() => cell(page, "D13").count()).toBe(0);
    await expect.poll(() => typedIn("B13")).toBe("5");
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
    await expect.poll(() => typedIn("B21")).toBe("two");
    const said = page.locator(".grid-hidden");
    await expect.poll(() => said.textContent()).toContain("1 cell of the table spanned several");
    await said.getByRole("button", { name: "Paste as plain lines" }).click();
    await expect.poll(() => typedIn("A20")).toBe("skirt 28 1/2 two");
    await expect.poll(() => page.title()).not.toBe("1");
  });

  it("markup on the clipboard or in a heading is text", async () => {
    await toClipboard("<img src=x onerror=alert(1)>");
    await choose("C7");
    await key("Control+v");
    await expect.poll(() => cell(page, "C7").textContent()).toBe("<img src=x onerror=alert(1)>");
    await expect.poll(() => cell(page, "C7").locator("img").count()).toBe(0);
  });

  it("cells are filled down, to the right, and by the handle", async () => {
    await enter("C8", "=B8");
    await choose("C8", "C9");
    await key("Control+d");
    await expect.poll(() => typedIn("C9")).toBe("=B9");
    await choose("B12");
    await key("Control+r");
    await expect.poll(() => typedIn("B12")).toBe(await typedIn("A12"));
    await choose("C8");
    const handle = (await page.locator(".ht_master .wtBorder.corner").first().boundingBox())!;
    await page.mouse.move(handle.x + 3, handle.y + 3);
    await page.mouse.down();
    const end = (await cell(page, "C11").boundingBox())!;
    await page.mouse.move(end.x + 30, end.y + 10, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => typedIn("C11")).toBe("=B11");
  });

  it("a cut cell stays until it is pasted, and then its name and what refers to it come along, to another page too", async () => {
    await enter("C21", "=B11*2");
    await enter("C19", "=hem");
    await choose("B11");
    const [formula, shown] = [await bar().inputValue(), await cell(page, "B11").textContent()];
    const doubled = await cell(page, "C21").textContent();
    await key("Control+x");
    await expect
      .poll(() => message())
      .toBe("B11 is cut: select a cell and paste to move it there, or press Escape to cancel.");
    await expect.poll(() => cell(page, "B11").getAttribute("class")).toContain("cell-cut");
    await expect.poll(() => cell(page, "B11").textContent()).toBe(shown);
    await key("Escape");
    await expect.poll(() => cell(page, "B11").getAttribute("class")).not.toContain("cell-cut");
    await key("Control+x");
    await choose("C22");
    await key("Control+v");
    await expect.poll(() => typedIn("B11")).toBe("");
    await expect.poll(() => typedIn("C22")).toBe(formula);
    await expect.poll(() => typedIn("C21")).toBe("=C22*2");
    await expect.poll(() => cell(page, "C19").textContent()).toBe(shown);
    await choose("C22");
    await expect.poll(() => page.getByLabel("Name of the cell").inputValue()).toBe("hem");
    await expect.poll(() => cell(page, "C21").textContent()).toBe(doubled);
    await key("Control+z");
    await expect.poll(() => typedIn("B11")).toBe(formula);
    await expect.poll(() => typedIn("C21")).toBe("=B11*2");

    await choose("C21");
    await key("Control+x");
    await turn("Trimmings");
    await choose("C2");
    await key("Control+v");
    await expect.poll(() => typedIn("C2")).toBe("=Draft!B11*2");
    await expect.poll(() => cell(page, "C2").textContent()).toBe(doubled);
    await choose("C3");
    await key("Control+v");
    await expect.poll(() => typedIn("C3")).toBe("=Draft!B12*2");
    await expect.poll(() => typedIn("C2")).toBe("=Draft!B11*2");
    await turn("Draft");
    await expect.poll(() => typedIn("C21")).toBe("");
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
    await expect.poll(() => name("B20").inputValue()).toBe("waist_girth");
    await expect.poll(() => name("B21").inputValue()).toBe("waist_girth_2");
    await expect.poll(() => dialog().getByText("waist_girth is the name of Fit!B20").count()).toBe(1);
    await expect
      .poll(() =>
        dialog()
          .getByText(/^depth is the name of Draft!B8/)
          .count(),
      )
      .toBe(1);
    // A blank cell is offered a name, and left out until it is asked for.
    await expect.poll(() => dialog().getByLabel("Give B24 a name").isChecked()).toBe(false);
    expect(await violations(page, ".dialog")).toEqual([]);
    const give = dialog().getByRole("button", { name: /^Give \d names?$/ });
    await name("B21").fill("waist_girth");
    await expect.poll(() => dialog().getByText("waist_girth is given twice here").count()).toBe(2);
    await expect.poll(() => give.isDisabled()).toBe(true);
    await name("B21").fill("B7");
    await expect.poll(() => dialog().getByText('"B7" reads like a cell').count()).toBe(1);
    await dialog().getByLabel("Give B21 a name").uncheck();
    await dialog().getByLabel("The names belong to").selectOption("page");
    await expect.poll(() => name("B22").inputValue()).toBe("depth");
    await expect.poll(() => give.textContent()).toBe("Give 3 names");
    await give.click();
    await dialog().waitFor({ state: "detached" });
    const field = page.locator(".name-field");
    await choose("B22");
    await expect.poll(() => field.getByRole("textbox").inputValue()).toBe("depth");
    await expect.poll(() => field.textContent()).toContain("on Fit alone");
    await enter("C20", "=depth*2+waist_girth");
    await expect.poll(() => cell(page, "C20").textContent()).toBe("45");
    await key("Control+z");
    await key("Control+z");
    await choose("B20");
    await expect.poll(() => field.getByRole("textbox").inputValue()).toBe("");

    await choose("B20", "B22");
    await openNames();
    await dialog().getByLabel("Name for B20:B22").fill("girths");
    await dialog().getByRole("button", { name: "Give 1 name" }).click();
    await choose("B21");
    await expect.poll(() => field.textContent()).toContain("in girths");
    await choose("B20", "B22");
    await expect.poll(() => page.getByLabel("Name of the cells B20:B22").inputValue()).toBe("girths");
    await enter("C20", "=COUNTA(girths)");
    await expect.poll(() => cell(page, "C20").textContent()).toBe("3");
  });
});

describe("figures that would not count", () => {
  it("are shown at the cell and in the list, one button makes their column count, and one undo takes that back", async () => {
    await turn("Fit");
    await choose("F13");
    await toClipboard("38 1/4\n27,5\n29");
    await key("Control+v");
    await enter("E13", "=MAX(F13:F15)");
    await expect.poll(() => cell(page, "E13").textContent()).toBe("0");
    await choose("F14");
    await expect.poll(() => message()).toContain("F13, F14 and F15 read as numbers but column F holds text");
    await page.getByRole("button", { name: "1 problem" }).click();
    const list = page.locator("#checks li");
    await expect.poll(() => list.count()).toBe(1);
    await list.getByRole("button", { name: "Calculate with column F" }).click();
    await expect.poll(() => cell(page, "E13").textContent()).toBe("38 1/4");
    await expect.poll(() => page.getByRole("button", { name: "No problems" }).count()).toBe(1);
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
    await expect
      .poll(() => message())
      .toContain("1.250 has two readings: 1,250 with the point as its decimal mark, or 1250");
  });
});
