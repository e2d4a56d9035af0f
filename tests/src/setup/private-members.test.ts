/** How the grid's library gets its private members back. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { withPrivateMembers } from "../../../src/setup/private-members.ts";

/** The functions that swc puts into every module, from one of the library's own. */
const library = readFileSync("node_modules/handsontable/focusManager/grid.mjs", "utf8");
const helpers = library.slice(0, library.indexOf("import "));

const sample = `${helpers}
var _count = new WeakMap(), _step = new WeakMap(), _add = new WeakSet(), _twice = new WeakSet();
class Counter {
  run() {
    _class_private_method_get(this, _add, add).call(this, _class_private_field_get(this, _step));
    _class_private_field_set(this, _count, _class_private_field_get(this, _count) + 1);
    return [_class_private_field_get(this, _count), [1, 2].map(_class_private_method_get(this, _twice, twice))];
  }
  constructor(step) {
    _class_private_method_init(this, _add), _class_private_method_init(this, _twice);
    _class_private_field_init(this, _count, { writable: true, value: 10 });
    _class_private_field_init(this, _step, { writable: true, value: void 0 });
    _class_private_field_set(this, _step, step);
  }
}
function add(much) {
  _class_private_field_set(this, _count, _class_private_field_get(this, _count) + much);
}
function twice(one) {
  return 2 * one;
}`;

it("a class with members in WeakMaps does the same with private members", () => {
  const changed = withPrivateMembers(sample)!;
  expect(changed).toContain("this.#add(this.#step)");
  expect(changed.slice(helpers.length)).not.toContain("_class_private");
  const ran = (code: string) => new Function(`${code}; return new Counter(5).run()`)();
  expect(ran(changed)).toEqual(ran(sample));
  expect(ran(changed)).toEqual([16, [2, 4]]);
});

it("a module that is not as swc writes it stays as it is", () => {
  expect(withPrivateMembers("export class Plain { #a = 1 }")).toBeNull();
  // A method that is called as a plain function too has to stay outside of its class.
  expect(withPrivateMembers(`${sample}\ntwice(2);`)).toBeNull();
  // Asking whether an object has the member needs the WeakMap.
  expect(withPrivateMembers(`${sample}\n_count.has({});`)).toBeNull();
  expect(withPrivateMembers(sample.replace("writable: true, value: 10", "get: add"))).toBeNull();
});

it("a module of the library is read so", () => {
  expect(withPrivateMembers(library)).toContain("this.#getSelectedCell(");
});
