/** npm run closing: the page is ended in the middle of the work, and nothing that it said was saved is lost. */
import { expect, inject, it } from "vitest";
import { Profile } from "./profile.ts";
import { openIn, type Round, round, TROUBLES, WAYS } from "./rounds.ts";
import { shelveLarge } from "./shelf.ts";

const KILLS = Number(process.env.KILLS);
const SEED = Number(process.env.SEED);
/** One round in so many is of a book of 60,000 cells. */
const LARGE = 5;

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
        const done = await round(number, way, trouble, { profile, address, page, seed: SEED });
        page = done.page;
        rounds.push(done.round);
        for (const one of done.round.lost) console.log(`lost: ${one}`);
        if (rounds.length % 20 === 0) console.log(`${rounds.length} of ${KILLS}`);
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
