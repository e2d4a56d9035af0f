import { expect, it } from "vitest";
import type { LayQuestion } from "../../../../functions/lay.ts";
import {
  clothArea,
  coverText,
  leftOver,
  missingText,
  originSentence,
} from "../../../../src/app/lay/words.ts";
import { answerFrom } from "../../../../src/lay/answer.ts";

const question: LayQuestion = {
  pieces: [
    {
      name: "yoke",
      outline: [
        [0, 0],
        [20, 0],
        [20, 15],
        [0, 15],
      ],
      quantity: 3,
      turns: [0],
    },
  ],
  cloths: [{ name: "cloth", width: 40, length: 30 }],
  gap: 0,
  repeat: 0,
};

it("two yokes of 20 × 15 on a width of 40 cover three quarters of 20 in and leave 200 square inches", () => {
  const lay = answerFrom(question, [
    { piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 },
    { piece: 0, copy: 1, cloth: 0, turn: 0, x: 0, y: 15 },
  ]);
  expect(clothArea(question, lay)).toBe(800);
  expect(coverText(lay)).toBe("75 % covered");
  expect(leftOver(question, lay, "in")).toBe("200 sq in");
  expect(missingText(question, lay)).toBe("No place for 1 of yoke.");
});

it("a lay says how it was found, and whether for this very job", () => {
  const searched = { by: "search", seconds: 12 } as const;
  expect(originSentence(undefined, false)).toBe(
    "A quick lay, made at once: a search may find a shorter one.",
  );
  expect(originSentence(searched, true)).toBe("Searched for 12 s; the book keeps the lay.");
  expect(originSentence(searched, false)).toBe(
    "Searched for 12 s, for a larger job that this one fits into.",
  );
});
