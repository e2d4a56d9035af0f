import { describe, expect, it } from "vitest";
import { caretIn, wantsValue } from "../../../../src/app/grid/caret.ts";

/** The text up to the bar, then the rest: "=SUM(|)" . */
function at(marked: string) {
  const caret = marked.indexOf("|");
  return caretIn(marked.replace("|", ""), caret);
}

describe("where the caret is in a formula", () => {
  it("a text that is no formula has no place for names", () => {
    expect(at("waist|")).toBeNull();
    expect(at("|=waist")).toBeNull();
  });

  it("the word before the caret is known from its first letter to its last", () => {
    expect(at("=wai|")).toMatchObject({ word: "wai", from: 1, to: 4, call: null });
    expect(at("=2*wa|ist+1")).toMatchObject({ word: "wa", from: 3, to: 8 });
  });

  it.each([
    ["in quotes", '=IF(hip>0; "wai|'],
    ["after a figure, where a unit stands", "=36 i|"],
    ["after a tape fraction", "=36 1/2 i|"],
    ["after another name", "=hip wai|"],
    ["after a page's title and !", "=Draft!wai|"],
    ["straight after a bracket", "=EASE(|"],
  ])("no name begins %s", (_where, text) => expect(at(text)?.word).toBe(""));

  it("a word that reads like an address so far may still become a name", () => {
    expect(at("=hip2|")?.word).toBe("hip2");
  });

  it.each([
    ["=EASE(|", "EASE", 0],
    ["=EASE(36 1/2; |", "EASE", 1],
    ["=EASE(36 1/2, |", "EASE", 1],
    ["=ease(1;2)|", null, 0],
    ["=EASE(SUM(A1;A2;|", "SUM", 2],
    ["=EASE(SUM(A1;A2);|", "EASE", 1],
    ["=EASE((1+2|", "EASE", 0],
    ["=EASE({1;2;3|", "EASE", 0],
    ["=EASE({1;2;3};|", "EASE", 1],
    ['=EASE("a;b(";|', "EASE", 1],
    ["=EASE(1;|2;3)", "EASE", 1],
  ])("in %s the argument is of %s, number %d", (text, call, argument) =>
    expect(at(text)).toMatchObject({ call, argument }),
  );
});

describe("pointing at a cell while typing", () => {
  it.each(["=", "=2*", "=SUM(", "=SUM(A1;", "=A1:", "=hip >= "])("%s waits for a cell", (text) =>
    expect(wantsValue(text, text.length)).toBe(true),
  );
  it.each(["", "waist", "=A1", "=2", "=hip", "=SUM(A1)", "=50%", '="a'])(
    "%s does not, so that a click ends the edit",
    (text) => expect(wantsValue(text, text.length)).toBe(false),
  );
});
