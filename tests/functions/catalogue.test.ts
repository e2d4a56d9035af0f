import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { measureShape } from "../../functions/drawing/shapes.ts";
import { exampleFormula } from "../../functions/help.ts";
import { readPiece } from "../../functions/pieces/piece.ts";
import { explain, isRefused, run } from "../../functions/run.ts";
import { register } from "../../src/engine/register.ts";
import {
  anyArguments,
  argumentsNearExamples,
  argumentsOf,
  evaluate,
  inUnit,
  measuresOf,
  scalePath,
  setting,
  withFigures,
} from "./laws.ts";

register();
const SEED = 20261125;
/** Their figures come from a search or a sum along a curve that stops within a billionth of the figures given. */
const MEASURED_FIGURES = new Set(["DIPPED_PANEL", "PAD_GIRTH"]);

const close = (found: number, wanted: number, within = 1e-9 * Math.max(1e-3, Math.abs(wanted))) =>
  expect(Math.abs(found - wanted), `${found} against ${wanted}`).toBeLessThanOrEqual(within);

describe.each([...catalogue.values()])("$name", (declaration) => {
  const { name } = declaration;

  test("is told well: a summary, a source, a caption for every argument, at least one example", () => {
    expect(declaration.summary).toMatch(/^[A-Z].*\.$/);
    expect(declaration.source.length).toBeGreaterThan(3);
    for (const take of Object.values(declaration.takes)) expect(take.about.length).toBeGreaterThan(2);
    expect(declaration.examples.length).toBeGreaterThan(0);
    for (const example of declaration.examples) {
      for (const given of Object.keys(example.given)) expect(Object.keys(declaration.takes)).toContain(given);
    }
  });

  declaration.examples.forEach((example, i) => {
    const unit = example.unit ?? "in";
    const explained = explain(declaration, argumentsOf(declaration, example), setting(unit));

    test(`example ${i + 1}, ${exampleFormula(declaration, example).slice(0, 90)}: ${example.because}`, () => {
      const { answer } = explained;
      if (isRefused(answer)) throw new Error(`refused: ${answer.refusal}`);
      const { gives, within } = example;
      if (typeof gives === "number") close(answer as number, gives, within);
      else if (typeof gives === "string") expect(String(answer).slice(0, gives.length || 1)).toBe(gives);
      else {
        const found = measuresOf(String(answer));
        for (const key of ["area", "width", "length"] as const) {
          if (gives[key] !== undefined) close(found[key], gives[key], within);
        }
        gives.edges?.forEach((length, edge) => {
          close(found.edges[edge] ?? Number.NaN, length, within);
        });
      }
      expect(run(declaration, argumentsOf(declaration, example), setting(unit))).toEqual(answer);
    });

    test(`example ${i + 1}: each step's rule, worked by the engine, gives the step`, () => {
      for (const step of explained.steps.filter((one) => one.formula)) {
        const found = evaluate(withFigures(step.rule, explained), unit);
        if (typeof step.value === "number")
          close(found as number, step.value, 1e-8 * Math.max(1, Math.abs(step.value)));
        else expect(found).toBe(step.value);
      }
    });

    test(`example ${i + 1}: each shape measures what it shows`, () => {
      for (const shape of explained.shapes) {
        if (!("shows" in shape) || shape.shows === undefined) continue;
        const step = explained.steps.find((one) => one.name === shape.shows);
        expect(step, `a step called ${shape.shows}`).toBeDefined();
        close(
          measureShape(shape)!,
          step!.value as number,
          1e-8 * Math.max(1, Math.abs(step!.value as number)),
        );
      }
    });
  });

  test("within its ranges it answers with a finite figure or a sentence, and draws what it answers", () => {
    let [answered, asked] = [0, 0];
    const inputs = fc.oneof(
      { weight: 1, arbitrary: anyArguments(declaration) },
      { weight: 4, arbitrary: argumentsNearExamples(declaration) },
    );
    fc.assert(
      fc.property(inputs, (args) => {
        const { answer } = explain(declaration, args, setting("cm"));
        asked += 1;
        answered += isRefused(answer) ? 0 : 1;
        if (isRefused(answer)) {
          expect(answer.refusal, `for ${JSON.stringify(args)}`).not.toMatch(
            /failed on these|undefined|NaN|Infinity|\d\.(?!0000)\d{5}/,
          );
        } else if (typeof answer === "number") expect(answer).toSatisfy(Number.isFinite);
        else expect(answer).not.toMatch(/NaN|undefined|Infinity/);
        // Reading it again finds an outline that crosses itself or has no area.
        if (declaration.returns === "piece" && !isRefused(answer)) readPiece(String(answer));
      }),
      { seed: SEED, numRuns: 80 },
    );
    expect(answered / asked, "the share of inputs that are answered, not refused").toBeGreaterThan(0.5);
  });

  if (declaration.family !== "tape") {
    test("answers the same in inches as in centimetres", () => {
      fc.assert(
        fc.property(anyArguments(declaration), (args) => {
          const metric = run(declaration, args, setting("cm"));
          const inches = run(declaration, inUnit(declaration, args, "cm", "in"), setting("in"));
          expect(isRefused(inches), JSON.stringify([args, metric, inches])).toBe(isRefused(metric));
          if (typeof metric === "number" && typeof inches === "number") {
            const scale = { length: 2.54, area: 2.54 ** 2 }[declaration.returns as string] ?? 1;
            const within = (MEASURED_FIGURES.has(name) ? 1e-7 : 1e-9) * Math.max(1, Math.abs(metric));
            close(inches * scale, metric, within);
          } else if (
            declaration.returns === "piece" &&
            typeof metric === "string" &&
            typeof inches === "string"
          ) {
            close(
              measuresOf(scalePath(inches, 2.54)).area,
              measuresOf(metric).area,
              (MEASURED_FIGURES.has(name) ? 1e-7 : 1e-9) * Math.max(1, measuresOf(metric).area),
            );
          }
        }),
        { seed: SEED, numRuns: 40 },
      );
    });
  }

  test("the name is the file's name and fit for a formula", () => {
    expect(name).toMatch(/^[A-Z][A-Z0-9_]*$/);
  });
});
