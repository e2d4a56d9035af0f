/** Which parts of React the page is built without. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { LEFT_OUT, leanReact } from "../../../src/setup/lean-react.ts";

it("the page's source uses nothing of React that is left out of the page", () => {
  const files = readdirSync("src/app", { recursive: true, encoding: "utf8" })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => readFileSync(`src/app/${path}`, "utf8"));
  const imported = files.flatMap((text) =>
    [...text.matchAll(/import (?:type )?\{([^}]*)\} from "(react|react-dom|react-dom\/client)"/g)].flatMap(
      ([, names]) =>
        names!.split(",").map(
          (name) =>
            name
              .replace(/\btype\b/, "")
              .trim()
              .split(" ")[0]!,
        ),
    ),
  );
  expect(imported).toContain("useState");
  expect(imported).toContain("createRoot");
  const features = ["hydrateRoot", "preload", "preloadModule", "preinit", "preinitModule", "preconnect"];
  expect(imported.filter((name) => [...features, ...Object.keys(LEFT_OUT)].includes(name))).toEqual([]);
  const shown = files.join("\n");
  expect(shown).toMatch(/<section\b/);
  // Elements that React takes out of their place, elements of one's own, and fragments with a reference.
  expect(shown).not.toMatch(/<(?:link|style|script|meta|[a-z]+-[a-z-]+)[\s>/]/);
  expect(shown).not.toMatch(/<Fragment[^>]*\bref=/);
  expect(shown).not.toMatch(/import \* as \w+ from "react|import React\b|unstable_/);
});

it("a function that React no longer has is named", () => {
  const code = readFileSync("node_modules/react-dom/cjs/react-dom-client.production.js", "utf8");
  expect(leanReact(code).length).toBeLessThan(0.9 * code.length);
  expect(() => leanReact(code.replace("function getResource(", "function renamed("))).toThrow(/getResource/);
});
