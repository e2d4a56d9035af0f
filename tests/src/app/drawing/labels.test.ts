import { expect, test } from "vitest";
import { worn } from "../../../../functions/as-worn.ts";
import { catalogue } from "../../../../functions/catalogue.ts";
import { type Shape, stroke } from "../../../../functions/drawing/shapes.ts";
import { polygon } from "../../../../functions/pieces/piece.ts";
import { explain } from "../../../../functions/run.ts";
import { labelsIn } from "../../../../src/app/drawing/PictureView.tsx";
import { fitted, onScreen } from "../../../../src/app/drawing/view.ts";
import { boxOf, crosses } from "../../../../src/engine/label-places.ts";
import { pictureOf } from "../../../../src/engine/picture.ts";
import { argumentsOf, setting } from "../../../functions/laws.ts";

const ROOM = { width: 520, height: 460 };

/** What lies across what in a drawing: labels over lines, labels over labels, leaders over labels. */
function collisions(
  shapes: readonly Shape[],
  size = ROOM,
): { found: string[]; placed: number; asked: number } {
  const picture = pictureOf(shapes, { unit: "in", mark: "1/8" });
  const view = fitted(picture.box, size, 34);
  const labels = labelsIn(picture, view, size);
  const strokes = picture.strokes.map((stroke) => stroke.map((point) => onScreen(view, point)));
  const found = labels.flatMap((label, i) => {
    const box = boxOf(label);
    const over: string[] = [];
    for (const stroke of strokes)
      for (let k = 1; k < stroke.length; k += 1)
        if (crosses(stroke[k - 1]!, stroke[k]!, box)) over.push(`${label.text} lies on a line`);
    for (const other of labels.slice(i + 1)) {
      const there = boxOf(other);
      if (
        Math.abs(box.x - there.x) < box.halfX + there.halfX &&
        Math.abs(box.y - there.y) < box.halfY + there.halfY
      )
        over.push(`${label.text} lies on ${other.text}`);
    }
    for (const { text, leader, key } of labels)
      if (leader && key !== label.key && crosses(...leader, box))
        over.push(`the leader of ${text} crosses ${label.text}`);
    return over;
  });
  return { found, placed: labels.length, asked: picture.words.length };
}

test("no label of any function's drawing lies on a line or on another label, and nearly all find room", () => {
  let [placed, asked] = [0, 0];
  for (const declaration of catalogue.values()) {
    for (const example of declaration.examples) {
      const unit = example.unit ?? "in";
      const { shapes } = explain(declaration, argumentsOf(declaration, example), setting(unit));
      if (shapes.length === 0) continue;
      const one = collisions(shapes);
      expect(one.found, declaration.name).toEqual([]);
      placed += one.placed;
      asked += one.asked;
    }
  }
  expect(asked).toBeGreaterThan(1000);
  expect(placed / asked).toBeGreaterThan(0.93);
});

test("nor in the drawings as worn, on a wide screen or a narrow one", () => {
  for (const declaration of catalogue.values()) {
    const example = declaration.examples[0]!;
    const hung =
      declaration.worn && worn(declaration, argumentsOf(declaration, example), setting(example.unit ?? "in"));
    if (!hung) continue;
    expect(collisions(hung.together).found, declaration.name).toEqual([]);
    const front = collisions(hung.views[0]!.shapes, { width: 340, height: 300 });
    expect(front.found, declaration.name).toEqual([]);
    expect(front.placed).toBeGreaterThan(front.asked - 2);
  }
});

test("a label without room beside its line stands off, with a leader to it", () => {
  const hatching = Array.from({ length: 13 }, (_, i): Shape => stroke([[7 + i / 2, 8], [7 + i / 2, 12]], "stitch")); // biome-ignore format: two points
  const shapes: Shape[] = [
    { kind: "outline", piece: polygon([[0, 0], [20, 0], [20, 20], [0, 20]]) },
    ...hatching,
    { kind: "note", at: [10, 10], text: "quilting" },
  ]; // biome-ignore format: points in a row
  const picture = pictureOf(shapes, { unit: "in", mark: "1/8" });
  const labels = labelsIn(picture, fitted(picture.box, ROOM, 34), ROOM);
  expect(labels.map(({ text, leader }) => [text, leader !== null])).toEqual([["quilting", true]]);
  expect(collisions(shapes).found).toEqual([]);
});
