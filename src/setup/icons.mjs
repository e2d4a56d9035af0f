/** `npm run icons`: draws the app's icon, src/app/public/icon.svg, as PNG files in the sizes that its manifest names. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { root } from "./build.mjs";

const folder = join(root, "src/app/public");
const drawing = readFileSync(join(folder, "icon.svg"), "utf8");
const { icons } = JSON.parse(readFileSync(join(folder, "manifest.webmanifest"), "utf8"));
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium" });
const page = await browser.newPage();
for (const { src, sizes, type } of icons) {
  if (type !== "image/png") continue;
  const side = Number(sizes.split("x")[0]);
  await page.setViewportSize({ width: side, height: side });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw}</style>${drawing}`);
  await page.screenshot({ path: join(folder, src) });
}
await browser.close();
