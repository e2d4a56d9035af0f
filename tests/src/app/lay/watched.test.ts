import { expect, test } from "vitest";
import { onePerStore, Watched } from "../../../../src/app/lay/watched.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { Store } from "../../../../src/store/store.ts";

class Count extends Watched<number> {
  up(): void {
    this.become(this.state() + 1);
  }
}

test("a listener hears each new state until it is taken off, also one that takes itself off", () => {
  const count = new Count(0);
  const heard: string[] = [];
  const offs = ["first", "second"].map((name) =>
    count.subscribe(() => {
      heard.push(`${name} ${count.state()}`);
      if (name === "first") offs[0]!();
    }),
  );
  count.up();
  count.up();
  offs[1]!();
  count.up();
  expect(heard).toEqual(["first 1", "second 1", "second 2"]);
});

test("each store has one object of its own", () => {
  let made = 0;
  const of = onePerStore(() => {
    made += 1;
    return made;
  });
  const [one, other] = ["The sea chest", "The well"].map(
    (title) => new Store(blankBook(title, "cm", "1 mm"), layDesk),
  );
  expect([of(one!), of(other!), of(one!), of(other!)]).toEqual([1, 2, 1, 2]);
});
