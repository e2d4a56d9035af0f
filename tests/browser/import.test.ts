import * as XLSX from "@e965/xlsx";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { violations } from "./axe.ts";
import { cell, open } from "./page.ts";

const drop = (page: Page, name: string, bytes: Uint8Array) =>
  page.evaluate(
    ([file, list]) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(list)], file));
      document.body.dispatchEvent(
        new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }),
      );
    },
    [name, [...bytes]] as const,
  );

const text = (said: string) => new TextEncoder().encode(said);

/** The cast's list with a second sheet that has the title of a page of the ready book. */
function castFile(): Uint8Array {
  const cast = XLSX.utils.aoa_to_sheet([
    ["role", "waist (cm)", "taken"],
    ["miller", 91.5, null],
    ["widow", 82, null],
    ["mean", null, null],
  ]);
  cast.B4 = { t: "n", v: 86.75, f: "AVERAGE(B2:B3)" };
  cast.C2 = { t: "n", v: 46146, z: "yyyy-mm-dd" };
  cast.C3 = { t: "n", v: 46147, z: "yyyy-mm-dd" };
  const cut = XLSX.utils.aoa_to_sheet([["apron", 2]]);
  const file = { SheetNames: ["Cast", "Cut"], Sheets: { Cast: cast, Cut: cut } };
  return new Uint8Array(XLSX.write(file, { type: "array", bookType: "xlsx" }));
}

it("a table is shown as it was understood, is read anew at each choice, and lands as pages that one undo takes back", async () => {
  const page = await open();
  page.setDefaultTimeout(15_000);
  const dialog = page.getByRole("dialog");
  const pages = () => page.locator("nav.pages .page").allTextContents();
  const before = await pages();

  await drop(page, "cast.csv", text('role,waist\nmiller,70\n"widow, old","91,5"\n'));
  await dialog.getByText("The cells are parted by commas").waitFor();
  await dialog.getByLabel("Cells are parted by").selectOption(";");
  await dialog.getByText("Each line is one cell.").waitFor();
  await dialog.getByLabel("Cells are parted by").selectOption(",");
  await dialog.getByLabel("Contents of column B").selectOption("length");
  await dialog.getByLabel("Its lengths are in").selectOption("cm");
  await dialog.getByText("lengths are converted when the pages are added").waitFor();
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  expect(await pages()).toEqual(before);

  await drop(page, "cast.csv", castFile());
  await dialog.getByText("It is a spreadsheet of ISO/IEC 29500, with 2 sheets.").waitFor();
  await dialog.getByText("“Cut” comes in as “Cut, cast”").waitFor();
  await dialog.getByText("1 formula stays alive and gives the value of the file.").waitFor();
  expect(await violations(page, "dialog")).toEqual([]);
  if (process.env.LOOK) {
    await page.screenshot({ path: `${process.env.LOOK}/import-wide.png` });
    await page.setViewportSize({ width: 420, height: 820 });
    await page.screenshot({ path: `${process.env.LOOK}/import-narrow.png` });
    await page.setViewportSize({ width: 1360, height: 820 });
    await page.emulateMedia({ colorScheme: "dark" });
    await page.screenshot({ path: `${process.env.LOOK}/import-dark.png` });
  }
  await dialog.getByRole("button", { name: "Add the 2 pages to this book" }).focus();
  await page.keyboard.press("Enter");
  await page.getByText("2 pages of “cast.csv” came into this book; Undo takes all of it out again").waitFor();
  expect(await pages()).toEqual(expect.arrayContaining([...before, "Cast", "Cut, cast"]));
  // 86.75 cm, in a book that measures in inches.
  await expect.poll(() => cell(page, "B3").textContent()).toBe("34 1/8");
  await page.getByRole("button", { name: "Undo" }).click();
  expect(await pages()).toEqual(before);

  await drop(page, "list.csv", text("%PDF-1.7"));
  await page.getByText("“list.csv” was not opened: it is a PDF").waitFor();
  await drop(page, "cast.xlsx", castFile().slice(0, 900));
  await dialog
    .getByText("“cast.xlsx” was not opened: it is a packed file that is cut off or damaged")
    .waitFor();
  await dialog.getByRole("button", { name: "Cancel" }).click();
  expect(await pages()).toEqual(before);
});
