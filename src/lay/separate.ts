/**
 * Takes the overlaps out of a lay of fixed length by guided local search: items that overlap are
 * moved one after the other to where it costs least, and pairs that stay stuck weigh more and
 * more until one of them jumps elsewhere. (Voudouris and Tsang 1999; for lays: Egeblad, Nielsen
 * and Odgaard 2007, Umetani et al. 2009; the schedule after Gardeyn, Vanden Berghe and Wauters,
 * arXiv:2509.13329.)
 */
import type { OverlapTable } from "./overlap-table.ts";

/** Places of all items. */
export interface Saved {
  readonly places: Float64Array;
  total: number;
}

export function save(table: OverlapTable): Saved {
  return { places: table.places().slice(), total: table.total() };
}

/** The same as `save`, into what was saved before, since arrays made in every round are garbage to collect. */
function saveAgain(table: OverlapTable, saved: Saved, total: number): void {
  saved.places.set(table.places());
  saved.total = total;
}

export function restore(table: OverlapTable, saved: Saved): void {
  table.places().set(saved.places);
  table.settleAll();
}

/**
 * Yields after every round. Returns whether all overlaps are gone; when not, the table holds the
 * least overlapped lay met. Gives up after `strikes` times `rounds` rounds without real gain.
 */
export function* separate(
  table: OverlapTable,
  random: () => number,
  rounds: number,
  strikes: number,
): Generator<void, boolean> {
  table.forgetWeights();
  const best = save(table);
  if (best.total === 0) return true;
  for (let strike = 0; strike < strikes; ) {
    const atStart = best.total;
    for (let quiet = 0; quiet < rounds; ) {
      moveAll(table, random);
      const total = table.total();
      if (total < best.total) {
        quiet = total < 0.98 * best.total ? 0 : quiet + 1;
        saveAgain(table, best, total);
      } else quiet++;
      if (total === 0) return true;
      table.reweigh();
      yield;
    }
    strike = best.total < 0.98 * atStart ? 0 : strike + 1;
    restore(table, best);
  }
  return false;
}

/** Moves every item that overlaps, in random order. */
function moveAll(table: OverlapTable, random: () => number): void {
  const order: number[] = [];
  for (let i = 0; i < table.n; i++)
    if (!table.items[i]!.fixed && table.cloth(i) >= 0 && table.isClashing(i)) order.push(i);
  for (let k = order.length - 1; k > 0; k--) {
    const other = (random() * (k + 1)) | 0;
    const i = order[k]!;
    order[k] = order[other]!;
    order[other] = i;
  }
  for (const i of order) if (table.isClashing(i)) table.program.move(i);
}
