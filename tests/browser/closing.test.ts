/** The tab, the page and the browser end in the middle of the work: one round of each; npm run closing has many. */
import { expect, inject, it } from "vitest";
import { Profile } from "../closing/profile.ts";
import { openIn, round, type Trouble, type Way } from "../closing/rounds.ts";

const ROUNDS: readonly (readonly [Way, Trouble])[] = [
  ["tab closed", "worker dies"],
  ["page left", "clock goes back"],
  ["page crashed", "full disk"],
  ["browser killed", "two tabs"],
];

// It takes half a minute: only WHOLE=1 does it, and npm run closing does more.
it.skipIf(!process.env.WHOLE)(
  "nothing that the page said was saved is lost when the tab, the page or the browser is gone",
  async () => {
    const profile = new Profile();
    try {
      const address = inject("address");
      let page = await openIn(profile, address);
      const lost: string[] = [];
      for (const [number, [way, trouble]] of ROUNDS.entries()) {
        const done = await round(number, way, trouble, { profile, address, page, seed: 7 });
        page = done.page;
        lost.push(...done.round.lost);
      }
      expect(lost).toEqual([]);
    } finally {
      await profile.remove();
    }
  },
  300_000,
);
