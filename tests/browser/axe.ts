/** axe-core, Deque's rules for WCAG 2, run in the page of a test. */
import axe from "axe-core";
import type { Page } from "playwright-core";

/** What axe finds on the page, or within one part of it: each as its rule and where. */
export async function violations(page: Page, part = "html"): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (selector) => {
    const { run } = (window as unknown as { axe: typeof axe }).axe;
    const found = await run(selector);
    return found.violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`),
    );
  }, part);
}
