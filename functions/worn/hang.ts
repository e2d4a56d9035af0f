/**
 * How the cloth hangs. From its upper edge it lies on the body down to the widest place that holds
 * it out (hip, pad, shoulders), and from there its hollows hang plumb. Where the cloth at a level is
 * longer than the way round, the rest stands out in folds, and all of it is found there: the line
 * of the cloth round the body is as long as drafted. So cloth that is hardly fuller than the
 * body hangs as a cone, and full cloth in folds round a plumb core. Each place of the hem is as far
 * along the cloth from the upper edge as drafted: what a fold goes out it does not go down.
 */
import { type Figure, figureOf } from "./figure.ts";
import { foldLine } from "./folds.ts";
import type { Garment } from "./garment.ts";
import { around, evenAngles, girthOf, placeOn, type Section } from "./section.ts";

/** Levels of cloth from the upper edge to the hem. */
export const LEVELS = 14;

/** The share of the way down at which a level lies: near the top, where the cloth turns, they lie closer, and one lies on the pad's edge. */
function levelsOf(edge?: number): (level: number) => number {
  const at = edge && Math.max(1, Math.round(LEVELS * edge ** 0.8));
  const bend = at ? Math.log(edge) / Math.log(at / LEVELS) : 1.25;
  return (level) => (level / LEVELS) ** bend;
}

/** The cloth from the upper edge to a level: below a pad's edge as much everywhere. */
function fallenBy({ depth, pad }: Garment): (share: number, down: number) => number {
  if (!pad) return (share, down) => depth(share) * down;
  const { edge, lying } = pad;
  return (share, down) =>
    lying(share) * Math.min(1, down / edge) +
    (depth(share) - lying(share)) * (Math.max(0, down - edge) / (1 - edge));
}

interface Places {
  readonly x: Float64Array;
  /** Downwards from the waist. */
  readonly y: Float64Array;
  /** Towards the front. */
  readonly z: Float64Array;
}

/** One level of the cloth: its places in order round the body, the first not repeated at the end. */
export interface Row extends Places {
  /** As drafted, and as the line through the places measures. */
  readonly wanted: number;
  readonly length: number;
  /** By how much the cloth is too short to go round the body here; 0 when it goes round. */
  readonly short: number;
}

export interface Hung {
  readonly figure: Figure;
  readonly rows: readonly Row[];
  /** Share of the way round of each place of the hem, from centre back. */
  readonly shares: Float64Array;
}

export function hang(garment: Garment): Hung {
  const figure = figureOf(garment.figure);
  const support = supportBelow(figure, garment.from);
  const reach = figure.floor * 1.6 + garment.depth(0);
  const ways = new Ways(support, figure, garment, reach);
  const girth = girthOf(ways.widest);
  const thick = girth * 0.0035;
  const downAt = levelsOf(garment.pad?.edge);
  const fallenAt = fallenBy(garment);
  const rows: Row[] = [];
  let shares = new Float64Array(0);
  let out: Float64Array | null = null;
  let fallen: Float64Array | null = null;
  for (let level = 0; level <= LEVELS; level += 1) {
    const down = downAt(level);
    const before = downAt(Math.max(0, level - 1));
    const { along, layer, wave } = foldLine(garment.folds, garment.pleats, down, girth, thick);
    const count = along.length;
    const columns = ways.columns(along);
    const starts = Float64Array.from(along, garment.drop);
    const steps = Float64Array.from(along, (share) => fallenAt(share, down) - fallenAt(share, before));
    const [x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
    const places = { x, y, z };
    const [outs, ends, more] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
    const lay = (size: number): number => {
      for (let i = 0; i < count; i += 1) {
        outs[i] = layer[i]! + (size > 0 ? size * wave[i]! : size);
        const over = outs[i]! - (out ? out[i]! : outs[i]!);
        const fall = Math.sqrt(Math.max(steps[i]! ** 2 - over ** 2, (0.2 * steps[i]!) ** 2));
        ends[i] = (fallen ? fallen[i]! : starts[i]!) + fall + more[i]!;
        ways.place(columns, i, ends[i]!, outs[i]!, places);
      }
      return roundLength(places);
    };
    const wanted = garment.round(down);
    const plain = lay(0);
    const found = () => solve(lay, lay(0), wanted, garment.folds);
    lay(found());
    const above = rows.at(-1);
    if (above) {
      // Where the support slants, outwards and downwards are not square: the way down the cloth is put right.
      let off = 0;
      for (let i = 0; i < count; i += 1) {
        more[i] = steps[i]! - apart(x, y, z, i, above.x, above.y, above.z, i);
        if (Math.abs(outs[i]! - out![i]!) > 0.8 * steps[i]!) more[i] = 0;
        off = Math.max(off, Math.abs(more[i]!) / (steps[i]! || 1));
      }
      if (off > 0.002) lay(found());
    }
    [out, fallen, shares] = [outs, ends, along as Float64Array<ArrayBuffer>];
    // The layers of pleats alone make the way round a little longer: they are pressed flatter than drawn.
    const layered = garment.pleats.length > 0 ? 4 * Math.PI * thick : 0;
    const short = Math.max(0, plain - layered - wanted);
    rows.push({ x, y, z, wanted, length: roundLength(places), short });
  }
  return { figure, rows, shares };
}

function roundLength({ x, y, z }: Places): number {
  let sum = 0;
  for (let i = 0, k = x.length - 1; i < x.length; k = i, i += 1) sum += apart(x, y, z, i, x, y, z, k);
  return sum;
}

/** From a place of one row to a place of another; Math.hypot is many times slower. */
function apart(
  x: Float64Array, y: Float64Array, z: Float64Array, i: number,
  u: Float64Array, v: Float64Array, w: Float64Array, k: number,
): number {
  const [dx, dy, dz] = [x[i]! - u[k]!, y[i]! - v[k]!, z[i]! - w[k]!];
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
} // biome-ignore format: the places of one row to a line

/** The size of fold (or, below 0, how far within the body) at which the line is as long as wanted. */
function solve(lay: (size: number) => number, plain: number, wanted: number, folds: number): number {
  if (Math.abs(plain - wanted) <= 1e-9 * wanted) return 0;
  const way = Math.sign(wanted - plain);
  let [low, high] = [
    0,
    (way * Math.max(Math.abs(wanted - plain), 0.02 * wanted)) / (way > 0 ? 3 * folds : 6),
  ];
  let [below, above] = [plain - wanted, lay(high) - wanted];
  for (let i = 0; i < 30 && above * way < 0; i += 1) {
    [low, below] = [high, above];
    high *= 1.7;
    above = lay(high) - wanted;
  }
  // False position, each third time by halves.
  for (let i = 0; i < 60 && Math.abs(high - low) > 1e-14 * Math.abs(high); i += 1) {
    const guess = i % 3 === 2 ? (low + high) / 2 : low - (below * (high - low)) / (above - below);
    const off = lay(guess) - wanted;
    if (Math.abs(off) <= 1e-7 * wanted) return guess;
    if (off * way < 0) [low, below] = [guess, off];
    else [high, above] = [guess, off];
  }
  return high;
}

/** The section that holds cloth out at each level: the body's own, and below a wider place that place's. */
function supportBelow(figure: Figure, from: Garment["from"]): (y: number) => Section {
  if (from === "waist") {
    const hip = figure.section(figure.hip_level);
    const waist = figure.section(0);
    const widest = around(hip, waist);
    return (y) => {
      if (y <= 0) return waist;
      return y >= figure.hip_level ? widest : around(figure.section(y), waist);
    };
  }
  const shoulders = figure.section(figure.shoulder_level);
  // The upper arms hang beside the shoulders, and the chest holds the cloth out in front.
  const arms = shoulders.half * 1.12;
  return (y) => {
    if (y <= figure.neck_level) return figure.section(figure.neck_level);
    if (y <= figure.shoulder_level) return figure.section(y);
    const share = Math.min(1, (y - figure.shoulder_level) / (figure.shoulder_level * -0.45));
    const body = figure.section(Math.min(y, figure.shoulder_level * 0.55));
    return around({ ...body, half: shoulders.half + (arms - shoulders.half) * share }, shoulders);
  };
}

/** How many ways down the support are tabled. */
export const WAYS = 96;

/** The ways down the support, from the upper edge's level: the place at a distance along it, tabled. */
class Ways {
  readonly widest: Section;
  private readonly sections: readonly Section[];
  private readonly angles: readonly number[];
  private readonly tables: readonly Float64Array[];
  private readonly top: number;
  private readonly step: number;

  constructor(support: (y: number) => Section, figure: Figure, garment: Garment, reach: number) {
    const from = garment.from === "waist" ? 0 : figure.neck_level;
    // The cloth lies on the support near its top only: there the table is fine, below it all is plumb.
    const near = (garment.from === "waist" ? figure.hip_level : figure.shoulder_level * 0.5 - from) * 1.02;
    this.top = from;
    const fine = 120;
    this.step = near / fine;
    this.sections = Array.from({ length: fine + 1 }, (_, i) => support(from + this.step * i));
    this.widest = support(from + Math.max(near, reach));
    this.angles = evenAngles(this.widest, WAYS, garment.quarters);
    this.tables = this.angles.map((angle) => {
      const table = new Float64Array(fine + 1);
      for (let i = 1; i <= fine; i += 1) {
        const [ax, az] = placeOn(this.sections[i - 1]!, angle, 0);
        const [bx, bz] = placeOn(this.sections[i]!, angle, 0);
        table[i] = table[i - 1]! + Math.hypot(bx - ax, bz - az, this.step);
      }
      return table;
    });
  }

  /** Which way each place goes down, and the place's angle there: the same for every trial of a level. */
  columns(along: Float64Array): Columns {
    const count = along.length;
    const [column, part, sin, cos] = [
      new Uint8Array(count),
      new Float64Array(count),
      new Float64Array(count),
      new Float64Array(count),
    ];
    along.forEach((share, i) => {
      const turns = (share - Math.floor(share)) * WAYS;
      column[i] = Math.min(Math.floor(turns), WAYS - 1);
      part[i] = turns - column[i]!;
      const [a, b] = [this.angles[column[i]!]!, this.angles[column[i]! + 1]!];
      const angle = a + (b - a) * part[i]!;
      [sin[i], cos[i]] = [Math.sin(angle), Math.cos(angle)];
    });
    return { column, part, sin, cos };
  }

  /** Puts down a place, `way` along the support from its top and `out` from it. */
  place(at: Columns, i: number, way: number, out: number, row: Places): void {
    const [column, part, sin, cos] = [at.column[i]!, at.part[i]!, at.sin[i]!, at.cos[i]!];
    const level =
      levelAt(this.tables[column]!, way) * (1 - part) + levelAt(this.tables[column + 1]!, way) * part;
    const last = this.sections.length - 1;
    const k = Math.max(0, Math.min(Math.floor(level), last - 1));
    const within = Math.max(0, Math.min(level - k, 1));
    const [a, b] = [this.sections[k]!, this.sections[k + 1]!];
    const half = a.half + (b.half - a.half) * within;
    const deep = cos > 0 ? a.back + (b.back - a.back) * within : a.front + (b.front - a.front) * within;
    const [nx, nz] = [sin / half, -cos / deep];
    const long = Math.sqrt(nx * nx + nz * nz);
    row.x[i] = half * sin + (nx / long) * out;
    row.y[i] = this.top + level * this.step;
    row.z[i] = -deep * cos + (nz / long) * out;
  }
}

interface Columns {
  readonly column: Uint8Array;
  readonly part: Float64Array;
  readonly sin: Float64Array;
  readonly cos: Float64Array;
}

/** Where in a table of growing lengths this one lies, in steps; beyond the table the way is plumb, a step a step. */
function levelAt(table: Float64Array, way: number): number {
  const last = table.length - 1;
  if (way <= 0) return way / (table[1]! || 1);
  if (way >= table[last]!) return last + (way - table[last]!) / (table[last]! - table[last - 1]!);
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (table[middle]! <= way) low = middle;
    else high = middle;
  }
  return low + (way - table[low]!) / (table[high]! - table[low]!);
}
