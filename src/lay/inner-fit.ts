/** The inner fit: where a stance, a shape in one of its turns, may lie. It stays within its cloth's width and the length now allowed, on the repeat when there is one. */
import type { LayCloth } from "../../functions/lay.ts";
import type { Stance } from "./fields.ts";

export class InnerFit {
  /** The length of each cloth that may be used at present. */
  readonly limits: Float64Array;
  /** Bounds of the last place asked for with `range`. */
  left = 0;
  right = 0;
  low = 0;
  high = 0;
  /** Where on the repeat the match points fall. */
  phase = 0;

  constructor(
    private readonly stances: readonly Stance[],
    private readonly cloths: readonly LayCloth[],
    private readonly repeat: number,
  ) {
    this.limits = new Float64Array(cloths.length);
  }

  /** Sets the bounds for a stance on a cloth; false when it does not fit at all. */
  range(stance: number, cloth: number): boolean {
    const { left, right, low, high, match } = this.stances[stance]!;
    const { width } = this.cloths[cloth]!;
    this.left = -left;
    this.right = this.limits[cloth]! - right;
    this.low = -low;
    this.high = width - high;
    const eps = 1e-9 * width;
    if (this.right < this.left - eps || this.high < this.low - eps) return false;
    if (this.right < this.left) this.right = this.left;
    if (this.high < this.low) this.high = this.low;
    return match === null || !Number.isNaN(this.snap(stance, this.left));
  }

  /** The nearest x in the bounds, on the repeat where the stance is matched; NaN when the bounds hold no such x. */
  snap(stance: number, x: number): number {
    const inside = Math.min(Math.max(x, this.left), this.right);
    const { match } = this.stances[stance]!;
    if (match === null) return inside;
    const from = this.phase - match;
    const first = Math.ceil((this.left - from) / this.repeat - 1e-9);
    const last = Math.floor((this.right - from) / this.repeat + 1e-9);
    if (first > last) return Number.NaN;
    const k = Math.min(last, Math.max(first, Math.round((inside - from) / this.repeat)));
    return from + k * this.repeat;
  }

  clampY(y: number): number {
    return Math.min(Math.max(y, this.low), this.high);
  }

  isMatched(stance: number): boolean {
    return this.stances[stance]!.match !== null;
  }
}
