import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { argumentHelp } from "../../../../src/app/grid/argument-help.ts";

const spread = catalogue.get("SPREAD_PER_GAP")!;

describe("the hint of an argument", () => {
  it("names all arguments, those that may be left out in brackets, and tells of the one being typed", () => {
    const hint = argumentHelp(spread, 2, "in");
    expect(hint.takes).toEqual(["top", "hem", "sections", "[edge_share = 0.5]"]);
    expect(hint.current).toBe(2);
    expect(hint.about).toContain(spread.takes.sections!.about);
    expect(hint.about).toContain("whole number, 1 to 200");
  });
  it("tells limits in the book's unit", () => {
    const about = (unit: "in" | "cm") => argumentHelp(spread, 0, unit).about;
    expect(about("in")).toMatch(/ in\)$/);
    expect(about("cm")).toMatch(/ cm\)$/);
  });
  it("says so past the last argument", () => {
    expect(argumentHelp(spread, 4, "in")).toMatchObject({
      current: -1,
      about: "SPREAD_PER_GAP has 4 arguments, and this is argument 5",
    });
  });
});
