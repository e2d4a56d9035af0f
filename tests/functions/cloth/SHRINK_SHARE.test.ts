import { expect, test } from "vitest";
import { SHRINK_SHARE } from "../../../functions/cloth/SHRINK_SHARE.ts";
import { SHRUNK } from "../../../functions/cloth/SHRUNK.ts";
import { run } from "../../../functions/run.ts";

test("a sample of 20 in that comes out at 19 has shrunk by five per cent", () => {
  // Dooley, Textiles, 1910-14, experiment 36: loss over original times 100 (rule printed; numbers ours).
  expect(run(SHRINK_SHARE, [20, 19], { unit: "in" })).toBe(0.05);
});

test("the share found on a sample foretells the sample", () => {
  for (const after of [12.5, 18.2, 20, 20.3]) {
    const share = run(SHRINK_SHARE, [20, after], { unit: "in" }) as number;
    expect(run(SHRUNK, [20, share], { unit: "in" })).toBeCloseTo(after, 12);
  }
});
