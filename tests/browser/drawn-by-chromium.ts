/** Drawings placed by Chromium's own SVG, to hold our reader against: where their lines run, in CSS pixels. */
import type { Page } from "playwright-core";

/** Each draws one closed line, whose element has the id "x". */
export const DRAWINGS: Readonly<Record<string, string>> = {
  "units and view box":
    '<svg width="120mm" height="3in" viewBox="-10 5 60 40"><path id="x" d="M0 10c10-8 20-8 30 0s10 20 0 25q-15 10-30 0z"/></svg>',
  "aspect to the right, cut":
    '<svg width="200pt" height="10pc" viewBox="0 0 30 90" preserveAspectRatio="xMaxYMin slice"><rect id="x" x="3" y="4" width="20" height="30" rx="6" ry="4"/></svg>',
  "aspect left aside":
    '<svg width="8cm" height="5cm" viewBox="0 0 10 10" preserveAspectRatio="none"><circle id="x" cx="5" cy="5" r="4"/></svg>',
  "groups with every transform":
    '<svg width="400px" height="400px"><g transform="translate(200,50) rotate(25 10 20)"><g transform="skewX(15) scale(1.5 .8)"><g transform="matrix(.9 .1 -.2 1.1 5 6) skewY(-8)"><path id="x" d="M0 0h80a30 20 15 0 1 20 40L80 120H10z"/></g></g></g></svg>',
  "a mirrored arc":
    '<svg width="300px" height="300px"><path id="x" transform="scale(-1 1) translate(-280 20)" d="M10 10A100 100 0 0 1 210 10L110 200Z"/></svg>',
  "a nested drawing":
    '<svg width="10cm" height="10cm" viewBox="0 0 100 100"><svg x="10%" y="20" width="50%" height="60" viewBox="0 0 10 40" preserveAspectRatio="xMinYMax meet"><ellipse id="x" cx="5" cy="20" rx="4" ry="15"/></svg></svg>',
  "a style that turns":
    '<svg width="200px" height="200px"><polygon id="x" style="transform: translate(90px, 10px) rotate(0.1turn)" points="0,0 60,10 50,90 -10,80"/></svg>',
};

/** The length round the line and the box of its points, by getPointAtLength and getScreenCTM, in pixels from the drawing's upper left. */
export const drawnBy = (page: Page, svg: string) =>
  page.evaluate((text) => {
    const holder = document.createElement("div");
    holder.style.cssText = "position: absolute; left: 0; top: 0";
    // The page lets no style attribute work that a text brings with it.
    holder.innerHTML = text.replace(" style=", " data-style=");
    for (const one of holder.querySelectorAll<SVGElement>("[data-style]"))
      one.style.cssText = one.dataset.style!;
    document.body.append(holder);
    const root = holder.querySelector("svg")!;
    root.style.overflow = "visible";
    const line = holder.querySelector<SVGGeometryElement>("#x")!;
    const { left, top } = root.getBoundingClientRect();
    const matrix = line.getScreenCTM()!;
    const length = line.getTotalLength();
    const points = Array.from({ length: 4001 }, (_, i) => {
      const { x, y } = line.getPointAtLength((length * i) / 4000).matrixTransform(matrix);
      return [x - left, y - top] as const;
    });
    holder.remove();
    const round = points
      .slice(1)
      .reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return { round, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
  }, svg);
