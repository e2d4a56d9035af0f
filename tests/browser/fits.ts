/** What does not fit the screen, and what is too small for a finger, on the page of a test. */
import type { Page } from "playwright-core";

/** The least side, in pixels, of what a finger presses: success criterion 2.5.5 of WCAG 2.2. */
const FINGER = 44;

/** What is pressed: each too small for a finger, as its size and what it is called. */
export async function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const top = document.querySelector("dialog[open]") ?? document.body;
    return [...top.querySelectorAll("button, select, input, textarea, summary, a, [role=option]")].flatMap(
      (one) => {
        if (one.closest(".handsontable, .unseen, [inert]")) return [];
        const own = one.getBoundingClientRect();
        // Pressing a label presses what it is for.
        const label = one.closest("label")?.getBoundingClientRect() ?? own;
        const [wide, tall] = [Math.max(own.width, label.width), Math.max(own.height, label.height)];
        if (own.width === 0 || (wide > least - 0.5 && tall > least - 0.5)) return [];
        return `${Math.round(wide)} × ${Math.round(tall)} ${one.outerHTML.slice(0, 120)}`;
      },
    );
  }, FINGER);
}

/**
 * What can't be seen whole and can't be scrolled to: what is wider than its own box, what a box around it cuts
 * off, what stands outside the window, and a page that scrolls sideways. The grid, which scrolls by itself, and
 * the list of pages, which does on a phone, count as one thing each.
 */
export async function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { documentElement: root } = document;
    const wide = root.clientWidth;
    const low = root.clientHeight;
    const found: string[] =
      root.scrollWidth > wide ? [`the page scrolls sideways, ${root.scrollWidth} in ${wide}`] : [];
    const top = document.querySelector("dialog[open]") ?? document.body;
    const pageScrolls = top === document.body && root.scrollHeight > low;
    for (const one of top.querySelectorAll<HTMLElement>("*")) {
      if (one.closest(".handsontable, .unseen, [inert], svg, option, canvas") || one.tagName === "OPTION")
        continue;
      const box = one.getBoundingClientRect();
      const hasWords = [...one.childNodes].some(
        ({ nodeType, data }: ChildNode & { data?: string }) => nodeType === Node.TEXT_NODE && data?.trim(),
      );
      const pressed = /^(?:BUTTON|SELECT|INPUT|TEXTAREA|SUMMARY|A)$/.test(one.tagName);
      if (
        box.width <= 1 ||
        box.height <= 1 ||
        !(hasWords || pressed) ||
        !one.checkVisibility({ visibilityProperty: true })
      )
        continue;
      const say = (what: string) => found.push(`${what}: ${one.outerHTML.slice(0, 120)}`);
      if (one.tagName !== "TEXTAREA" && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
        say(`${one.scrollWidth} wide in ${one.clientWidth}`);
      let [across, down] = [false, pageScrolls];
      for (
        let around = one.parentElement;
        around && around !== document.body;
        around = around.parentElement
      ) {
        const { overflowX, overflowY } = getComputedStyle(around);
        const frame = around.getBoundingClientRect();
        if (/auto|scroll/.test(overflowX)) across = true;
        if (/auto|scroll/.test(overflowY)) down = true;
        if (
          /hidden|clip/.test(overflowX) &&
          !across &&
          (box.right > frame.right + 1 || box.left < frame.left - 1)
        )
          say(`cut off sideways by .${around.className}`);
        if (
          /hidden|clip/.test(overflowY) &&
          !down &&
          (box.bottom > frame.bottom + 1 || box.top < frame.top - 1)
        )
          say(`cut off by .${around.className}`);
        if (getComputedStyle(around).position === "fixed") break;
      }
      if (!across && (box.right > wide + 1 || box.left < -1)) say("outside the window");
      if (!down && (box.bottom > low + 1 || box.top < -1)) say("below the window");
    }
    return found;
  });
}
