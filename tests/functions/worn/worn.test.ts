import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { worn } from "../../../functions/as-worn.ts";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Layer } from "../../../functions/drawing/shapes.ts";
import { boundingBox } from "../../../functions/geometry/strokes.ts";
import type { Argument } from "../../../functions/run.ts";
import { NO_BODY } from "../../../functions/worn/body.ts";
import { figureOf } from "../../../functions/worn/figure.ts";
import { hang } from "../../../functions/worn/hang.ts";
import { ellipsePerimeter, evenAngles, girthOf, placeOn } from "../../../functions/worn/section.ts";
import { between, skirt } from "../../../functions/worn/skirt.ts";
import type { Worn } from "../../../functions/worn/worn-drawing.ts";
import { argumentsNearExamples, argumentsOf, inUnit, setting } from "../laws.ts";

const WORN = [
  "CAPE", "CIRCLE_HEM", "CIRCLE_PANEL", "DIPPED_PANEL", "FLARED_PANEL", "GORE", "HEM_AT", "HIP_YOKE",
  "PETTICOAT_PANEL", "PLEATED_PANEL", "SLASHED_PANEL", "UNEVEN_GORE",
]; // biome-ignore format: a list

const lengths = { cm: (figure: number) => figure, say: String, body: NO_BODY };

const hung = (name: string, args: readonly Argument[], unit: "in" | "cm" = "in"): Worn => {
  const found = worn(catalogue.get(name)!, args, setting(unit));
  if (!found) throw new Error(`${name} is refused`);
  return found;
};
const layersIn = (drawn: Worn): Layer[] =>
  drawn.together.flatMap((shape) => (shape.kind === "layer" ? [shape] : []));

test("every function that makes a skirt, a petticoat, a cape or a peplum is drawn as worn", () => {
  expect([...catalogue.values()].filter((one) => one.worn).map(({ name }) => name)).toEqual(WORN);
});

describe("the figure", () => {
  test("an ellipse of half axes 3 and 2 is 15.8654395892906 round, a circle 2π", () => {
    expect(ellipsePerimeter(3, 2)).toBeCloseTo(15.8654395892906, 12);
    expect(ellipsePerimeter(1, 1)).toBeCloseTo(2 * Math.PI, 12);
  });

  test("has the measured girths at waist and hip to a millionth, and between them the straight line", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 140, noNaN: true }),
        fc.double({ min: 0.8, max: 2, noNaN: true }),
        (waist, more) => {
          const hip = waist * more;
          const figure = figureOf({ waist, hip, hip_drop: 22, stature: 165, clear: 0 });
          const { hip_level } = figure;
          const girth = (y: number) => girthOf(figure.section(y));
          expect(Math.abs(girth(0) / waist - 1)).toBeLessThan(1e-6);
          expect(Math.abs(girth(hip_level) / hip - 1)).toBeLessThan(1e-6);
          expect(girth(hip_level * 0.4)).toBeCloseTo(waist + (hip - waist) * 0.4, 6);
          expect(hip_level).toBeLessThanOrEqual(22);
        },
      ),
      { seed: 20261127, numRuns: 20 },
    );
  });

  test("even angles part the girth evenly", () => {
    const section = { half: 20, front: 12, back: 17 };
    const angles = evenAngles(section, 400);
    const parts = angles.slice(1).map((angle, i) => {
      const [[ax, az], [bx, bz]] = [placeOn(section, angles[i]!, 0), placeOn(section, angle, 0)];
      return Math.hypot(bx - ax, bz - az);
    });
    expect(Math.max(...parts) / Math.min(...parts)).toBeLessThan(1.001);
    expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(girthOf(section), 2);
  });
});

test("each place of the hem hangs as far along the cloth from the waist as drafted, and each level is as long as drafted", () => {
  const garment = skirt({ waist: 72, hip: 98, hip_drop: 20, depth: 60, round: between(72, 260) }, lengths);
  const { rows } = hang(garment);
  const places = rows[0]!.x.length;
  for (let i = 0; i < places; i += 7) {
    let way = 0;
    for (const [k, row] of rows.slice(1).entries())
      way += Math.hypot(row.x[i]! - rows[k]!.x[i]!, row.y[i]! - rows[k]!.y[i]!, row.z[i]! - rows[k]!.z[i]!);
    expect(Math.abs(way - 60)).toBeLessThan(0.6);
  }
  for (const row of rows.slice(1)) expect(Math.abs(row.length / row.wanted - 1)).toBeLessThan(1e-6);
});

describe.each(WORN)("%s as worn", (name) => {
  const declaration = catalogue.get(name)!;
  declaration.examples.forEach((example, i) => {
    test(`example ${i + 1}: the drawn hem is the drafted one, the views agree, inches and centimetres too`, () => {
      const unit = example.unit === "cm" ? "cm" : "in";
      const args = argumentsOf(declaration, example);
      const drawn = hung(name, args, unit);
      const { figures, views } = drawn;
      expect(Math.abs(figures.drawn_hem / figures.hem - 1)).toBeLessThan(1e-3);
      // The hem dimension of each view is as wide as the hem painted in it.
      for (const { shapes } of views) {
        const hem = boundingBox(
          shapes.flatMap((shape) => (shape.kind === "layer" && shape.of === "hem" ? shape.points : [])),
        );
        const across = shapes.find((shape) => shape.kind === "dimension" && shape.label === "hem");
        if (across?.kind !== "dimension") throw new Error("no dimension across the hem");
        expect(hem.right - hem.left).toBeCloseTo(across.to[0] - across.from[0], 6);
      }
      const other = unit === "in" ? "cm" : "in";
      const scale = unit === "in" ? 2.54 : 1 / 2.54;
      const same = hung(name, inUnit(declaration, args, unit, other), other).figures;
      for (const key of ["hem", "front_width", "side_width"] as const)
        expect(Math.abs(same[key] / (figures[key] * scale) - 1)).toBeLessThan(1e-5);
      expect(same.back.level).toBeCloseTo(figures.back.level * scale, 3);
    });
  });

  test("has finite figures for arguments like those of the examples, and a sentence", () => {
    fc.assert(
      fc.property(argumentsNearExamples(declaration), (args) => {
        const drawn = worn(declaration, args, setting("cm"));
        if (!drawn) return;
        for (const { points } of layersIn(drawn))
          for (const at of points) expect(at.every(Number.isFinite)).toBe(true);
        expect(drawn.says).not.toMatch(/NaN|undefined|Infinity/);
      }),
      { seed: 20261127, numRuns: 2 },
    );
  });
});

describe("the wearer's measurements in the book", () => {
  const body = {
    known: {
      waist: { length: 30, from: "Measure!B4" },
      hip: { length: 41, from: "Measure!B5" },
      hip_drop: { length: 8.5, from: "Measure!B6" },
      stature: { length: 66, from: "Measure!B7" },
      waist_height: { length: 41, from: "Measure!B8" },
      bust: { length: 37, from: "Measure!B9" },
    },
    unsure: { shoulder: "the shoulder length is measured twice" },
  };
  const garment = (name: string, args: readonly Argument[]) =>
    worn(catalogue.get(name)!, args, setting("in"), body)!;

  test("make the figure: its girths and heights are those of the chart", () => {
    const { figure } = skirt({ waist: 30, depth: 24, round: between(30, 90) }, { ...lengths, body });
    expect(figure).toMatchObject({ waist: 30, hip: 41, hip_drop: 8.5, stature: 66, bust: 37 });
    const { section, hip_level, floor } = figureOf(figure);
    expect(girthOf(section(hip_level))).toBeCloseTo(41, 6);
    expect(girthOf(section(-0.115 * 66))).toBeCloseTo(37, 6);
    expect(floor).toBe(41);
  });

  test("are said with their cells, and what they do not tell stays assumed", () => {
    const { measured, assumed } = garment("CIRCLE_PANEL", [30, 24, 0.5]);
    expect(measured).toContain("hip girth 41 in from Measure!B5");
    expect(measured).toContain("waist to hip 8 1/2 in from Measure!B6");
    expect(assumed).toEqual(["the shoulder length is measured twice"]);
    const alone = hung("CIRCLE_PANEL", [30, 24, 0.5]);
    expect(alone.measured).toEqual([]);
    expect(alone.assumed.join("; ")).toMatch(/a hip of .* below the waist; the figure stands .* tall/);
  });

  test("do not come before what the arguments say, nor make a hip that the skirt's edge can't sit on", () => {
    expect(garment("DIPPED_PANEL", [30, 44, 8, 3, 8]).measured.join()).not.toMatch(/hip girth|waist to hip/);
    const wide = garment("CIRCLE_PANEL", [60, 24, 0.5]);
    expect(wide.measured.join()).not.toContain("hip girth");
    expect(wide.assumed.join()).toContain("the hip girth 41 in from Measure!B5 is not used");
  });

  test("say how many panels go round, and what a petticoat is gathered to and held out by", () => {
    expect(garment("FLARED_PANEL", [10, 16, 20]).assumed.join()).toContain(
      "3 such panels go round, the number that comes nearest to a waist of 30 in from Measure!B4",
    );
    const over = { ...body, known: { ...body.known, hip_over_pad: { length: 56, from: "Draft!B3" } } };
    const args = [60, 44, 43, 41];
    const panel = catalogue.get("PETTICOAT_PANEL")!;
    const { measured, assumed, figures } = worn(panel, args, setting("in"), over)!;
    expect(measured).toContain("hip girth over the pad 56 in from Draft!B3");
    expect(measured).toContain("waist girth 30 in from Measure!B4");
    expect(assumed.join()).toMatch(/all round 56 in, as the lengths over it tell/);
    const levels = [figures.front.level, figures.side.level, figures.back.level];
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1 / 8);
    const small = { ...over, known: { ...over.known, hip_over_pad: { length: 45, from: "Draft!B3" } } };
    const off = worn(panel, args, setting("in"), small)!;
    expect(off.assumed.join()).toContain("45 in from Draft!B3 does not agree with these lengths");
    expect(off.measured.join()).not.toContain("over the pad");
  });
});

describe("ten more inches of hem look wider, from the front and from the side", () => {
  const SERIES: readonly (readonly [name: string, args: (hem: number) => Argument[]])[] = [
    ["DIPPED_PANEL", (hem) => [30, 42, 8, 3, 9, null, null, null, hem]],
    ["FLARED_PANEL", (hem) => [28, hem, 20]],
    ["CIRCLE_PANEL", (hem) => [28, 24, (hem - 28) / (2 * Math.PI * 24)]],
    ["CIRCLE_HEM", (hem) => [28 / (2 * Math.PI * 0.5), (hem - 28) / Math.PI, 0.5]],
    ["GORE", (hem) => [28 / 6, hem / 6, 34]],
    ["PETTICOAT_PANEL", (hem) => [hem / 2, 41, 40.5, 40]],
    ["SLASHED_PANEL", (hem) => [28, 20, Array.from({ length: 8 }, () => (hem - 28) / 9), null]],
    ["PLEATED_PANEL", (hem) => [28, hem, 20, [7, 14, 21], [1]]],
    ["HEM_AT", (hem) => [30, 42, 8, 8, hem / 42]],
    ["HIP_YOKE", (hem) => [28, hem, 20, 20]],
    ["UNEVEN_GORE", (hem) => [1, 6, 28, 42, 8, 34, 38, hem]],
    ["CAPE", (hem) => [18, 24, (hem - 18) / (2 * Math.PI * 24)]],
  ];
  test("for every function that is drawn as worn", () => {
    expect(SERIES.map(([name]) => name).toSorted()).toEqual(WORN);
  });

  test.each(SERIES)("%s", (name, args) => {
    const made = [60, 70, 80].map((hem) => hung(name, args(hem)).figures);
    for (const [i, now] of made.slice(1).entries()) {
      expect(now.hem - made[i]!.hem).toBeGreaterThan(5);
      expect(now.front_width).toBeGreaterThan(made[i]!.front_width + 0.05);
      expect(now.side_width).toBeGreaterThan(made[i]!.side_width + 0.05);
    }
  });
});

test("a peplum parallel to its dipped seam hangs lower in front by the dip, a level one nowhere", () => {
  const [parallel, level] = ["parallel", "level"].map(
    (hem) => hung("DIPPED_PANEL", [30, 42, 8, 3, 8, null, null, hem]).figures,
  );
  const dip = parallel!.front.level - parallel!.side.level;
  expect(dip).toBeGreaterThan(2.6);
  expect(dip).toBeLessThan(3.4);
  expect(Math.abs(level!.front.level - level!.back.level)).toBeLessThan(0.5);
  expect(level!.front.depth).toBeCloseTo(5, 9);
});

test("a petticoat cut longer at the back or the sides for a pad hangs level to an eighth of an inch", () => {
  const over = [[53, 44.25, 42.5, 41], [53, 43.5, 42.5, 41], [60, 42, 41, 40], [60, 44, 46, 40], [40, 24, 23, 21.5]]; // biome-ignore format: rows of arguments
  for (const args of over) {
    const { front, side, back } = hung("PETTICOAT_PANEL", args).figures;
    const levels = [front.level, side.level, back.level];
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1 / 8);
    // The cloth is that of the panel, so the level is found on the pad and not put in.
    expect([back.depth, side.depth, front.depth].map((depth) => depth.toFixed(6))).toEqual(
      args.slice(1).map((depth) => depth.toFixed(6)),
    );
  }
});

test("a petticoat that goes over a pad stands out at the back", () => {
  const [over, plain] = [[120, 110, 108, 102], [120, 102, 102, 102]].map((args) => hung("PETTICOAT_PANEL", args, "cm").figures); // biome-ignore format: two calls
  expect(over!.side_width).toBeGreaterThan(plain!.side_width + 5);
});

test("pleats add their hidden cloth to the hem that is drawn, not to its width", () => {
  const wide = (fold: number) => hung("PLEATED_PANEL", [28, 34, 18, [7, 14, 21], [fold]]).figures;
  expect(wide(2).hem - wide(1).hem).toBeCloseTo(6, 6);
  expect(Math.abs(wide(2).front_width - wide(1).front_width)).toBeLessThan(0.5);
});

test("the figure hides the far side of the cloth, and the near side hides the figure", () => {
  for (const { shapes } of hung("CIRCLE_PANEL", [28, 24, 1]).views) {
    const painted = shapes.flatMap((shape) => (shape.kind === "layer" ? [shape.of] : []));
    expect(painted.lastIndexOf("inside")).toBeLessThan(painted.indexOf("figure"));
    expect(painted.lastIndexOf("figure")).toBeLessThan(painted.indexOf("cloth"));
  }
});

test("what is assumed is told: how many panels, the hip, the stature; what is measured is not", () => {
  const flared = hung("FLARED_PANEL", [16.5, 23.5, 8]).assumed.join(" ");
  expect(flared).toContain("2 such panels go round");
  expect(flared).toMatch(/a hip of .* below the waist/);
  expect(hung("DIPPED_PANEL", [30, 42, 8, 3, 8]).assumed.join(" ")).not.toContain("hip");
});

test("cloth too short to go round the shoulders is drawn, and said", () => {
  expect(hung("CAPE", [44, 60, 0.25], "cm").says).toMatch(/too short to go round the figure/);
  expect(hung("CAPE", [44, 60, 0.9], "cm").says).not.toMatch(/too short/);
});

test("a call that is refused has no garment", () => {
  expect(worn(catalogue.get("DIPPED_PANEL")!, [30, 42, 8, 3, -1], setting("in"))).toBeNull();
  expect(worn(catalogue.get("RECTANGLE")!, [30, 42], setting("in"))).toBeNull();
});
