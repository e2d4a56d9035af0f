/**
 * How deep an offset lies inside a no-fit polygon: the shortest move that frees the two outlines,
 * the wanted gap included. One field by itself, for whoever asks now and then.
 */
import type { Point } from "../../functions/geometry/strokes.ts";
import { fillCell, makeField } from "./inner/field.ts";
import { HIGH, LEFT, LOW, RIGHT, WAY_X, WAY_Y } from "./inner/layout.ts";
import { PlainRoom } from "./inner/room.ts";

export class DepthField {
  private readonly room = new PlainRoom({
    fill: (field, cell) => fillCell(this.room, field, cell),
    prepare: () => 0,
  });
  private readonly field: number;

  constructor(rings: readonly (readonly Point[])[], gap: number) {
    this.field = makeField(this.room, rings, gap);
  }

  get left(): number {
    return this.at(this.field + LEFT);
  }
  get right(): number {
    return this.at(this.field + RIGHT);
  }
  get low(): number {
    return this.at(this.field + LOW);
  }
  get high(): number {
    return this.at(this.field + HIGH);
  }

  /** Depth of the offset, 0 outside. */
  depth(x: number, y: number): number {
    return this.room.program.depth(this.field, x, y);
  }

  /** After `depth` was above 0: the direction of the shortest way out. */
  get wayOut(): readonly [x: number, y: number] {
    return [this.at(WAY_X), this.at(WAY_Y)];
  }

  private at(address: number): number {
    return this.room.floats[address >> 3]!;
  }
}
