import { afterEach, expect, test } from "vitest";
import { type Language, phrase, phraseParts, plural, translated } from "../../functions/phrase.ts";
import { speak } from "../../functions/speech.ts";

afterEach(() => speak(null));

const saved = (file: string) => phrase`Saved as ${file}`;
const pinned = (count: number, cloth: string) =>
  phrase`${plural(count, "# piece is", "# pieces are")} pinned on ${cloth}`;

const language = (tag: string, direction: "ltr" | "rtl", phrases: Language["phrases"]): Language => ({
  tag,
  direction,
  phrases,
});

test("in English a sentence is what its template says", () => {
  expect(saved("peplum.json")).toBe("Saved as peplum.json");
  expect(pinned(1, "linen")).toBe("1 piece is pinned on linen");
  expect(pinned(0, "linen")).toBe("0 pieces are pinned on linen");
});

test("in another language the values stand where that language puts them, and plurals have its own forms", () => {
  // Polish has a form for 1, one for 2 to 4 and one for 5 (Unicode CLDR, plural rules).
  const ways = { one: [0, " kawałek"], few: [0, " kawałki"], many: [0, " kawałków"], other: [0, " kawałka"] };
  speak(
    language("pl", "ltr", {
      "Saved as {}": [0, ": zapisano"],
      "{# piece is|# pieces are} pinned on {}": [1, ": ", { by: 0, ways }],
      Keep: "Zachowaj",
    }),
  );
  expect(saved("peplum.json")).toBe("peplum.json: zapisano");
  expect([1, 3, 5, 22].map((count) => pinned(count, "len"))).toEqual([
    "len: 1 kawałek",
    "len: 3 kawałki",
    "len: 5 kawałków",
    "len: 22 kawałki",
  ]);
  expect(translated("Keep")).toBe("Zachowaj");
  // What has no translation stays English.
  expect(phrase`Not saved: ${"no room"}`).toBe("Not saved: no room");
  expect(translated("Discard")).toBe("Discard");
});

test("words written in the other direction are isolated, so that they don't turn the sentence round", () => {
  expect(saved("חצאית.json")).toBe("Saved as \u2068חצאית.json\u2069");
  expect(saved("jupe élégante.json")).toBe("Saved as jupe élégante.json");
  speak(language("he", "rtl", { "Saved as {}": ["נשמר בשם ", 0], "Type 3 1/2": "הקלידו 3 1/2" }));
  expect(saved("peplum.json")).toBe("נשמר בשם \u2068peplum.json\u2069");
  expect(saved("חצאית")).toBe("נשמר בשם חצאית");
  expect(saved("16")).toBe("נשמר בשם 16");
  // Among words from right to left 39 7/8 would be read as 7/8 39 (Unicode Standard Annex 9, rules W4 and N1).
  expect(saved("39 7/8")).toBe("נשמר בשם \u206839 7/8\u2069");
  expect(phrase`Type 3 1/2`).toBe("הקלידו \u20683 1/2\u2069");
  expect(translated("Type 3 1/2")).toBe("הקלידו \u20683 1/2\u2069");
});

test("a sentence may hold other things than words, which keep their places among its parts", () => {
  const key = { is: "key" };
  const tag = (texts: TemplateStringsArray, ...values: (object | number)[]) =>
    phraseParts<object>(texts, values as (object | number)[]);
  const parts = (first: object, second: number) => tag`Press ${first} for ${second} pages`;
  expect(parts(key, 3)).toEqual(["Press ", key, " for ", "3", " pages"]);
  speak(language("de", "ltr", { "Press {} for {} pages": [1, " Seiten: ", 0] }));
  expect(parts(key, 3)).toEqual(["3", " Seiten: ", key]);
});
