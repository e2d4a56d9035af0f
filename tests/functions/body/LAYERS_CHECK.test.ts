import { expect, test } from "vitest";
import { LAYERS_CHECK } from "../../../functions/body/LAYERS_CHECK.ts";
import { run } from "../../../functions/run.ts";

const check = (a: string | null, b: string | null) => run(LAYERS_CHECK, [a, b], { unit: "in" });

test("the same layers in other words and another order are the same", () => {
  expect(check("shift, stays and hip pad", "Hip pad over stays + shift")).toBe("ok");
  expect(check("skin", "nothing")).toBe("ok");
  expect(check("the stays only", "stays")).toBe("ok");
});

test("it tells which layers are under the one and not under the other", () => {
  expect(check("shift", "shift, stays, bum roll")).toBe(
    "check: the second has stays and bum roll under it, the first does not; please measure both over the same layers",
  );
  expect(check("skin", "shift")).toMatch(/^check: the second has shift/);
  expect(check("shift, corset", "shift, stays")).toBe(
    "check: the first has corset under it, the second does not; the second has stays under it, the first does not; please measure both over the same layers",
  );
});

test("layers nobody wrote down are asked for", () => {
  expect(check(null, "shift")).toMatchObject({ refusal: "first_layers is empty: a text is needed there" });
  expect(check("shift", " ")).toMatchObject({
    refusal: 'second_layers is empty: say over which layers it was taken, or "skin"',
  });
});
