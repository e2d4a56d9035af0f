import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const root = join(import.meta.dirname, "../../..");
const project = mkdtempSync(join(tmpdir(), "ellwand-package-"));
const run = (command: string, args: string[], cwd = project) =>
  execFileSync(command, args, { cwd, encoding: "utf8" });

/** Runs a module in the empty project and gives what it printed. */
function node(source: string): string {
  writeFileSync(join(project, "try.mjs"), source);
  return run(process.execPath, ["try.mjs"]).trim();
}

/** The command line as the installed package has it. */
const ellwand = (...args: string[]) => run(join(project, "node_modules/.bin/ellwand"), args);

describe("the packed tarball installed in an empty project", () => {
  beforeAll(() => {
    const packed = JSON.parse(
      run("npm", ["pack", "--json", "--loglevel=error", "--pack-destination", project], root),
    );
    writeFileSync(join(project, "package.json"), '{ "type": "module" }');
    // It brings all that it needs, so that no other package is fetched.
    const tarball = (packed[0] ?? Object.values(packed)[0]).filename;
    run("npm", ["install", "--offline", "--no-audit", "--no-fund", "--loglevel=error", `./${tarball}`]);
  });

  afterAll(() => rmSync(project, { recursive: true, force: true }));

  test("the functions alone need nothing else", () => {
    const printed = node(`
      import { catalogue, run, helpText } from "ellwand/functions";
      console.log(catalogue.size >= 65, run(catalogue.get("SPREAD_PER_GAP"), [16.5, 23.5, 5], { unit: "in" }));
      console.log(JSON.stringify(run(catalogue.get("SPREAD_PER_GAP"), [16.5, 23.5, 0], { unit: "in" })));
      console.log(helpText(catalogue.get("SEAM_GIRTH"), "cm").startsWith("SEAM_GIRTH("));`);
    expect(printed.split("\n")).toEqual([
      "true 1.4",
      '{"refusal":"sections must be at least 1, not 0","at":{"position":2,"cell":0}}',
      "true",
    ]);
  });

  test("register adds them all to a HyperFormula of one's own, the lay planner too", () => {
    symlinkSync(join(root, "node_modules/hyperformula"), join(project, "node_modules/hyperformula"));
    symlinkSync(join(root, "node_modules/chevrotain"), join(project, "node_modules/chevrotain"));
    const printed = node(`
      import { HyperFormula } from "hyperformula";
      import { register } from "ellwand/engine";
      register(HyperFormula);
      const hf = HyperFormula.buildFromArray(
        [["=SEAM_GIRTH(76,108,20,7)", '=YARDAGE(RECTANGLE(27,40),2,54)', "=IN(1)"]],
        { licenseKey: "gpl-v3", context: { unit: "cm" } });
      console.log(JSON.stringify(hf.getSheetValues(0)[0].map((one) => Number(one.toFixed(6)))));`);
    expect(printed).toBe("[80.788162,40,2.54]");
  });

  test("the command line runs from the installed package", () => {
    expect(ellwand("--version").trim()).toBe(
      JSON.parse(readFileSync(join(root, "package.json"), "utf8")).version,
    );
    expect(ellwand("calculate", "--formula", "=SPREAD_PER_GAP(16.5;23.5;5)").trim()).toBe("1.4");
    const installed = "node_modules/ellwand/templates";
    const answers = ["--answer", "neck=17", "--answer", "cape_length=36", "--out", "cape.json"];
    ellwand("begin", `${installed}/garments/cape.json`, ...answers);
    ellwand("print", `${installed}/peplum-bodice.json`, "--out", "pattern.pdf");
    expect(readFileSync(join(project, "pattern.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    ellwand("draft", "cape.json", "--out", "pieces");
    expect(readdirSync(join(project, "pieces")).some((name) => name.endsWith(".svg"))).toBe(true);
  });

  test("it serves the page, to this machine only, and nothing outside the page", async () => {
    const server = spawn(process.execPath, [
      join(project, "node_modules/ellwand/dist/command/main.js"),
      ...["serve", "--port", "0"],
    ]);
    try {
      const printed = await new Promise<string>((done, fail) => {
        server.stdout.once("data", (text) => done(String(text)));
        server.once("exit", (status) => fail(new Error(`it ended with ${status}`)));
      });
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(printed)![0];
      const page = await fetch(address);
      expect(page.headers.get("x-content-type-options")).toBe("nosniff");
      const html = await page.text();
      expect(html).toContain("Content-Security-Policy");
      const script = await fetch(new URL(/src="([^"]+)"/.exec(html)![1]!, address));
      expect([script.status, script.headers.get("content-type")]).toEqual([200, "text/javascript"]);
      for (const outside of [
        "..%2fcommand%2fmain.js",
        "%2e%2e/%2e%2e/package.json",
        "..%5c..%5cpackage.json",
      ])
        expect((await fetch(address + outside)).status).toBe(404);
    } finally {
      server.kill();
    }
  });

  test("its types hold in a strict project", () => {
    writeFileSync(
      join(project, "try.ts"),
      `import { catalogue, type Declaration, isRefused, run } from "ellwand/functions";
       import { register } from "ellwand/engine";
       const one: Declaration = catalogue.get("IN")!;
       const answer = run(one, [1], { unit: "cm" });
       export const length: number = isRefused(answer) ? 0 : Number(answer);
       export const add: (target: never) => void = register;`,
    );
    const args = [
      "--noEmit",
      "--strict",
      "--module",
      "nodenext",
      "--moduleResolution",
      "nodenext",
      "--target",
      "es2023",
      "--types",
      "",
      "try.ts",
    ];
    expect(run(process.execPath, [join(root, "node_modules/typescript/bin/tsc"), ...args])).toBe("");
  });
});
