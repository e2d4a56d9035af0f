import { expect, test } from "vitest";
import { fitOf } from "../../../../src/app/lay/picture-scale.ts";

test("one lay fills the width or the height, whichever it meets first", () => {
  expect(fitOf([{ long: 100, wide: 10 }], { width: 418, height: 300 })).toEqual({ scale: 4, abreast: false });
  expect(fitOf([{ long: 10, wide: 100 }], { width: 418, height: 300 })).toEqual({ scale: 3, abreast: false });
});

test("two short lays stand abreast within the width, two long ones under one another at a scale they share", () => {
  const short = fitOf([{ long: 43, wide: 45 }, { long: 32, wide: 58 }], { width: 450, height: 300 }); // biome-ignore format: a pair
  expect(short.abreast).toBe(true);
  expect((43 + 32) * short.scale).toBeLessThan(450);
  expect(58 * short.scale).toBeLessThanOrEqual(300);
  const long = fitOf([{ long: 200, wide: 45 }, { long: 180, wide: 58 }], { width: 418, height: 300 }); // biome-ignore format: a pair
  expect(long).toEqual({ scale: 2, abreast: false });
});
