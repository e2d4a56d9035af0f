/** A question set up for the search: its copies and obstacles on the table, and the ways to stir them. */
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { Fields, obstaclesOf, type Stance, stancesOf } from "./fields.ts";
import { newRoom } from "./inner/simd-room.ts";
import { InnerFit } from "./inner-fit.ts";
import { wholeTurn } from "./outline.ts";
import { OverlapTable } from "./overlap-table.ts";
import { shapesOf } from "./shape.ts";

/** Overlaps up to this share of the widest cloth count as touching: 0.3 micrometres on 1.5 m. */
const TOUCHING = 2e-7;

export class Scene {
  readonly random: () => number;
  readonly table: OverlapTable;
  readonly innerFit: InnerFit;
  /** The copies, in the order of the table's items; obstacles follow them there. */
  readonly copies: readonly { readonly piece: number; readonly copy: number }[];
  private readonly stances: readonly Stance[];
  private readonly stancesOfKind: readonly (readonly number[])[];

  constructor(
    readonly question: LayQuestion,
    seed: number,
    first: Lay,
    makeRoom = newRoom,
  ) {
    const shapes = shapesOf({ ...question, gap: 0 });
    const obstacles = obstaclesOf(question.cloths);
    const widest = Math.max(...question.cloths.map((c) => c.width));
    this.stances = stancesOf(question, shapes, obstacles);
    const kinds: number[][] = [...question.pieces, ...obstacles].map(() => []);
    this.stances.forEach((stance, s) => {
      kinds[stance.kind]!.push(s);
    });
    this.stancesOfKind = kinds;
    const pinned = new Set((question.pinned ?? []).map((p) => `${p.piece} ${p.copy}`));
    this.copies = question.pieces.flatMap(({ quantity }, piece) =>
      Array.from({ length: quantity }, (_, copy) => ({ piece, copy })),
    );
    const items = this.copies.map(({ piece, copy }) => ({
      kind: piece,
      fixed: pinned.has(`${piece} ${copy}`),
    }));
    obstacles.forEach((_, i) => {
      items.push({ kind: question.pieces.length + i, fixed: true });
    });
    const fields = new Fields(question, obstacles, question.gap);
    this.table = new OverlapTable(
      items,
      this.stances,
      fields,
      {
        cloths: question.cloths,
        gap: question.gap,
        repeat: question.repeat,
        unit: widest,
        tolerance: TOUCHING * widest,
        seed,
      },
      makeRoom,
    );
    this.random = () => this.table.program.random();
    this.innerFit = new InnerFit(this.table);
    obstacles.forEach(({ cloth }, i) => {
      this.table.put(this.copies.length + i, kinds[question.pieces.length + i]![0]!, cloth, 0, 0);
    });
    this.load(first);
  }

  /** Puts every copy where the lay has it, and allows each cloth the length the lay uses. */
  load(lay: Lay): void {
    const { table } = this;
    const places = new Map(lay.placements.map((p) => [`${p.piece} ${p.copy}`, p]));
    this.copies.forEach(({ piece, copy }, i) => {
      const place = places.get(`${piece} ${copy}`);
      if (!place) {
        table.takeAway(i);
        return;
      }
      const stance = this.stancesOfKind[piece]!.find((s) => this.stances[s]!.turn === wholeTurn(place.turn))!;
      table.put(i, stance, place.cloth, place.x, place.y);
      const { match } = this.stances[stance]!;
      if (match !== null) table.setPhase(place.x + match);
    });
    lay.lengths.forEach((length, cloth) => {
      table.setLimit(cloth, length);
    });
    table.settleAll();
  }

  /** The copies that lie on no cloth. */
  get absent(): number[] {
    return this.copies.flatMap((_, i) => (this.table.cloth(i) === -1 ? [i] : []));
  }

  placements(): Placement[] {
    const { table } = this;
    return this.copies.flatMap(({ piece, copy }, i) => {
      const cloth = table.cloth(i);
      const { turn } = this.stances[table.stance(i)]!;
      return cloth < 0 ? [] : [{ piece, copy, cloth, turn, x: table.x(i), y: table.y(i) }];
    });
  }

  /**
   * Allows a cloth less length: what lies past a random cut moves with its end. False when some
   * copy finds room on no cloth any more.
   */
  shorten(cloth: number, length: number): boolean {
    const { table, innerFit } = this;
    const by = table.limit(cloth) - length;
    table.setLimit(cloth, length);
    const cut = this.random() * length;
    for (let i = 0; i < this.copies.length; i++) {
      if (table.cloth(i) !== cloth) continue;
      const s = table.stance(i);
      const { left, right } = this.stances[s]!;
      if (table.items[i]!.fixed) {
        if (table.x(i) + right > length) return false;
        continue;
      }
      const moved = table.x(i) + (left + right) / 2 > cut ? table.x(i) - by : table.x(i);
      if (innerFit.range(s, cloth))
        table.put(i, s, cloth, innerFit.snap(s, moved), innerFit.clampY(table.y(i)));
      else if (!this.scatter(i)) return false;
    }
    table.settleAll();
    return true;
  }

  /** Puts item i anywhere it has room, the cloths tried in random order; false when it has none. */
  scatter(i: number): boolean {
    const { table, innerFit, random } = this;
    const places = this.stancesOfKind[table.items[i]!.kind]!.flatMap((s) =>
      this.question.cloths.flatMap((_, c) => (innerFit.range(s, c) ? [[s, c] as const] : [])),
    );
    if (places.length === 0) return false;
    const [s, c] = places[(random() * places.length) | 0]!;
    innerFit.range(s, c);
    const x = innerFit.snap(s, innerFit.left + random() * (innerFit.right - innerFit.left));
    table.put(i, s, c, x, innerFit.low + random() * (innerFit.high - innerFit.low));
    return true;
  }

  /** Swaps two large items of different kinds, so that the search leaves the valley it is in. */
  disrupt(): void {
    const { table, random } = this;
    const size = (i: number) => {
      const { left, right, low, high } = this.stances[table.stance(i)]!;
      return (right - left) * (high - low);
    };
    const movable = this.copies.flatMap((_, i) => (table.items[i]!.fixed || table.cloth(i) < 0 ? [] : [i]));
    movable.sort((a, b) => size(b) - size(a));
    const large = movable.slice(0, Math.max(2, Math.ceil(movable.length * LARGE)));
    if (large.length < 2) return;
    const a = large[(random() * large.length) | 0]!;
    const others = large.filter((i) => table.items[i]!.kind !== table.items[a]!.kind);
    if (others.length === 0) return;
    const b = others[(random() * others.length) | 0]!;
    const [pa, pb] = [this.middle(a), this.middle(b)];
    this.putAbout(a, pb);
    this.putAbout(b, pa);
    table.settle(a);
    table.settle(b);
  }

  private middle(i: number): readonly [x: number, y: number, cloth: number] {
    const { left, right, low, high } = this.stances[this.table.stance(i)]!;
    return [this.table.x(i) + (left + right) / 2, this.table.y(i) + (low + high) / 2, this.table.cloth(i)];
  }

  private putAbout(i: number, [cx, cy, cloth]: readonly [number, number, number]): void {
    const { table, innerFit } = this;
    const s = table.stance(i);
    if (!innerFit.range(s, cloth)) return;
    const { left, right, low, high } = this.stances[s]!;
    table.put(i, s, cloth, innerFit.snap(s, cx - (left + right) / 2), innerFit.clampY(cy - (low + high) / 2));
  }
}

/** Share of the copies, the largest first, that count as large. */
const LARGE = 0.5;
