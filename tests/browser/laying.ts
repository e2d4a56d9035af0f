/** What a lay test does and sees on the page: cut lists typed in, the board's words and figures, overlaps measured. */
import type { Page } from "playwright-core";
import { cell } from "./page.ts";

/** All of it for the page that is open when it is called. */
export function laying(page: () => Page) {
  /** What is seen of the words about the lay; what is only read aloud stands in it, too. */
  const what = () =>
    page()
      .locator(".lay-what")
      .evaluate((words) =>
        [...words.childNodes]
          .slice(1)
          .map((node) => node.textContent)
          .join(""),
      );
  const state = () => page().locator(".lay-state").textContent();
  const place = () => page().locator(".lay-place").textContent();
  const button = (name: string | RegExp) => page().getByRole("button", { name });
  const table = () => page().getByRole("group", { name: /^The lay:/ });

  /** Types into a cell of the page in sight. */
  async function enter(address: string, text: string): Promise<void> {
    await cell(page(), address).click();
    await page().keyboard.type(text);
    await page().keyboard.press("Enter");
  }

  /** Gores of the miller's daughter's skirt, seven of them on 50 in cloth, in rows that the ready book leaves free. */
  async function gores(): Promise<void> {
    await enter("B19", "M 5 0 L 17 0 L 22 31 L 0 31 Z");
    await enter("C19", "7");
    await enter("B20", "50");
    await enter("B21", "=YARDAGE(B19;C19;B20;TRUE)");
    await cell(page(), "B21").click();
    await page().locator(".lay-board").waitFor();
  }

  /**
   * Gores, pentagons and gussets, 18 on 46 in cloth, either way up. Laid one by one they take about
   * 157 in; a search comes to 144 in the first second, whatever its seed.
   */
  async function mixed(): Promise<void> {
    await enter("B19", "M 5 0 L 17 0 L 22 31 L 0 31 Z");
    await enter("C19", "5");
    await enter("B20", "M 0 8 L 9 0 L 18 8 L 15 22 L 3 22 Z");
    await enter("C20", "6");
    await enter("B21", "M 0 0 L 14 3 L 10 12 L 2 9 Z");
    await enter("C21", "7");
    await enter("B22", "46");
    await enter("B23", "=YARDAGE(B19:B21;C19:C21;B22;FALSE)");
    await cell(page(), "B23").click();
    await page().locator(".lay-board").waitFor();
  }

  const figure = async (address: string) =>
    Number.parseFloat((await cell(page(), address).textContent()) ?? "");

  /** How many copies lie there, and whether any two overlap, by the outlines on the screen. */
  const overlaps = () =>
    page().evaluate(() => {
      const paths = [...document.querySelectorAll<SVGPathElement>(".lay-table .lay-cut")];
      const context = document.createElement("canvas").getContext("2d")!;
      const shapes = paths.map((path) => {
        const { e, f } = path.getCTM()!;
        const shape = new Path2D();
        shape.addPath(new Path2D(path.getAttribute("d")!), new DOMMatrix([1, 0, 0, 1, e, f]));
        const box = path.getBBox();
        return { shape, left: box.x + e, top: box.y + f, wide: box.width, tall: box.height };
      });
      let both = 0;
      // Points 3 px apart; a pixel of touching does not count.
      shapes.forEach((a, i) => {
        for (let x = a.left; x < a.left + a.wide; x += 3)
          for (let y = a.top; y < a.top + a.tall; y += 3) {
            const inside = (s: (typeof shapes)[number]) =>
              [0, 1.5, -1.5].every((d) =>
                [0, 1.5, -1.5].every((e) => context.isPointInPath(s.shape, x + d, y + e)),
              );
            if (!inside(a)) continue;
            both += shapes.filter((b, j) => j > i && inside(b)).length;
          }
      });
      return { copies: shapes.length, both };
    });

  return { what, state, place, button, table, enter, gores, mixed, figure, overlaps };
}

/** The tape figure that a text begins with: whole, and parts of an inch. */
export function tapeFigure(text: string | null): number {
  const [, whole = "0", top = "0", under = "1"] = /^([\d.]+)(?: (\d+)\/(\d+))?/.exec(text ?? "")!;
  return Number(whole) + Number(top) / Number(under);
}
