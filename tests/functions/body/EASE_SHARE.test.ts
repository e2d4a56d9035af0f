import fc from "fast-check";
import { expect, test } from "vitest";
import { EASE_SHARE } from "../../../functions/body/EASE_SHARE.ts";
import { WITH_EASE } from "../../../functions/body/WITH_EASE.ts";
import { run } from "../../../functions/run.ts";

test("the share put on the body again gives the garment", () => {
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 160 }), fc.integer({ min: 40, max: 200 }), (body, garment) => {
      const share = run(EASE_SHARE, [body, garment], { unit: "cm" }) as number;
      expect(share).toBeGreaterThan(-1);
      if (share > -0.6) expect(run(WITH_EASE, [body, 0, share], { unit: "cm" })).toBeCloseTo(garment, 9);
    }),
    { seed: 12 },
  );
});
