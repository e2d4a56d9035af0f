import { readFileSync } from "node:fs";
import { expect, it } from "vitest";

const css = readFileSync("src/app/shell/theme.css", "utf8");

/** A colour of the page: in the light, in the dark. */
const colours = (name: string): string[] =>
  new RegExp(`--${name}: light-dark\\((#\\w+), (#\\w+)\\)`).exec(css)!.slice(1);

/** Relative luminance, 0 to 1, as WCAG 2.2 defines it. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

it("the borders of fields and buttons stand out 3 : 1 from both papers, in the light and in the dark", () => {
  for (const rule of ["button,\nselect {", "\ninput {"])
    expect(css.slice(css.lastIndexOf(rule)).split("}")[0]).toContain("border: 1px solid var(--edge)");
  for (const paper of ["paper", "paper-2"])
    colours("edge").forEach((edge, i) => {
      const [less, more] = [luminance(edge), luminance(colours(paper)[i]!)].toSorted((a, b) => a - b);
      expect((more! + 0.05) / (less! + 0.05), `${edge} on ${paper}`).toBeGreaterThan(3);
    });
});
