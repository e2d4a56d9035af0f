/** Which methods of HyperFormula the page is built with. */
import { expect, it } from "vitest";
import { parsed } from "../../../src/setup/program-parts.ts";
import { namesInUse, withoutUncalled } from "../../../src/setup/uncalled-methods.ts";

const library = `
class Book {
  constructor() { this.begin(); }
  begin() {}
  asked() { this.behindAsked(); }
  behindAsked() {}
  unasked() { this.unasked(); this.behindUnasked(); }
  behindUnasked() {}
  byText() {}
  apart() {}
  toString() { return "a book"; }
}
function Old() {}
Old.prototype.asked = function () { return 1; };
Old.prototype.unasked = function () { return 2; };
`;

it("a method that nothing names is left out, with what only such methods name", () => {
  const caller = 'book.asked(); book["byText"](); const { apart } = book; const said = "unasked as a word";';
  const inUse = namesInUse([library, caller].map((code) => parsed(code)));
  const kept = withoutUncalled(library, parsed(library), inUse);
  const methods = new Function(`${kept}; return [Book, Old].map((one) => Object.keys(
    Object.getOwnPropertyDescriptors(one.prototype)).filter((name) => name !== "constructor"))`)();
  expect(methods).toEqual([["begin", "asked", "behindAsked", "byText", "apart", "toString"], ["asked"]]);
});
