/**
 * The overlap table of the search: which copy lies where, how much each pair overlaps and how heavily each
 * pair's overlap weighs. All in flat arrays; a place costs one pass over the copies, boxes first.
 */
import { type DepthField, wayOut } from "./depth.ts";
import { boundsOfStance, type Fields, type Stance } from "./fields.ts";

/** A copy, or an obstacle, before it has a place. */
export interface Item {
  readonly kind: number;
  /** Stays where it is put. */
  readonly fixed: boolean;
}

const MOST_PUSHES = 6;

/** Place and limit, then loss, on their way in and out of `judgePlace`: numbers handed to a long method as such become objects. */
const io = new Float64Array(3);

export class OverlapTable {
  readonly n: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Index of the stance each item lies in. */
  readonly stance: Int32Array;
  /** The cloth each item lies on; -1 when it lies on none. */
  readonly cloth: Int32Array;
  /** Weight and loss of each pair, both ways round. */
  readonly weight: Float64Array;
  readonly loss: Float64Array;
  private readonly boxes: Float64Array;
  private readonly fields: (DepthField | undefined)[];
  /** How a field is asked for a pair of stances: cosine and sine, with the sign of the offset in them. */
  private readonly cos: Float64Array;
  private readonly sin: Float64Array;
  private readonly size: Float64Array;
  private readonly stanceCount: number;
  /** After `contacts`: direction and length of each shortest way out. */
  readonly pushX = new Float64Array(MOST_PUSHES);
  readonly pushY = new Float64Array(MOST_PUSHES);
  readonly pushBy = new Float64Array(MOST_PUSHES);
  /** How many others each item overlaps. */
  private readonly clashes: Int32Array;
  /** Pairs whose weight is above 1, each once. */
  private readonly heavy: number[] = [];
  /** The items that a judged place is compared with: all, or those near enough while places stay within `reach` of one. */
  private readonly seen: Int32Array;
  private seenCount: number;
  private reach = Infinity;
  private aboutX = 0;
  private aboutY = 0;

  constructor(
    readonly items: readonly Item[],
    readonly stances: readonly Stance[],
    private readonly source: Fields,
    private readonly gap: number,
    /** Overlaps no deeper than this count as touching. */
    private readonly tolerance: number,
  ) {
    const n = items.length;
    this.n = n;
    this.x = new Float64Array(n);
    this.y = new Float64Array(n);
    this.stance = new Int32Array(n);
    this.cloth = new Int32Array(n).fill(-1);
    this.weight = new Float64Array(n * n).fill(1);
    this.loss = new Float64Array(n * n);
    this.clashes = new Int32Array(n);
    this.boxes = new Float64Array(n * 4);
    this.seen = Int32Array.from({ length: n }, (_, i) => i);
    this.seenCount = n;
    const s = stances.length;
    this.stanceCount = s;
    this.fields = new Array(s * s);
    this.cos = new Float64Array(s * s);
    this.sin = new Float64Array(s * s);
    this.size = new Float64Array(s * s);
    this.outer = new Float64Array(s * 4);
    stances.forEach((stance, i) => {
      const { left, right, low, high } = boundsOfStance(stance, source);
      this.outer.set([left, right, low, high], i * 4);
    });
  }

  /** Bounds of the simplified outline in each stance. */
  private readonly outer: Float64Array;

  /** Puts item i down; overlaps are not counted again until `settle`. */
  put(i: number, stance: number, cloth: number, x: number, y: number): void {
    this.stance[i] = stance;
    this.cloth[i] = cloth;
    this.x[i] = x;
    this.y[i] = y;
    const { boxes, outer } = this;
    boxes[i * 4] = outer[stance * 4]! + x - this.gap;
    boxes[i * 4 + 1] = outer[stance * 4 + 1]! + x + this.gap;
    boxes[i * 4 + 2] = outer[stance * 4 + 2]! + y - this.gap;
    boxes[i * 4 + 3] = outer[stance * 4 + 3]! + y + this.gap;
  }

  private prepare(pair: number, a: number, b: number): DepthField {
    const sa = this.stances[a]!;
    const sb = this.stances[b]!;
    // The field is that of the lower kind unturned; a is where it is, b is moved.
    const [low, high, sign] = sa.kind <= sb.kind ? [sa, sb, 1] : [sb, sa, -1];
    const field = this.source.field(low.kind, high.kind, (high.turn - low.turn + 360) % 360);
    const quarter = low.turn % 90 === 0;
    const angle = (low.turn * Math.PI) / 180;
    const c = quarter ? Math.round(Math.cos(angle)) : Math.cos(angle);
    const s = quarter ? Math.round(Math.sin(angle)) : Math.sin(angle);
    this.cos[pair] = sign * c;
    this.sin[pair] = sign * s;
    const root = (k: number) => {
      const o = this.outer;
      return Math.sqrt((o[k * 4 + 1]! - o[k * 4]!) * (o[k * 4 + 3]! - o[k * 4 + 2]!));
    };
    this.size[pair] = Math.min(root(a), root(b));
    this.fields[pair] = field;
    return field;
  }

  /**
   * How badly stance b, at offset (dx, dy) from stance a, overlaps it; 0 when clear. The depth
   * alone would not tell a long overlap from a short one of the same depth, so it is multiplied
   * by how much the boxes share, and clashes of large pieces count more.
   */
  private clash(a: number, b: number, dx: number, dy: number): number {
    const pair = a * this.stanceCount + b;
    const field = this.fields[pair] ?? this.prepare(pair, a, b);
    const c = this.cos[pair]!;
    const s = this.sin[pair]!;
    const depth = field.depth(c * dx + s * dy, c * dy - s * dx);
    if (depth <= this.tolerance) return 0;
    const { outer } = this;
    const wide =
      Math.min(outer[a * 4 + 1]!, outer[b * 4 + 1]! + dx) - Math.max(outer[a * 4]!, outer[b * 4]! + dx);
    const tall =
      Math.min(outer[a * 4 + 3]!, outer[b * 4 + 3]! + dy) -
      Math.max(outer[a * 4 + 2]!, outer[b * 4 + 2]! + dy);
    return Math.sqrt(depth * (wide + tall + 2 * this.gap)) * this.size[pair]!;
  }

  /** From now on places all over the cloths are judged. */
  lookEverywhere(): void {
    for (let j = 0; j < this.n; j++) this.seen[j] = j;
    this.seenCount = this.n;
    this.reach = Infinity;
  }

  /**
   * From now on places of this stance near one are judged, so that far items need not be looked
   * at. A place further off than `reach` is judged rightly, too: then the items are gathered anew.
   */
  lookNear(stance: number, x: number, y: number, reach: number): void {
    const { n, boxes, outer, seen } = this;
    const left = outer[stance * 4]! + x - reach;
    const right = outer[stance * 4 + 1]! + x + reach;
    const low = outer[stance * 4 + 2]! + y - reach;
    const high = outer[stance * 4 + 3]! + y + reach;
    let count = 0;
    for (let j = 0, at = 0; j < n; j++, at += 4)
      if (boxes[at]! < right && boxes[at + 1]! > left && boxes[at + 2]! < high && boxes[at + 3]! > low)
        seen[count++] = j;
    this.seenCount = count;
    this.reach = reach;
    this.aboutX = x;
    this.aboutY = y;
  }

  /** Weighted loss of item i at a place; breaks off as soon as it reaches `limit`. */
  judge(i: number, stance: number, cloth: number, x: number, y: number, limit: number): number {
    io[0] = x;
    io[1] = y;
    io[2] = limit;
    this.judgePlace(i, stance, cloth);
    return io[2]!;
  }

  private judgePlace(i: number, stance: number, cloth: number): void {
    const x = io[0]!;
    const y = io[1]!;
    const limit = io[2]!;
    const { n, boxes, outer, weight, seen, reach } = this;
    if (Math.abs(x - this.aboutX) > reach || Math.abs(y - this.aboutY) > reach)
      this.lookNear(stance, x, y, reach);
    const count = this.seenCount;
    const left = outer[stance * 4]! + x;
    const right = outer[stance * 4 + 1]! + x;
    const low = outer[stance * 4 + 2]! + y;
    const high = outer[stance * 4 + 3]! + y;
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const j = seen[k]!;
      const at = j * 4;
      if (boxes[at]! >= right || boxes[at + 1]! <= left || boxes[at + 2]! >= high || boxes[at + 3]! <= low)
        continue;
      if (j === i || this.cloth[j] !== cloth) continue;
      const loss = this.clash(this.stance[j]!, stance, x - this.x[j]!, y - this.y[j]!);
      if (loss > 0) {
        sum += loss * weight[i * n + j]!;
        if (sum >= limit) {
          // What made one place too dear is likely to make the next one so: it is asked first from now on.
          seen[k] = seen[0]!;
          seen[0] = j;
          break;
        }
      }
    }
    io[2] = sum;
  }

  /** Gathers up to `MOST_PUSHES` overlaps of item i at a place: the shortest way out of each. Returns how many. */
  contacts(i: number, stance: number, cloth: number, x: number, y: number): number {
    const { boxes, outer, seen, reach } = this;
    if (Math.abs(x - this.aboutX) > reach || Math.abs(y - this.aboutY) > reach)
      this.lookNear(stance, x, y, reach);
    const { seenCount } = this;
    const left = outer[stance * 4]! + x;
    const right = outer[stance * 4 + 1]! + x;
    const low = outer[stance * 4 + 2]! + y;
    const high = outer[stance * 4 + 3]! + y;
    let count = 0;
    for (let k = 0; k < seenCount && count < MOST_PUSHES; k++) {
      const j = seen[k]!;
      const at = j * 4;
      if (boxes[at]! >= right || boxes[at + 1]! <= left || boxes[at + 2]! >= high || boxes[at + 3]! <= low)
        continue;
      if (j === i || this.cloth[j] !== cloth) continue;
      const pair = this.stance[j]! * this.stanceCount + stance;
      const field = this.fields[pair] ?? this.prepare(pair, this.stance[j]!, stance);
      const c = this.cos[pair]!;
      const s = this.sin[pair]!;
      const dx = x - this.x[j]!;
      const dy = y - this.y[j]!;
      const depth = field.depth(c * dx + s * dy, c * dy - s * dx);
      if (depth <= 0) continue;
      this.pushX[count] = c * wayOut[0]! - s * wayOut[1]!;
      this.pushY[count] = s * wayOut[0]! + c * wayOut[1]!;
      this.pushBy[count++] = depth;
    }
    return count;
  }

  /** Counts the losses of item i with all others anew. */
  settle(i: number): void {
    const { n, boxes, loss } = this;
    const bi = i * 4;
    for (let j = 0, at = 0; j < n; j++, at += 4) {
      let now = 0;
      if (
        j !== i &&
        this.cloth[j] === this.cloth[i] &&
        this.cloth[i]! >= 0 &&
        boxes[at]! < boxes[bi + 1]! &&
        boxes[at + 1]! > boxes[bi]! &&
        boxes[at + 2]! < boxes[bi + 3]! &&
        boxes[at + 3]! > boxes[bi + 2]!
      )
        now = this.clash(this.stance[j]!, this.stance[i]!, this.x[i]! - this.x[j]!, this.y[i]! - this.y[j]!);
      const before = loss[i * n + j]!;
      if (now > 0 !== before > 0) {
        const one = now > 0 ? 1 : -1;
        this.clashes[i]! += one;
        this.clashes[j]! += one;
      }
      loss[i * n + j] = now;
      loss[j * n + i] = now;
    }
  }

  settleAll(): void {
    for (let i = 0; i < this.n; i++) this.settle(i);
  }

  /** Weighted loss of item i where it lies, from the counted losses. */
  lossOf(i: number): number {
    const { n, loss, weight } = this;
    let sum = 0;
    for (let k = i * n; k < (i + 1) * n; k++) sum += loss[k]! * weight[k]!;
    return sum;
  }

  /** Whether item i overlaps any other. */
  isClashing(i: number): boolean {
    return this.clashes[i]! > 0;
  }

  /** Loss of the whole table without the weights, each pair once; exactly 0 when nothing overlaps. */
  total(): number {
    const { n, loss, clashes } = this;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      if (clashes[i] === 0) continue;
      for (let k = i * n + i + 1; k < (i + 1) * n; k++) sum += loss[k]!;
    }
    return sum;
  }

  /** All pairs weigh the same again. */
  forgetWeights(): void {
    this.weight.fill(1);
    this.heavy.length = 0;
  }

  /** Pairs that overlap weigh more, the worst of them most; the others slowly less. */
  reweigh(): void {
    const { n, loss, weight, clashes, heavy } = this;
    let kept = 0;
    for (const k of heavy) {
      if (loss[k] === 0) this.setWeight(k, Math.max(1, weight[k]! * 0.95));
      if (weight[k]! > 1) heavy[kept++] = k;
    }
    heavy.length = kept;
    let worst = 0;
    for (let i = 0; i < n; i++)
      if (clashes[i]! > 0)
        for (let k = i * n + i + 1; k < (i + 1) * n; k++) if (loss[k]! > worst) worst = loss[k]!;
    for (let i = 0; i < n; i++) {
      if (clashes[i] === 0) continue;
      for (let k = i * n + i + 1; k < (i + 1) * n; k++) {
        const one = loss[k]!;
        if (one === 0) continue;
        if (weight[k] === 1) heavy.push(k);
        this.setWeight(k, weight[k]! * (1.1 + (0.4 * one) / worst));
      }
    }
  }

  private setWeight(k: number, weight: number): void {
    const { n } = this;
    this.weight[k] = weight;
    this.weight[(k % n) * n + Math.floor(k / n)] = weight;
  }
}
