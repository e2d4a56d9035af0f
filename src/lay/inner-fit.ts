/** The inner fit: where a stance, a shape in one of its turns, may lie. The inner loop works it out (inner/fit.ts). */
import { HIGH, LEFT, LOW, RANGE, RIGHT } from "./inner/layout.ts";
import type { OverlapTable } from "./overlap-table.ts";

export class InnerFit {
  constructor(private readonly table: OverlapTable) {}

  /** Bounds of the last place asked for with `range`. */
  get left(): number {
    return this.table.float(RANGE + LEFT);
  }
  get right(): number {
    return this.table.float(RANGE + RIGHT);
  }
  get low(): number {
    return this.table.float(RANGE + LOW);
  }
  get high(): number {
    return this.table.float(RANGE + HIGH);
  }

  /** Sets the bounds for a stance on a cloth; false when it does not fit at all. */
  range(stance: number, cloth: number): boolean {
    return Boolean(this.table.program.range(stance, cloth));
  }

  /** The nearest x in the bounds, on the repeat where the stance is matched; NaN when the bounds hold no such x. */
  snap(stance: number, x: number): number {
    return this.table.program.snap(stance, x);
  }

  clampY(y: number): number {
    return this.table.program.clampY(y);
  }
}
