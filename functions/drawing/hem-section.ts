/** A hem in section: the cloth hangs down, turns up at the fold and under at the turning. */
import { phrase } from "../phrase.ts";
import { dimension, type Shape, stroke } from "./shapes.ts";

/** The hem's fold at (0, 0); the cloth comes from above. Steps shown by name. */
export function drawHem(
  depth: number,
  turning: number,
  shown: { allowance?: string; stitch?: string },
): Shape[] {
  const gap = (depth + turning) / 12;
  const allowance = depth + turning;
  const shapes: Shape[] = [
    stroke([[0, -3 * depth], [0, 0], [gap, 0], [gap, -depth]], "seam", { label: phrase`as sewn` }),
    dimension([-2 * gap, 0], [-2 * gap, -depth], { label: phrase`depth` }),
    // Beside it the cloth laid flat: fold line, then the turning's crease, then the raw edge.
    stroke([[6 * gap, -3 * depth], [6 * gap, allowance]], "cut", { label: phrase`laid flat` }),
    stroke([[5 * gap, 0], [7 * gap, 0]], "fold", { label: phrase`hem fold` }),
    dimension([8 * gap, 0], [8 * gap, allowance], shown.allowance ? { shows: shown.allowance } : {}),
  ]; // biome-ignore format: points in pairs
  if (turning > 0) {
    shapes.push(stroke([[gap, -depth], [gap / 2, -depth], [gap / 2, -depth + turning]], "seam"));
    shapes.push(stroke([[5 * gap, depth], [7 * gap, depth]], "fold", { label: phrase`turning` }));
  } // biome-ignore format: points in pairs
  if (shown.stitch) {
    shapes.push(stroke([[5 * gap, -depth], [7 * gap, -depth]], "stitch"));
    shapes.push(dimension([11 * gap, -depth], [11 * gap, allowance], { shows: shown.stitch }));
  } // biome-ignore format: points in pairs
  return shapes;
}
