import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { readMarks } from "../../functions/marks-text.ts";
import { run, stripOf } from "../../functions/run.ts";

const withStrip = [...catalogue.values()].filter(({ strip }) => strip);

describe.each(withStrip.map((one) => [one.name, one] as const))("the strip of %s", (_, declaration) => {
  test.each(declaration.examples.map((example) => [JSON.stringify(example.given), example] as const))(
    "has the answer to %s among its places",
    (__, example) => {
      const args = Object.keys(declaration.takes).map((name) => example.given[name] ?? null);
      const setting = { unit: example.unit ?? "in" } as const;
      const strip = stripOf(declaration, args, setting)!;
      const places = strip.marks.map(({ at }) => at);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
      for (const at of places) {
        expect(at).toBeGreaterThanOrEqual(-1e-9);
        expect(at).toBeLessThanOrEqual(strip.length + 1e-9);
      }
      const answer = run(declaration, args, setting);
      const listed = declaration.returns === "text" ? readMarks(String(answer), "marks", setting) : [];
      for (const place of listed) expect(places.some((at) => Math.abs(at - place) < 1e-9)).toBe(true);
      if (declaration.returns === "length" && typeof answer === "number")
        expect(places.some((at) => Math.abs(at - answer) < 1e-9)).toBe(true);
    },
  );
});

test("a pleated panel's strip has its folds where the pleats' list of marks has them", () => {
  const at = (name: string, ...args: (number | string | number[])[]) =>
    stripOf(catalogue.get(name)!, args, { unit: "in" })!.marks.map((mark) => Number(mark.at.toFixed(9)));
  expect(at("PLEATED_PANEL", 24, 24, 10, [6, 12, 18], [1])).toEqual([6, 7, 8, 14, 15, 16, 22, 23, 24]);
  expect(at("UNEVEN_MARK", 1, 24, [1, 1, 1], [6, 12, 18])).toEqual([6, 7, 8, 14, 15, 16, 22, 23, 24]);
});
