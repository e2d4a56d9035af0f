import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Shape } from "../../../functions/drawing/shapes.ts";
import { arc } from "../../../functions/geometry/strokes.ts";
import { polygon } from "../../../functions/pieces/piece.ts";
import { explain } from "../../../functions/run.ts";
import { lookUp } from "../../../src/book/names.ts";
import { drawnAt } from "../../../src/engine/drawn.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { pictureOf, wordsOf } from "../../../src/engine/picture.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

const inches = { unit: "in", mark: "1/8" } as const;

describe("the words beside a shape", () => {
  it("a dimension is told as the tape shows it, its label before it", () => {
    const shape: Shape = { kind: "dimension", from: [0, 0], to: [3, 4.13], label: "side" };
    // Pythagoras: √(9 + 17.0569) = 5.1046, by the eighth 5 1/8.
    expect(wordsOf(shape, inches)).toBe("side 5 1/8");
    expect(wordsOf(shape, { unit: "cm", mark: "1 mm" })).toBe("side 5.1");
  });

  it("an angle is told in degrees, marks are counted", () => {
    expect(wordsOf({ kind: "angle", at: [0, 0], from: [1, 0], to: [1, 1] }, inches)).toBe("45°");
    const at = [
      [0, 0],
      [1, 0],
      [2, 0],
    ] as const;
    expect(wordsOf({ kind: "marks", at, mark: "dot", label: "buttons" }, inches)).toBe("buttons × 3");
  });
});

describe("a picture", () => {
  it("holds all of an arc, not only its ends", () => {
    const half = arc([0, 0], 10, 0, Math.PI);
    const { box } = pictureOf([{ kind: "edge", edge: [half], role: "cut" }], inches);
    expect(box.left).toBeCloseTo(-10, 6);
    expect(box.right).toBeCloseTo(10, 6);
    expect(Math.max(-box.low, box.high)).toBeGreaterThan(9.9);
  });

  it("has arrows at both ends of the grain, pointing away from each other", () => {
    const grain: Shape = {
      kind: "edge",
      role: "grain",
      edge: [{ kind: "line", from: [0, 0], to: [0, 8] }],
    };
    const { arrows } = pictureOf([grain], inches).lines[0]!;
    expect(arrows.map(({ at }) => at)).toEqual([
      [0, 0],
      [0, 8],
    ]);
    expect(Math.sign(arrows[0]!.to[1])).toBe(-1);
    expect(Math.sign(arrows[1]!.to[1])).toBe(1);
  });

  it("names a piece at a point inside it, even where its middle is outside", () => {
    const hook = polygon([
      [0, 0],
      [20, 0],
      [20, 4],
      [4, 4],
      [4, 20],
      [0, 20],
    ]);
    const [x, y] = pictureOf([{ kind: "outline", piece: hook, label: "facing" }], inches).words[0]!.at;
    expect((x > 0 && x < 20 && y > 0 && y < 4) || (x > 0 && x < 4 && y > 0 && y < 20)).toBe(true);
  });

  it("can be made of whatever a function draws for its examples, all of it finite", () => {
    for (const declaration of catalogue.values()) {
      for (const { given, unit = "in" } of declaration.examples) {
        const args = Object.keys(declaration.takes).map((name) => given[name] ?? null);
        const plan = (question: Parameters<typeof layDesk>[0]) => layDesk(question, {});
        const { shapes } = explain(declaration, args, { unit, plan });
        if (shapes.length === 0) continue;
        const picture = pictureOf(shapes, inches);
        const figures = [...Object.values(picture.box), ...picture.words.flatMap(({ at }) => [...at])];
        expect(
          figures.filter((one) => !Number.isFinite(one)),
          declaration.name,
        ).toEqual([]);
        const paths = [...picture.outlines, ...picture.lines.map(({ d }) => d), ...picture.angles].join(" ");
        expect(paths, declaration.name).not.toMatch(/NaN|Infinity/);
      }
    }
  });
});

it("a row of the cut list that only refers to a piece, or turns it, keeps the seam line and the folds", () => {
  const book = bookOf({
    skirt: "=WITH_ALLOWANCE(PLEATED_PANEL(24; 24; 10; {6}; {1}); 1/2)",
    cut_row: "=skirt",
    on_bias: "=TURN(skirt; 45)",
    pair: "=MIRROR(cut_row)",
  });
  const engine = new Engine(book, layDesk);
  for (const name of ["skirt", "cut_row", "on_bias", "pair"]) {
    const roles = (drawnAt(engine, lookUp(book, name)!)?.shapes ?? []).flatMap((shape) =>
      shape.kind === "edge" && shape.role !== "grain" ? [shape.role] : [],
    );
    expect(roles.slice(0, 7), name).toEqual(["fold", "inner", "placement", "seam", "seam", "seam", "seam"]);
  }
  engine.destroy();
});
