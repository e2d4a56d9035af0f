import * as XLSX from "@e965/xlsx";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { edgeLength, pieceBounds } from "../../functions/pieces/piece.ts";
import { readOutlines } from "../../src/exchange/outlines/read-outlines.ts";
import { violations } from "./axe.ts";
import { DRAWINGS, drawnBy } from "./drawn-by-chromium.ts";
import { cutOff } from "./fits.ts";
import { cell, openReady } from "./page.ts";

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
  const page = await openReady();
  const dialog = page.getByRole("dialog");
  const pages = () => page.locator("nav.pages .page").allTextContents();
  const before = await pages();

  await drop(page, "cast.csv", text('role,waist\nmiller,70\n"widow, old","91,5"\n'));
  await dialog.getByText("The cells are separated by commas").waitFor();
  await dialog.getByLabel("Cells are separated by").selectOption(";");
  await dialog.getByText("Each line is one cell.").waitFor();
  await dialog.getByLabel("Cells are separated by").selectOption(",");
  await dialog.getByLabel("Contents of column B").selectOption("length");
  await dialog.getByLabel("Its lengths are in").selectOption("cm");
  await dialog.getByText("lengths are converted when the pages are added").waitFor();
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  await expect.poll(() => pages()).toEqual(before);

  await drop(page, "troupe.csv", text("Personne;Tour de hanches;Taille\nla veuve;101;76\n"));
  await dialog.getByText("“Tour de hanches” is read as “hip girth”").waitFor();
  await dialog.getByText("The heading “Taille” of column C may mean “waist girth” or “stature”").waitFor();
  await dialog.getByLabel("Heading of column C").selectOption("waist girth");
  await dialog.getByText("“Taille” is read as “waist girth”").waitFor();
  await dialog.getByLabel("Heading of column B").selectOption("“Tour de hanches”, as it is");
  await expect
    .poll(() => dialog.locator(".import-heading").allTextContents())
    .toEqual(["wearer", "Tour de hanches", "waist girth"]);
  if (process.env.LOOK) await page.screenshot({ path: `${process.env.LOOK}/import-french.png` });
  await page.keyboard.press("Escape");

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
  await expect.poll(() => pages()).toEqual(expect.arrayContaining([...before, "Cast", "Cut, cast"]));
  // 86.75 cm, in a book that measures in inches.
  await expect.poll(() => cell(page, "B3").textContent()).toBe("34 1/8");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => pages()).toEqual(before);

  // A file on the clipboard, as a file manager puts it there.
  await page.evaluate(
    (said) => {
      const clipboardData = new DataTransfer();
      clipboardData.items.add(new File([said], "big.csv"));
      document.body.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }),
      );
    },
    `role;waist (cm);hip (cm)\n${Array.from({ length: 10_000 }, (_, i) => `role ${i};${60 + (i % 40)},5;90`).join("\n")}`,
  );
  await dialog.getByText("10,001 lines of 3 cells").waitFor();
  await dialog.getByText("9,994 more rows.").waitFor();
  if (process.env.LOOK) await page.screenshot({ path: `${process.env.LOOK}/import-csv.png` });
  await dialog.getByRole("button", { name: "Make a book of it" }).click();
  await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toBe("big");

  await drop(page, "list.csv", text("%PDF-1.7"));
  await page.getByText("“list.csv” was not opened: it is a PDF").waitFor();
  await drop(page, "cast.xlsx", castFile().slice(0, 900));
  await dialog
    .getByText("“cast.xlsx” was not opened: it is a packed file that is cut off or damaged")
    .waitFor();
  await dialog.getByRole("button", { name: "Cancel" }).click();
  await expect.poll(() => pages()).toEqual(["big"]);
});

const MARKED =
  '<svg viewBox="0 0 200 130"><path id="yoke" d="M 0 30 C 30 30 60 18 70 0 L 140 0 C 150 18 180 30 200 30 L 200 120 L 0 120 Z"/><circle id="button" cx="180" cy="70" r="4"/><text>cut twice</text><rect id="cuff" x="10" y="122" width="60" height="8"/></svg>';

it("a drawing is shown piece by piece, asked for its size, and lands in the chosen cells or on a page that one undo takes back", async () => {
  const page = await openReady();
  const dialog = page.getByRole("dialog");
  const pages = () => page.locator("nav.pages .page").allTextContents();
  const before = await pages();

  // Chromium draws the same lines: lengths and boxes by its own SVG.
  for (const [name, svg] of Object.entries(DRAWINGS)) {
    const { round, box } = await drawnBy(page, svg);
    const found = readOutlines(text(svg));
    if ("refusal" in found) throw new Error(`${name}: ${found.refusal}`);
    const { piece, at } = found.pieces[0]!;
    const { left, low, right, high } = pieceBounds(piece);
    const own = [left + at[0], low + at[1], right + at[0], high + at[1]];
    // A corner may lie half way between two of Chromium's 4,000 points.
    for (const [i, side] of own.entries())
      expect(Math.abs(side - box[i]!), `${name}, side ${i}`).toBeLessThan(round / 8000 + 0.002);
    const sum = piece.edges.reduce((all, edge) => all + edgeLength(edge), 0);
    // The chords between these points cut off up to half a step at each of at most five corners.
    expect(Math.abs(sum - round), name).toBeLessThan((5 * round) / 8000);
  }

  // The drawing is read in a worker, which ends with the dialog, in the middle of its work if need be.
  const readers = () => page.workers().filter((worker) => worker.url().includes("outlines-worker"));
  const begins = page.waitForEvent("worker", (worker) => worker.url().includes("outlines-worker"));
  await drop(page, "yoke.svg", text(MARKED));
  await begins;
  await dialog.getByRole("button", { name: "Cancel" }).click();
  await expect.poll(() => readers().length).toBe(0);
  expect(await pages()).toEqual(before);

  await cell(page, "B3").click();
  await drop(page, "yoke.svg", text(MARKED));
  await dialog.getByText("The file does not say how large it is.").waitFor();
  await dialog.getByLabel("Closed lines inside a piece are").selectOption("pieces");
  await dialog.getByRole("img", { name: /^button/ }).waitFor();
  await dialog.getByLabel("Closed lines inside a piece are").selectOption("marks");
  await dialog.getByRole("img", { name: /^button/ }).waitFor({ state: "detached" });
  await dialog.getByText("A text is ignored: a text has no outline.").waitFor();
  await dialog.getByRole("button", { name: "Put into the book" }).click();
  await dialog.getByText("Nothing was put into the book: Type the true length").waitFor();
  // A level edge has no height, and yet can be pressed.
  const edge = dialog.getByRole("img", { name: /^cuff/ }).locator(".outlines-hit").first();
  const middle = await edge.evaluate((one) => {
    one.scrollIntoView({ block: "center" });
    const { left, right, top } = one.getBoundingClientRect();
    return [(left + right) / 2, top] as const;
  });
  await page.mouse.click(...middle);
  await expect.poll(() => dialog.getByLabel("This is").inputValue()).toBe("1/0");
  await dialog.getByLabel("Its true length").fill("wide");
  await dialog.getByText("must be a length above 0").waitFor();
  await dialog.getByLabel("Its true length").fill("6 in");
  await dialog.getByText("20 × 12 in, 212.13 sq in").waitFor();
  await dialog.getByLabel("Name").first().fill("miller's yoke");
  expect(await violations(page, "dialog")).toEqual([]);
  if (process.env.LOOK) await page.screenshot({ path: `${process.env.LOOK}/outlines-wide.png` });
  await page.setViewportSize({ width: 420, height: 820 });
  await expect.poll(() => cutOff(page)).toEqual([]);
  if (process.env.LOOK) {
    await page.screenshot({ path: `${process.env.LOOK}/outlines-narrow.png` });
    await page.setViewportSize({ width: 1360, height: 820 });
    await page.emulateMedia({ colorScheme: "dark" });
    await page.screenshot({ path: `${process.env.LOOK}/outlines-dark.png` });
    await page.emulateMedia({ colorScheme: null });
  }
  await page.setViewportSize({ width: 1360, height: 820 });
  await dialog.getByLabel("Name").first().focus();
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "A1").textContent()).toBe("miller's yoke");
  await expect.poll(() => cell(page, "C1").textContent()).toBe("20");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => pages()).toEqual(before);

  // Into the chosen cell and the ones below, turned, the small piece left out.
  await cell(page, "C21").click();
  await drop(page, "yoke.svg", text(MARKED.replace("<svg ", '<svg width="200in" height="130in" ')));
  await dialog.getByText("The file says how large it is: 200 in × 130 in.").waitFor();
  await dialog.getByLabel("Take cuff").uncheck();
  await dialog.getByRole("button", { name: "A quarter more" }).first().click();
  await dialog.getByText("120 × 200 in").waitFor();
  await dialog.getByLabel("Put them").selectOption({ label: "into C21 and the cells below" });
  await dialog.getByRole("button", { name: "Put into the book" }).click();
  await dialog.waitFor({ state: "detached" });
  await expect.poll(() => cell(page, "C21").textContent()).toMatch(/^M 90 0/);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => cell(page, "C21").textContent()).toBe("");

  await drop(page, "bad.svg", text("<svg><g></svg>"));
  await dialog.getByText("“bad.svg” was not opened: it is not a valid SVG file").waitFor();
  await page.keyboard.press("Escape");
  await expect.poll(() => pages()).toEqual(before);
});
