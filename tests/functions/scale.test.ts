import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Declaration, Kind } from "../../functions/define.ts";
import { marksText, readMarks } from "../../functions/marks-text.ts";
import { type Argument, isRefused, run } from "../../functions/run.ts";
import { anyArguments, argumentsOf, changed, measuresOf, scalePath, setting } from "./laws.ts";

const SEED = 20261127;

/** Functions with a length of their own in them, and which it is: twice as large does not give twice the answer. */
const ABSOLUTE: Record<string, string> = {
  MEASURE_GUESS: "the people of the survey have sizes of their own",
  WIDTH_CHART: "the widths and lengths of a printed chart",
  BODICE_FOUNDATION: "a printed draft with inches of its own",
  BREECHES_FOUNDATION: "a printed draft with inches of its own",
};

/** How an answer grows when every length is `k` times as large. */
const GROWS: Record<string, number> = { length: 1, area: 2, share: 0, count: 0, angle: 0 };

const FIGURES: Partial<Record<Kind, number>> = { length: 1, area: 2 };

/** The arguments with every length `k` times as large; null where one has a default of its own and is left out. */
function scaled(declaration: Declaration, args: readonly Argument[], k: number): Argument[] {
  return Object.values(declaration.takes).map((take, i) => {
    const change = (cell: Cell, kind: Kind): Cell => {
      if (typeof cell === "number") return cell * k ** (FIGURES[kind] ?? 0);
      if (typeof cell !== "string") return cell;
      if (kind === "piece") return scalePath(cell, k);
      return kind === "length" && take.marks
        ? marksText(
            readMarks(cell, "marks", { unit: "cm" }).map((place) => place * k),
            "cm",
          )
        : cell;
    };
    return changed(args[i] ?? null, take, change);
  });
}

/** Whether a length with a default other than 0 is left out: the default does not grow along. */
const leavesOutLength = ({ takes }: Declaration, args: readonly Argument[]): boolean =>
  Object.values(takes).some(
    ({ kind, otherwise }, i) =>
      kind === "length" && otherwise !== undefined && otherwise !== 0 && (args[i] ?? null) === null,
  );

const close = (found: number, wanted: number, what: string) =>
  expect(Math.abs(found - wanted), `${what}: ${found} against ${wanted}`).toBeLessThanOrEqual(
    1e-9 * Math.max(1e-3, Math.abs(wanted)),
  );

function growsAlong(declaration: Declaration, args: readonly Argument[], k: number): boolean {
  const [small, large] = [
    run(declaration, args, setting("cm")),
    run(declaration, scaled(declaration, args, k), setting("cm")),
  ];
  if (isRefused(small) || isRefused(large)) return false;
  const what = `${declaration.name} ${JSON.stringify(args).slice(0, 200)} times ${k}`;
  const power = GROWS[declaration.returns];
  if (typeof small === "number" && power !== undefined) {
    close(large as number, small * k ** power, what);
    return true;
  }
  if (declaration.returns === "piece") {
    const [a, b] = [measuresOf(String(small)), measuresOf(String(large))];
    close(b.area, a.area * k * k, `the area of ${what}`);
    close(b.width, a.width * k, `the width of ${what}`);
    close(b.length, a.length * k, `the length of ${what}`);
    return true;
  }
  return false;
}

const grown = [...catalogue.values()].filter(
  ({ returns, family, takes }) =>
    family !== "tape" &&
    (returns === "piece" || GROWS[returns] !== undefined) &&
    Object.values(takes).some(({ kind }) => kind === "length" || kind === "piece"),
);

describe("twice the lengths give twice the answer", () => {
  test.each(grown.filter(({ name }) => !Object.hasOwn(ABSOLUTE, name)))("$name", (declaration) => {
    let compared = 0;
    for (const example of declaration.examples) {
      const args = argumentsOf(declaration, example);
      if (leavesOutLength(declaration, args)) continue;
      for (const k of [2, 0.5, 1.5]) if (growsAlong(declaration, args, k)) compared += 1;
    }
    fc.assert(
      fc.property(anyArguments(declaration), fc.constantFrom(0.5, 2), (args, k) => {
        if (!leavesOutLength(declaration, args) && growsAlong(declaration, args, k)) compared += 1;
      }),
      { seed: SEED, numRuns: 25 },
    );
    expect(compared, "figures compared").toBeGreaterThan(0);
  });

  test.each(Object.entries(ABSOLUTE))("but not of %s: %s", (name) => {
    expect(grown.map((one) => one.name)).toContain(name);
  });
});
