import { describe, expect, it } from "vitest";
import "../../../../src/engine/built-ins/all.ts";
import { catalogue } from "../../../../functions/catalogue.ts";
import { argumentHelp } from "../../../../src/app/grid/argument-help.ts";

const hintOf = (name: string, argument: number, unit: "in" | "cm" = "in") =>
  argumentHelp(name, argument, unit)!;
const texts = (name: string) => hintOf(name, 0).forms.map(({ takes }) => takes.map(({ text }) => text));

describe("the hint of an argument", () => {
  it("names all arguments, those that may be left out in brackets, and says what the one being typed is", () => {
    expect(texts("SPREAD_PER_GAP")).toEqual([["top", "hem", "sections", "[edge_share = 0.5]"]]);
    const { forms, meant } = hintOf("SPREAD_PER_GAP", 2);
    expect(forms[0]!.current).toBe(2);
    expect(meant).toMatchObject([
      { name: "sections", about: catalogue.get("SPREAD_PER_GAP")!.takes.sections!.about },
    ]);
    expect(meant[0]!.values).toContain("whole number, 1 to 200");
  });
  it("says limits in the book's unit", () => {
    expect(hintOf("SPREAD_PER_GAP", 0, "in").meant[0]!.values).toMatch(/ in$/);
    expect(hintOf("SPREAD_PER_GAP", 0, "cm").meant[0]!.values).toMatch(/ cm$/);
  });
  it("shows both forms of a function that reads a list by its headings, that with the block first", () => {
    const [block, lists] = texts("YARDAGE");
    expect(block!.slice(0, 2)).toEqual(["cut_list", "cloth_width"]);
    expect(lists![0]).toBe("pieces");
    expect(hintOf("YARDAGE", 0).meant.map(({ name }) => name)).toEqual(["cut_list", "pieces"]);
    const past = hintOf("YARDAGE", block!.length);
    expect(past.forms.map(({ current }) => current)).toEqual([-1, block!.length]);
    expect(past.meant).toHaveLength(1);
  });
  it("says so past the last argument", () => {
    const { forms, meant, tooMany } = hintOf("SPREAD_PER_GAP", 4);
    expect(forms[0]!.current).toBe(-1);
    expect(meant).toEqual([]);
    expect(tooMany).toBe("SPREAD_PER_GAP has 4 arguments, and this is argument 5");
  });
  it("knows the built-in functions too, and which of their arguments may be repeated", () => {
    expect(hintOf("IF", 1).meant).toMatchObject([{ name: "if_true" }]);
    expect(hintOf("SUM", 7).meant).toMatchObject([{ name: "figures" }]);
    expect(hintOf("SUM", 7).forms[0]!.current).toBe(1);
    expect(hintOf("IF", 3).tooMany).toContain("3 arguments");
    expect(argumentHelp("NOBODY", 0, "in")).toBeNull();
  });
});
