import { describe, expect, it } from "vitest";
import type { Lay } from "../../../functions/lay.ts";
import { quickLay } from "../../../src/lay/quick.ts";
import { seeded } from "../../../src/lay/random.ts";
import { Scene } from "../../../src/lay/scene.ts";
import { publishedQuestion } from "./published.ts";

describe("the overlap table", () => {
  for (const name of ["shirts", "mao"])
    it(`${name}: judges a place the same whether it looks near or everywhere, near by and far off`, () => {
      const question = publishedQuestion(name);
      const random = seeded(3);
      const { table } = new Scene(question, 3, quickLay(question) as Lay);
      const width = question.cloths[0]!.width;
      const { program } = table;
      let clear = 0;
      for (let k = 0; k < 400; k++) {
        const i = Math.floor(random() * table.n);
        const stance = table.stance(i);
        const x = table.x(i) + (random() - 0.5) * width * 0.2;
        const y = table.y(i) + (random() - 0.5) * width * 0.2;
        program.lookEverywhere(i);
        const loss = program.judge(i, stance, 0, x, y, Infinity);
        // The neighbours were gathered about the item's own place, which is further off than the reach for many.
        program.lookNear(i, stance, table.x(i), table.y(i), width * 0.05);
        expect(program.judge(i, stance, 0, x, y, Infinity)).toBeCloseTo(loss, 9);
        if (loss === 0) clear++;
      }
      expect(clear).toBeGreaterThan(0);
      expect(clear).toBeLessThan(400);
    });
});
