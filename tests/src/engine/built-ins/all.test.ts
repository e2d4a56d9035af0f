import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { formulaTree } from "../../../../src/book/formula.ts";
import { builtIns } from "../../../../src/engine/built-ins/all.ts";
import { builtInText, exampleBook } from "../../../../src/engine/built-ins/built-in.ts";
import { Engine } from "../../../../src/engine/engine.ts";

const engine = new Engine(exampleBook(""), () => ({ refusal: "no lay is asked for here" }));

const shown = (formula: string) => {
  engine.become(exampleBook(formula));
  const view = engine.view({ page: 0, row: 0, column: 5 });
  return view.problem?.sentence ?? view.shown;
};

/** Something that an argument of this name may be. */
const given = (argument: string) => (/list|block|tested|cells|answers/.test(argument) ? "C1:C4" : "1");

describe("the built-in functions of the help", () => {
  it.each([...builtIns.values()].flatMap(({ examples }) => examples))(
    "$formula gives $gives, since $because",
    ({ formula, gives }) => {
      expect(shown(formula)).toBe(gives);
    },
  );

  it("one is explained as plain text with its arguments, its examples and the cells that they use", () => {
    const text = builtInText(builtIns.get("IF")!);
    expect(text).toMatch(/^IF\(test; if_true; \[if_false\]\)\nOne of two values/);
    expect(text).toContain("=IF(C3 >= 4; waist; hip) gives 28");
    expect(text).toContain("3  Cuff; linen; 4; 9; 2026-05-11");
  });

  it.each([...builtIns.values()])("$name is no sewing function, and its examples call it", (one) => {
    expect(catalogue.has(one.name)).toBe(false);
    for (const { formula } of one.examples.slice(0, 1)) expect(formula).toContain(`${one.name}(`);
    expect(formulaTree(one.examples[0]!.formula)).not.toBeNull();
  });

  it.each([...builtIns.values()].filter(({ takes }) => Object.keys(takes).length > 0))(
    "$name may be called with the arguments that are not in brackets, and with none fewer",
    ({ name, takes }) => {
      const needed = Object.keys(takes).filter((argument) => !argument.startsWith("["));
      expect(shown(`=${name}(${needed.map(given).join(";")})`)).not.toMatch(/arguments?/);
      expect(
        shown(
          `=${name}(${needed
            .slice(1)
            .map(() => "1")
            .join(";")})`,
        ),
      ).toMatch(/argument|read/);
    },
  );
});
