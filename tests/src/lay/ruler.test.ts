import { describe, expect, it } from "vitest";
import { ticksOf } from "../../../src/lay/ruler.ts";

const figures = (...args: Parameters<typeof ticksOf>) => ticksOf(...args).flatMap(({ label }) => label ?? []);

describe("the tape along the selvedge", () => {
  it("has a figure at every half foot and a tick at every inch where half a foot is far enough apart", () => {
    expect(figures(30, "in", "1/8", 5)).toEqual(["0", "6", "12", "18", "24", "30"]);
    expect(ticksOf(30, "in", "1/8", 5)).toHaveLength(31);
  });

  it("goes by yards on a long lay", () => {
    expect(figures(150, "in", "1/8", 30)).toEqual(["0", "36", "72", "108", "144"]);
  });

  it("counts centimetres in a metric book", () => {
    expect(figures(120, "cm", "1 mm", 40)).toEqual(["0", "50", "100"]);
    expect(ticksOf(120, "cm", "1 mm", 40)).toHaveLength(13);
  });

  it("ends within the cloth, and has its 0 even on no cloth at all", () => {
    expect(ticksOf(11.9, "in", "1/8", 1).at(-1)!.at).toBeLessThanOrEqual(11.9);
    expect(figures(0, "in", "1/8", 6)).toEqual(["0"]);
  });
});
