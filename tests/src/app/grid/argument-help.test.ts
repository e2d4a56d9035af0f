import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { argumentHelp } from "../../../../src/app/grid/argument-help.ts";

const spread = catalogue.get("SPREAD_PER_GAP")!;

describe("the hint of an argument", () => {
  it("names all arguments, those that may be left out in brackets, and tells of the one being typed", () => {
    const hint = argumentHelp(spread, 2, "in");
    expect(hint.forms).toEqual([{ takes: ["top", "hem", "sections", "[edge_share = 0.5]"], current: 2 }]);
    expect(hint.about).toContain(spread.takes.sections!.about);
    expect(hint.about).toContain("whole number, 1 to 200");
  });
  it("tells limits in the book's unit", () => {
    const about = (unit: "in" | "cm") => argumentHelp(spread, 0, unit).about;
    expect(about("in")).toMatch(/ in\)$/);
    expect(about("cm")).toMatch(/ cm\)$/);
  });
  it("shows both forms of a function that reads a list by its headings, that with the block first", () => {
    const yardage = catalogue.get("YARDAGE")!;
    const [block, lists] = argumentHelp(yardage, 0, "in").forms;
    expect(block!.takes).toEqual(Object.keys(yardage.block!.takes).map((_, i) => block!.takes[i]));
    expect(block!.takes.slice(0, 2)).toEqual(["cut_list", "cloth_width"]);
    expect(lists!.takes[0]).toBe("pieces");
    expect(argumentHelp(yardage, 0, "in").about).toMatch(/^.+; or, with the lists one by one, .+$/);
    const past = Object.keys(yardage.block!.takes).length;
    expect(argumentHelp(yardage, past, "in").forms.map(({ current }) => current)).toEqual([-1, past]);
  });
  it("says so past the last argument", () => {
    expect(argumentHelp(spread, 4, "in")).toMatchObject({
      forms: [{ current: -1 }],
      about: "SPREAD_PER_GAP has 4 arguments, and this is argument 5",
    });
  });
});
