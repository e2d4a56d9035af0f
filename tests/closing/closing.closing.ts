/** npm run closing: the page is ended in the middle of the work, and nothing that it said was saved is lost. */
import { expect, inject, it } from "vitest";
import { Profile } from "./profile.ts";
import { openIn, type Round, round, TROUBLES, WAYS } from "./rounds.ts";
import { shelveLarge } from "./shelf.ts";

const KILLS = Number(process.env.KILLS);
const SEED = Number(process.env.SEED);
/** One round in so many is of a book of 60,000 cells. */
const LARGE = 5;
/** A round that takes longer than this, in milliseconds, hangs: the run ends and says which round it was. */
const LONGEST_ROUND = 300_000;

/** The round, or an error that names it when it hangs. */
function inTime(name: string, one: ReturnType<typeof round>): ReturnType<typeof round> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, failed) => {
    const reason = `${name} has not ended within ${LONGEST_ROUND / 1000} s; npm run closing -- --kills ${KILLS} --seed ${SEED} repeats it`;
    timer = setTimeout(() => failed(new Error(reason)), LONGEST_ROUND);
  });
  return Promise.race([one, late]).finally(() => clearTimeout(timer));
}

const counts = (rounds: readonly Round[], of: "way" | "trouble"): string =>
  [...new Set(rounds.map((one) => one[of]))]
    .map((name) => `${rounds.filter((one) => one[of] === name).length} ${name}`)
    .join(", ");

it(`${KILLS} times the tab, the page or the browser is gone, and nothing that was saved is lost`, async () => {
  const address = inject("address");
  const rounds: Round[] = [];
  for (const large of [false, true]) {
    const profile = new Profile();
    try {
      let page = await openIn(profile, address);
      if (large) {
        await shelveLarge(page);
        await page.close();
        page = await openIn(profile, address);
      }
      for (let number = 0; number < KILLS; number += 1) {
        if ((number % LARGE === LARGE - 1) !== large) continue;
        // Every way meets every trouble: there are four ways and five troubles.
        const way = WAYS[number % WAYS.length]!;
        const trouble = TROUBLES[Math.floor(number / WAYS.length) % TROUBLES.length]!;
        const name = `kill ${number} (${way}, ${trouble}${large ? ", a large book" : ""})`;
        const done = await inTime(name, round(number, way, trouble, { profile, address, page, seed: SEED }));
        page = done.page;
        rounds.push(done.round);
        for (const one of done.round.lost) console.log(`lost: ${one}`);
        if (rounds.length % (large ? 5 : 20) === 0) console.log(`${rounds.length} of ${KILLS}`);
      }
    } finally {
      await profile.remove();
      const lost = rounds.reduce((sum, one) => sum + one.lost.length, 0);
      const claims = rounds.reduce((sum, one) => sum + one.claims, 0);
      console.log(
        `${rounds.length} kills: ${counts(rounds, "way")}. Of these ${counts(rounds, "trouble")}. ${claims} times "Saved in this browser", ${lost} lost. Seed ${SEED}.`,
      );
    }
  }
  expect(rounds.flatMap((one) => one.lost)).toEqual([]);
  expect(rounds.reduce((sum, one) => sum + one.claims, 0)).toBeGreaterThan(KILLS / 4);
});
