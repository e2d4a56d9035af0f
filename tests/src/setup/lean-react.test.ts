/** Which parts of React the page is built without. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { ANSWERS, LEFT_OUT, leanReact } from "../../../src/setup/lean-react.ts";

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
  const features = [
    ...["hydrateRoot", "preload", "preloadModule", "preinit", "preinitModule", "preconnect"],
    ...["useContext", "use", "useFormStatus", "useFormState", "requestFormReset"],
    ...Object.keys(LEFT_OUT),
    ...Object.keys(ANSWERS),
  ];
  expect(imported.filter((name) => features.includes(name))).toEqual([]);
  const shown = files.join("\n");
  expect(shown).toMatch(/<section\b/);
  // Elements that React takes out of their place, elements of one's own, and fragments with a reference.
  expect(shown).not.toMatch(/<(?:link|style|script|meta|[a-z]+-[a-z-]+)[\s>/]/);
  expect(shown).not.toMatch(/<(?:html|head|body)[\s>]/);
  // A title is that of a drawing.
  expect(files.filter((text) => /<title\b/.test(text) && !/<(?:svg|g|path)\b/.test(text))).toEqual([]);
  // Forms whose act is a function, events that React makes of others, and the names of components round a fault.
  expect(shown).not.toMatch(/\b(?:action|formAction)=\{|componentStack/);
  expect(shown).toMatch(/\bonPointerDown=/);
  expect(shown).not.toMatch(/\bon(?:(?:Mouse|Pointer)(?:Enter|Leave)|BeforeInput|Composition\w+)\b/);
  expect(shown).not.toMatch(/<Fragment[^>]*\bref=/);
  expect(shown).not.toMatch(/import \* as \w+ from "react|import React\b|unstable_/);
});

it("a function that React no longer has is named", () => {
  const code = readFileSync("node_modules/react-dom/cjs/react-dom-client.production.js", "utf8");
  expect(leanReact(code).length).toBeLessThan(0.9 * code.length);
  expect(() => leanReact(code.replace("function getResource(", "function renamed("))).toThrow(/getResource/);
  expect(() => leanReact(code.replace("function popHydrationState(", "function other("))).toThrow(
    /popHydrationState/,
  );
});
