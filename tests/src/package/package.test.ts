import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
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

describe("the packed tarball in an empty project", () => {
  beforeAll(() => {
    const packed = JSON.parse(
      run("npm", ["pack", "--json", "--loglevel=error", "--pack-destination", project], root),
    );
    mkdirSync(join(project, "node_modules"));
    run("tar", ["-xzf", (packed[0] ?? Object.values(packed)[0]).filename]);
    cpSync(join(project, "package"), join(project, "node_modules/ellwand"), { recursive: true });
    writeFileSync(join(project, "package.json"), '{ "type": "module" }');
  }, 120_000);

  afterAll(() => rmSync(project, { recursive: true, force: true }));

  test("the functions alone need nothing else", () => {
    const printed = node(`
      import { catalogue, run, helpText } from "ellwand/functions";
      console.log(catalogue.size >= 65, run(catalogue.get("SPREAD_PER_GAP"), [16.5, 23.5, 5], { unit: "in" }));
      console.log(JSON.stringify(run(catalogue.get("SPREAD_PER_GAP"), [16.5, 23.5, 0], { unit: "in" })));
      console.log(helpText(catalogue.get("SEAM_GIRTH"), "cm").startsWith("SEAM_GIRTH("));`);
    expect(printed.split("\n")).toEqual([
      "true 1.4",
      '{"refusal":"sections must be at least 1, not 0"}',
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
