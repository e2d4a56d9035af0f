/**
 * Finds one item a better place: places all over the cloth and near its own are judged, the best
 * few polished by steps that halve, the winner once more and finely.
 */
import type { InnerFit } from "./inner-fit.ts";
import type { OverlapTable } from "./overlap-table.ts";

/** How often in a row an item is pushed straight out of what it overlaps. */
const PUSHES = 2;

/** How many places are tried all over the cloth, near the item, and how many of them are polished. */
const WIDE = 10;
const NEAR = 4;
const POLISHED = 3;
/** How far from a place its neighbours are gathered while it is polished, as a share of the item's breadth. */
const NEARBY = 0.2;

export class Mover {
  // The best places so far, best first.
  private readonly loss = new Float64Array(POLISHED + 1);
  private readonly px = new Float64Array(POLISHED + 1);
  private readonly py = new Float64Array(POLISHED + 1);
  private readonly ps = new Int32Array(POLISHED + 1);
  private readonly pc = new Int32Array(POLISHED + 1);
  private kept = 0;

  constructor(
    private readonly table: OverlapTable,
    private readonly innerFit: InnerFit,
    /** Stances of each item's kind. */
    private readonly stancesOfKind: readonly (readonly number[])[],
    private readonly random: () => number,
    private readonly unit: number,
  ) {}

  /** Moves item i to the best place found; it stays when none is better. */
  move(i: number): void {
    const { table, innerFit, random } = this;
    const { kind } = table.items[i]!;
    const stances = this.stancesOfKind[kind]!;
    this.kept = 0;
    const here = table.lossOf(i);
    const stance = table.stance[i]!;
    const cloth = table.cloth[i]!;
    const x = table.x[i]!;
    const y = table.y[i]!;
    this.keep(here, stance, cloth, x, y);
    table.lookEverywhere();
    const { limits } = innerFit;
    let total = 0;
    for (const limit of limits) total += limit;
    for (let k = 0; k < WIDE; k++) {
      const s = stances[(random() * stances.length) | 0]!;
      let c = 0;
      for (let at = random() * total; c + 1 < limits.length && at >= limits[c]!; c++) at -= limits[c]!;
      if (!innerFit.range(s, c)) continue;
      const tx = innerFit.snap(s, innerFit.left + random() * (innerFit.right - innerFit.left));
      const ty = innerFit.low + random() * (innerFit.high - innerFit.low);
      this.offer(i, s, c, tx, ty);
    }
    const spread = this.sizeOf(stance) * 0.5;
    for (let k = 0; k < NEAR; k++) {
      const s = k % 2 === 0 ? stance : stances[(random() * stances.length) | 0]!;
      if (!innerFit.range(s, cloth)) continue;
      // Another turn is tried about the middle of the item, not about its (0, 0).
      const cx = x + this.middleX(stance) - this.middleX(s);
      const cy = y + this.middleY(stance) - this.middleY(s);
      const tx = innerFit.snap(s, cx + (random() * 2 - 1) * spread);
      const ty = innerFit.clampY(cy + (random() * 2 - 1) * spread);
      this.offer(i, s, cloth, tx, ty);
    }
    const size = this.sizeOf(stance);
    for (let k = 0; k < this.kept; k++) {
      table.lookNear(this.ps[k]!, this.px[k]!, this.py[k]!, size * NEARBY);
      this.push(i, k);
      this.polish(i, k, size * 0.04, size * 0.005);
    }
    let best = 0;
    for (let k = 1; k < this.kept; k++) if (this.loss[k]! < this.loss[best]!) best = k;
    if (this.loss[best]! > 0) {
      table.lookNear(this.ps[best]!, this.px[best]!, this.py[best]!, size * NEARBY);
      this.push(i, best);
      this.polish(i, best, size * 0.005, this.unit * 1e-5);
    }
    if (this.loss[best]! < here) {
      table.put(i, this.ps[best]!, this.pc[best]!, this.px[best]!, this.py[best]!);
      table.settle(i);
    }
  }

  private sizeOf(stance: number): number {
    const { left, right, low, high } = this.table.stances[stance]!;
    return Math.min(right - left, high - low);
  }

  private middleX(stance: number): number {
    const { left, right } = this.table.stances[stance]!;
    return (left + right) / 2;
  }

  private middleY(stance: number): number {
    const { low, high } = this.table.stances[stance]!;
    return (low + high) / 2;
  }

  private offer(i: number, s: number, c: number, x: number, y: number): void {
    const limit = this.kept < POLISHED ? Infinity : this.loss[this.kept - 1]!;
    const loss = this.table.judge(i, s, c, x, y, limit);
    if (loss < limit) this.keep(loss, s, c, x, y);
  }

  private keep(loss: number, s: number, c: number, x: number, y: number): void {
    let k = Math.min(this.kept, POLISHED - 1);
    if (this.kept < POLISHED) this.kept++;
    for (; k > 0 && this.loss[k - 1]! > loss; k--)
      this.set(k, this.loss[k - 1]!, this.ps[k - 1]!, this.pc[k - 1]!, this.px[k - 1]!, this.py[k - 1]!);
    this.set(k, loss, s, c, x, y);
  }

  private set(k: number, loss: number, s: number, c: number, x: number, y: number): void {
    this.loss[k] = loss;
    this.ps[k] = s;
    this.pc[k] = c;
    this.px[k] = x;
    this.py[k] = y;
  }

  /**
   * Pushes place k straight out of what it overlaps, out of one or of two at once: onto the border
   * of their no-fit polygons, or a crossing of two of them, where a tight lay has its pieces.
   */
  private push(i: number, k: number): void {
    const { table, innerFit } = this;
    const s = this.ps[k]!;
    const c = this.pc[k]!;
    if (innerFit.isMatched(s) || !innerFit.range(s, c)) return;
    const { pushX, pushY, pushBy } = table;
    for (let turn = 0; turn < PUSHES && this.loss[k]! > 0; turn++) {
      const n = table.contacts(i, s, c, this.px[k]!, this.py[k]!);
      let best = this.loss[k]!;
      let x = this.px[k]!;
      let y = this.py[k]!;
      for (let a = 0; a < n; a++)
        for (let b = a; b < n; b++) {
          const det = a === b ? 1 : pushX[a]! * pushY[b]! - pushY[a]! * pushX[b]!;
          if (Math.abs(det) < 0.05) continue;
          const vx =
            a === b ? pushX[a]! * pushBy[a]! : (pushBy[a]! * pushY[b]! - pushBy[b]! * pushY[a]!) / det;
          const vy =
            a === b ? pushY[a]! * pushBy[a]! : (pushX[a]! * pushBy[b]! - pushX[b]! * pushBy[a]!) / det;
          const tx = innerFit.snap(s, this.px[k]! + vx);
          const ty = innerFit.clampY(this.py[k]! + vy);
          const loss = table.judge(i, s, c, tx, ty, best);
          if (loss < best) {
            best = loss;
            x = tx;
            y = ty;
          }
        }
      if (best >= this.loss[k]!) return;
      this.set(k, best, s, c, x, y);
    }
  }

  /** Steps along the axes and the diagonals from place k, longer after a gain, halved after none. */
  private polish(i: number, k: number, first: number, last: number): void {
    const { table, innerFit, random } = this;
    const s = this.ps[k]!;
    const c = this.pc[k]!;
    if (!innerFit.range(s, c)) return;
    const matched = innerFit.isMatched(s);
    let best = this.loss[k]!;
    let x = this.px[k]!;
    let y = this.py[k]!;
    let step = first;
    while (step > last && best > 0) {
      const way = (random() * 4) | 0;
      const dx = way === 1 || matched ? 0 : step;
      const dy = way === 0 && !matched ? 0 : way === 3 ? -step : step;
      const ax = matched ? x : innerFit.snap(s, x + dx);
      const ay = innerFit.clampY(y + dy);
      const bx = matched ? x : innerFit.snap(s, x - dx);
      const by = innerFit.clampY(y - dy);
      const a = table.judge(i, s, c, ax, ay, best);
      const b = a < best ? Infinity : table.judge(i, s, c, bx, by, best);
      if (a < best) {
        best = a;
        x = ax;
        y = ay;
        step *= 1.1;
      } else if (b < best) {
        best = b;
        x = bx;
        y = by;
        step *= 1.1;
      } else step *= 0.5;
    }
    this.set(k, best, s, c, x, y);
  }
}
