import { readdirSync, readFileSync } from "node:fs";
import { dirname, normalize } from "node:path";
import { expect, test } from "vitest";

// What each layer may import, itself aside; what is not named here may import nothing of ours.
const MAY: Record<string, readonly string[]> = {
  functions: [],
  book: ["functions"],
  engine: ["functions", "book"],
  lay: ["functions", "book"],
  exchange: ["functions", "book", "engine"],
  paper: ["functions", "book", "engine", "lay"],
  store: ["functions", "book", "engine"],
  worker: ["functions", "book", "engine", "lay", "exchange"],
  command: ["functions", "book", "engine", "lay", "exchange", "store", "paper", "languages", "package.json"],
  setup: ["functions"],
  package: ["functions", "book", "engine", "lay"],
  app: ["functions", "book", "engine", "lay", "exchange", "store", "worker", "paper", "languages"],
};

const layerOf = (path: string): string => path.replace(/^src\//, "").split("/")[0]!;

/** The files of ours that a file imports, as paths from the top. */
const importsOf = (file: string): string[] =>
  [...readFileSync(file, "utf8").matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map(([, path]) =>
    normalize(`${dirname(file)}/${path}`),
  );

test("no layer imports one above or beside it", () => {
  const files = ["functions", "src"].flatMap((top) =>
    readdirSync(top, { recursive: true, encoding: "utf8" })
      .filter((path) => /\.tsx?$/.test(path))
      .map((path) => `${top}/${path}`),
  );
  expect(files.length).toBeGreaterThan(100);
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((to) => layerOf(to) !== layerOf(file) && !MAY[layerOf(file)]?.includes(layerOf(to)))
      .map((to) => `${file} imports ${to}`),
  );
  expect(wrong).toEqual([]);
});

// Inside functions/: each line may import from the lines above it, and a room from itself. A file that
// stands in no room is named by itself; a capital letter begins a declaration, in the folder of its family.
const ROOMS: readonly (readonly string[])[] = [
  ["phrase"],
  ["verdict", "speech"],
  [
    "units",
    "decimal",
    "whole-number",
    "nearest-word",
    "number-text",
    "memo",
    "cautions",
    "sources",
    "compared-name",
    "compared-figures",
    "grouped",
  ],
  ["plain-rule", "refusal"],
  ["fractions"],
  ["geometry"],
  ["lay", "tape-mark", "marks-text", "survey"],
  ["pieces"],
  ["drawing"],
  ["worn"],
  ["define"],
  ["block", "said-of-function"],
  ["limits", "rounding", "drafting", "cutting", "wearers", "seams"],
  ["arguments"],
  ["unusual-arguments", "arguments-named", "FAMILY", "help"],
  ["run", "catalogue"],
  ["as-worn", "to-look-at"],
];

function roomOf(path: string): string {
  const [room = "", file] = path
    .replace(/^functions\//, "")
    .replace(/\.ts$/, "")
    .split("/");
  return file !== undefined && /^[A-Z]/.test(file) ? "FAMILY" : room;
}

test("inside functions/ imports go one way from room to room, and every file has its room", () => {
  const level = (room: string) => ROOMS.findIndex((names) => names.includes(room));
  const files = readdirSync("functions", { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts") && !path.endsWith(".d.ts"))
    .map((path) => `functions/${path}`);
  expect(files.filter((file) => level(roomOf(file)) < 0)).toEqual([]);
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((to) => roomOf(to) !== roomOf(file) && level(roomOf(to)) >= level(roomOf(file)))
      .map((to) => `${file} imports ${to}`),
  );
  expect(wrong).toEqual([]);
  // A function is a file by itself: it leans on rooms, never on another function.
  const beside = files
    .filter((file) => roomOf(file) === "FAMILY")
    .flatMap((file) =>
      importsOf(file)
        .filter((to) => roomOf(to) === "FAMILY")
        .map((to) => `${file} imports ${to}`),
    );
  expect(beside).toEqual([]);
});

// Inside app/: as in functions/, each line may import from the lines above it, and a room from itself.
const ROOMS_OF_APP: readonly (readonly string[])[] = [
  ["keyboard", "text-size", "phrase-with", "function-words"],
  [
    "function-texts",
    "store-hooks",
    "spoken",
    "rescue",
    "faults",
    "late-parts",
    "dialog",
    "menu",
    "measured",
    "offline",
    "progress",
    "reading",
  ],
  ["naming", "all-functions", "following"],
  ["files", "grid", "checks", "working", "lay"],
  ["drawing", "whatif", "begin", "help", "pages", "print", "import", "outlines", "language"],
  ["shell"],
  ["page", "first-screen"],
  ["main"],
];

test("inside app/ imports go one way from room to room, and the edit session knows nothing of the grid's view", () => {
  const roomOfApp = (path: string) => path.replace(/^src\/app\//, "").split(/[/.]/)[0]!;
  const level = (path: string) => ROOMS_OF_APP.findIndex((names) => names.includes(roomOfApp(path)));
  const files = readdirSync("src/app", { recursive: true, encoding: "utf8" })
    .filter((path) => /\.tsx?$/.test(path) && !path.endsWith(".d.ts"))
    .map((path) => `src/app/${path}`);
  expect(files.filter((file) => level(file) < 0)).toEqual([]);
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((to) => to.startsWith("src/app/") && roomOfApp(to) !== roomOfApp(file))
      .filter((to) => level(to) >= level(file))
      .map((to) => `${file} imports ${to}`),
  );
  expect(wrong).toEqual([]);
  expect(importsOf("src/app/grid/edit-session.ts")).not.toContain("src/app/grid/grid-view.ts");
});
