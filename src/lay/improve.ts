/**
 * The order of the search: first whatever is still missing is brought in, then the cloth is
 * shortened in larger steps, then in finer ones. Each step that succeeds is a better lay.
 */

import type { Lay } from "../../functions/lay.ts";
import { answerFrom, isProved } from "./answer.ts";
import type { Scene } from "./scene.ts";
import { restore, type Saved, save, separate } from "./separate.ts";

/** Whom the search tells. */
export interface Host {
  /** Share of the plan spent, 0 to 1 and above. */
  progress(): number;
  best(): Lay;
  /** Whether the lay is better than the best, and good; then it is the best. */
  offer(lay: Lay): boolean;
}

/** Share of the plan spent on shortening in larger steps; the rest goes into small ones. */
const EXPLORING = 0.8;
/** Steps of shortening, as shares of the length: the first, and the least while exploring. */
const FIRST_STEP = 0.04;
const LEAST_STEP = 0.0015;
/** Failed lays kept to start again from. */
const POOL = 10;

/** Goes on until no lay can be better; yields after every round of moves. */
export function* improve(scene: Scene, host: Host): Generator<void, void> {
  yield* bringIn(scene, host);
  if (host.best().missing.length > 0) return;
  yield* explore(scene, host);
  yield* compress(scene, host);
}

/** Tries the missing copies one by one, small ones first, with the rest making room. */
function* bringIn(scene: Scene, host: Host): Generator<void, void> {
  const { table, question, random } = scene;
  let good = save(table);
  const open = () => {
    question.cloths.forEach(({ length }, i) => {
      if (length !== null) table.setLimit(i, length);
    });
  };
  open();
  const size = (i: number) => {
    const { left, right, low, high } = table.stances[table.stance(i)]!;
    return (right - left) * (high - low);
  };
  for (let tries = 0; ; tries++) {
    const absent = scene.absent.sort((a, b) => size(a) - size(b));
    if (absent.length === 0) break;
    const i = absent[tries % absent.length]!;
    if (!scene.scatter(i)) {
      if (absent.every((k) => !scene.scatter(k))) return;
      restore(table, good);
      yield;
      continue;
    }
    table.settle(i);
    const ok = yield* separate(table, random, 60, 2);
    if (ok && record(scene, host)) {
      good = save(table);
      tries = -1;
    } else restore(table, good);
    open();
  }
  scene.load(host.best());
}

function* explore(scene: Scene, host: Host): Generator<void, void> {
  const { table, random } = scene;
  let good = save(table);
  let step = FIRST_STEP;
  let pool: Saved[] = [];
  while (host.progress() < EXPLORING && !cannotBeBetter(scene, host.best())) {
    const cloth = clothToShorten(scene, host.best());
    const could = scene.shorten(cloth, host.best().lengths[cloth]! * (1 - step));
    const ok = could && (yield* separate(table, random, 60, step > LEAST_STEP ? 1 : 3));
    if (!could) yield;
    if (ok && record(scene, host)) {
      good = save(table);
      pool = [];
    } else if (step > LEAST_STEP || !could || ok) {
      step = Math.max(step / 2, LEAST_STEP / 2);
      goBack(scene, host, good);
    } else {
      pool.push(save(table));
      pool.sort((a, b) => a.total - b.total);
      pool.length = Math.min(pool.length, POOL);
      restore(table, pool[Math.floor(random() ** 2 * pool.length)]!);
      scene.disrupt();
    }
  }
  goBack(scene, host, good);
}

function* compress(scene: Scene, host: Host): Generator<void, void> {
  const { table, random } = scene;
  let good = save(table);
  for (let step = 0.001; !cannotBeBetter(scene, host.best()); ) {
    const cloth = clothToShorten(scene, host.best());
    const could = scene.shorten(cloth, host.best().lengths[cloth]! * (1 - step));
    const ok = could && (yield* separate(table, random, 50, 1));
    if (!could) yield;
    if (ok && record(scene, host)) {
      good = save(table);
      step = Math.min(0.001, step * 1.5);
    } else {
      step = step < 1e-5 ? 0.001 : step * 0.7;
      goBack(scene, host, good);
    }
  }
}

function goBack(scene: Scene, host: Host, good: Saved): void {
  allow(scene, host.best());
  restore(scene.table, good);
}

/** Allows each cloth what the best lay uses; when a cloth is still to be bought, all of those in hand. */
function allow(scene: Scene, best: Lay): void {
  const { cloths } = scene.question;
  const buying = cloths.some(({ length }) => length === null);
  cloths.forEach(({ length }, i) => {
    scene.table.setLimit(i, buying && length !== null ? length : best.lengths[i]!);
  });
}

/** One of the cloths to be bought; when all are in hand, any that is used. */
function clothToShorten(scene: Scene, best: Lay): number {
  const { cloths } = scene.question;
  allow(scene, best);
  const buying = cloths.some(({ length }) => length === null);
  const used = cloths.flatMap(({ length }, i) =>
    best.lengths[i]! > 0 && (!buying || length === null) ? [i] : [],
  );
  return used[Math.floor(scene.random() * used.length)]!;
}

/** The cloth is full, or no lay can be shorter, or nothing is to be bought. */
function cannotBeBetter({ question }: Scene, best: Lay): boolean {
  if (best.density >= 1 - 1e-6) return true;
  const buying = question.cloths.some(({ length }) => length === null);
  if (question.cloths.every(({ length }, i) => best.lengths[i] === 0 || (buying && length !== null)))
    return true;
  return isProved(question, best);
}

/** Offers what lies on the table; when it is the new best, the lengths allowed follow it. */
function record(scene: Scene, host: Host): boolean {
  if (!host.offer(answerFrom(scene.question, scene.placements()))) return false;
  allow(scene, host.best());
  return true;
}
