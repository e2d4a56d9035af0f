import { describe, expect, it } from "vitest";
import { fileName, openFile } from "../../../../src/app/files/disk.ts";

describe("the name of a book's file", () => {
  it.each([
    ["The squire's cloak, no. 2", "the-squires-cloak-no-2.json"],
    ["  Jupe à l’étage  ", "jupe-a-letage.json"],
    ["../../etc/passwd", "etc-passwd.json"],
    ["蔵の衣装", "蔵の衣装.json"],
    ["???", "book.json"],
    ["a".repeat(300), `${"a".repeat(60)}.json`],
  ])("%s is kept as %s", (title, name) => {
    expect(fileName(title)).toBe(name);
  });
});

describe("a file", () => {
  it("that is no book is refused in a sentence", async () => {
    expect(await openFile(new File(["not a book"], "x.json"))).toEqual({
      reason: expect.stringContaining("not a book"),
    });
  });

  it("that can't be read is refused in a sentence", async () => {
    const gone = { slice: () => ({ text: () => Promise.reject(new Error("gone")) }) } as unknown as File;
    expect(await openFile(gone)).toEqual({ reason: expect.stringContaining("could not read it") });
  });
});
