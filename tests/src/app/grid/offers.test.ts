import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { caretIn } from "../../../../src/app/grid/caret.ts";
import { insertion, offersFor } from "../../../../src/app/grid/offers.ts";
import { blankBook } from "../../../../src/book/shape.ts";

const book = {
  ...blankBook("The Miller's Daughter of Withy Green", "in", "1/8"),
  names: { waist: "Measure!B1", waist_seam: "Draft!B1", plain_waist: "Draft!B2", hip: "Measure!B2" },
};
const at = { page: 1, row: 9, column: 1 };
const offer = (word: string, where = at) =>
  offersFor(word, { book, at: where, functions: catalogue, shown: () => "27" }).map(({ text }) => text);

describe("the names that are offered", () => {
  it("cells that begin with the word come first, those that only hold it last", () => {
    expect(offer("wai")).toEqual(expect.arrayContaining(["waist", "waist_seam", "plain_waist"]));
    expect(offer("wai").slice(0, 2)).toEqual(["waist", "waist_seam"]);
    expect(offer("wai").indexOf("plain_waist")).toBeGreaterThan(1);
  });

  it("a whole name is not offered again, but longer ones are", () => {
    expect(offer("WAIST")).not.toContain("waist");
    expect(offer("waist")).toContain("waist_seam");
  });

  it("a cell is not offered its own name", () => {
    expect(offer("wai", { page: 1, row: 0, column: 1 })).not.toContain("waist_seam");
  });

  it("functions are found by their beginning and, from three letters on, by a part", () => {
    expect(offer("spread_p")).toEqual(["SPREAD_PER_GAP"]);
    expect(offer("per_gap")).toContain("SPREAD_PER_GAP");
    expect(offer("ga").every((text) => /^ga/i.test(text))).toBe(true);
  });

  it("a word in capitals asks for functions first", () => {
    const named = { ...book, names: { spread_per_gap: "Draft!B15" } };
    const first = (word: string) =>
      offersFor(word, { book: named, at, functions: catalogue, shown: () => "" })[0]?.text;
    expect(first("SPREAD_P")).toBe("SPREAD_PER_GAP");
    expect(first("spread_p")).toBe("spread_per_gap");
  });

  it("there are at most eight, and none for no word", () => {
    expect(offer("s").length).toBe(8);
    expect(offer("")).toEqual([]);
  });

  it("each says what it is: a cell where it is and what it shows, a function its summary", () => {
    const [name] = offersFor("hip", {
      book: { ...book, names: { hip_x: "Measure!B2" } },
      at,
      functions: catalogue,
      shown: () => "42",
    });
    expect(name).toEqual({ text: "hip_x", is: "name", about: "Measure!B2: 42" });
    const [one] = offersFor("SPREAD_PER", { book, at, functions: catalogue, shown: () => "" });
    expect(one?.about).toBe(catalogue.get("SPREAD_PER_GAP")?.summary);
  });
});

describe("putting an offer in", () => {
  const put = (text: string, caret: number, offered: { text: string; is: "name" | "function" }) => {
    const [from, to, signs] = insertion(text, caretIn(text, caret)!, { ...offered, about: "" });
    return text.slice(0, from) + signs + text.slice(to);
  };
  it("a name takes the place of the whole word, the part behind the caret too", () => {
    expect(put("=2*waXX+1", 5, { text: "waist", is: "name" })).toBe("=2*waist+1");
  });
  it("a function brings its bracket unless one is there", () => {
    expect(put("=EA", 3, { text: "EASE", is: "function" })).toBe("=EASE(");
    expect(put("=EA(1;2)", 3, { text: "EASE", is: "function" })).toBe("=EASE(1;2)");
  });
});
