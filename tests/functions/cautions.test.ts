import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { BONING, CORDS, FLAME, HOOPS, LACING } from "../../functions/cautions.ts";

const told = ({ name, summary }: { name: string; summary: string }) =>
  `${name.replaceAll("_", " ")} ${summary}`.toLowerCase();

test.each([
  ["lacing or eyelets", /\blacing\b|\blaced\b|\beyelets?\b|\bcorset\b/, /hinder breathing.*numbness/],
  ["bones and boning", /\bbones?\b|\bboning\b/, /hinder breathing.*licensed/],
  ["drawstrings, capes and their ties", /\bdrawstring\b|\bcloak\b/, /neck or hood.*local rules/],
  ["hoops to be worn", /^hoop\b/, /local fire code/],
  ["hangings on a stage", /\bfestoon\b|\bhanging\b for/, /local fire code/],
] as const)("a function that speaks of %s says the usual caution", (_, words, caution) => {
  const found = [...catalogue.values()].filter((one) => words.test(told(one)));
  expect(found.length).toBeGreaterThan(0);
  for (const { name, cautions } of found) expect(cautions ?? "", name).toMatch(caution);
});

test("every shared caution stops at pain or defers to local rules and whoever is responsible", () => {
  for (const text of [LACING, BONING]) expect(text).toMatch(/pain.*numbness/);
  expect(CORDS).toMatch(/EN 14682, 16 CFR 1120/);
  for (const text of [FLAME, HOOPS]) expect(text).toMatch(/venue's rules and the local fire code/);
});
