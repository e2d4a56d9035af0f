/** axe-core, Deque's rules for WCAG 2, run in the page of a test. */
import axe, { type RunOptions } from "axe-core";
import type { Page } from "playwright-core";

/** Every rule runs; of what keeps to a rule no list is made, and no selectors, which would take half of the time. */
const OPTIONS: RunOptions = { resultTypes: ["violations"], selectors: false, preload: false };

/** The rules that depend on colours. */
const COLOURS = ["color-contrast", "link-in-text-block"];

/** What axe finds on the page, or within one part of it, by all rules or by those of colours: each as its rule and where. */
export async function violations(
  page: Page,
  part = "html",
  rules: "all" | "colours" = "all",
): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const options: RunOptions =
    rules === "all" ? OPTIONS : { ...OPTIONS, runOnly: { type: "rule", values: COLOURS } };
  return page.evaluate(
    async ([selector, given]) => {
      const { run } = (window as unknown as { axe: typeof axe }).axe;
      const found = await run(selector, given);
      return found.violations.flatMap(({ id, nodes }) =>
        nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`),
      );
    },
    [part, options] as const,
  );
}
