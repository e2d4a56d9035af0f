import { readdirSync, readFileSync } from "node:fs";
import { dirname, normalize } from "node:path";
import { expect, test } from "vitest";

// What each layer may import, itself aside; what is not named here may import nothing of ours.
const MAY: Record<string, readonly string[]> = {
  functions: [],
  book: ["functions"],
  engine: ["functions", "book"],
  lay: ["functions", "book"],
  store: ["functions", "book", "engine"],
  worker: ["functions", "book", "engine", "lay"],
  command: ["functions", "book", "engine", "lay", "store"],
  package: ["functions", "book", "engine", "lay"],
  app: ["functions", "book", "engine", "lay", "store", "worker"],
};

const layerOf = (path: string): string => path.replace(/^src\//, "").split("/")[0]!;

test("no layer imports one above or beside it", () => {
  const files = ["functions", "src"].flatMap((top) =>
    readdirSync(top, { recursive: true, encoding: "utf8" })
      .filter((path) => /\.tsx?$/.test(path))
      .map((path) => `${top}/${path}`),
  );
  expect(files.length).toBeGreaterThan(100);
  const wrong = files.flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)]
      .map(([, path]) => normalize(`${dirname(file)}/${path}`))
      .filter((to) => layerOf(to) !== layerOf(file) && !MAY[layerOf(file)]?.includes(layerOf(to)))
      .map((to) => `${file} imports ${to}`),
  );
  expect(wrong).toEqual([]);
});
