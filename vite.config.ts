import { builtinModules } from "node:module";
import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { firstScreen } from "./src/setup/first-screen.ts";
import { functionTexts } from "./src/setup/function-texts.ts";
import { innerLoop } from "./src/setup/inner-loop.ts";
import { lateFunctions } from "./src/setup/late-functions.ts";
import { cutLibraries, leanLibraries } from "./src/setup/lean-libraries.ts";
import { reactParts } from "./src/setup/lean-react.ts";
import { notices } from "./src/setup/notices.ts";
import { offline, WORKER } from "./src/setup/offline.ts";
import { privateMembers } from "./src/setup/private-members.ts";
import { engineOfTests, sharedParser } from "./src/setup/shared-parser.ts";
import { sharedWorkers } from "./src/setup/shared-workers.ts";
import { startChunk } from "./src/setup/start-chunks.ts";
import { catalogues, commandCatalogues } from "./src/setup/strings/plugin.ts";
import { uncalledMethods } from "./src/setup/uncalled-methods.ts";
import { LongestFirst } from "./tests/order.ts";

/** What makes the libraries smaller in the page. */
const lean = [leanLibraries, privateMembers, uncalledMethods, cutLibraries, reactParts];

const licences = notices(import.meta.dirname, "notices.txt");

/** What is built for Node, by mode: each entry becomes one file. */
const PROGRAMS: Record<string, Record<string, string>> = {
  command: { main: "src/command/program.ts", "search-thread": "src/command/search-thread.ts" },
  attack: { program: "tests/attack/program.ts", worker: "tests/attack/worker.ts" },
};

/** The page, or with `--mode command` the command line as one file for Node. */
export default defineConfig(({ mode }) =>
  Object.hasOwn(PROGRAMS, mode)
    ? {
        ssr: { noExternal: true, external: [...builtinModules] },
        plugins: [
          sharedParser,
          innerLoop,
          ...(mode === "command" ? [licences, commandCatalogues(import.meta.dirname)] : []),
        ],
        build: {
          ssr: true,
          outDir: `dist/${mode}`,
          target: "node20",
          copyPublicDir: false,
          rolldownOptions: {
            input: PROGRAMS[mode]!,
            output: {
              // The packed library starts it as a program of its own.
              banner: ({ name, isEntry }) => (isEntry && name === "main" ? "#!/usr/bin/env node" : ""),
              // Every part finds the page and the threads beside it.
              chunkFileNames: "[name]-[hash].js",
            },
          },
        },
      }
    : mode === "package"
      ? {
          build: {
            outDir: "dist/package",
            target: "es2022",
            minify: false,
            copyPublicDir: false,
            lib: {
              entry: { functions: "src/package/functions.ts", engine: "src/package/engine.ts" },
              formats: ["es"],
            },
            rolldownOptions: { external: ["hyperformula"] },
          },
        }
      : {
          root: mode === "test" ? import.meta.dirname : `${import.meta.dirname}/src/app`,
          base: "./",
          plugins: [
            ...lean,
            lateFunctions,
            functionTexts,
            sharedParser,
            sharedWorkers,
            innerLoop,
            licences,
            catalogues(import.meta.dirname),
            firstScreen,
            offline,
            ...(mode === "test" ? [engineOfTests] : []),
          ],
          build: {
            outDir: "../../dist/app",
            emptyOutDir: true,
            target: "es2023",
            // The page's largest parts are its libraries; the tests hold what is loaded at first.
            chunkSizeWarningLimit: 2000,
            modulePreload: {
              polyfill: false,
              // A worker has no document to preload with. The page's first script asks for all that the start needs at once.
              resolveDependencies: (_file, deps, { hostId, hostType }) =>
                hostType === "html" || /^assets\/index-/.test(hostId)
                  ? deps
                  : deps.filter((one) => one.endsWith(".css")),
            },
            rolldownOptions: {
              input: {
                index: `${import.meta.dirname}/src/app/index.html`,
                "service-worker": `${import.meta.dirname}/src/app/offline/service-worker.ts`,
              },
              output: {
                // Its name stays, so that a browser finds the next one.
                entryFileNames: ({ name }) =>
                  name === "service-worker" ? WORKER : "assets/[name]-[hash].js",
                codeSplitting: {
                  includeDependenciesRecursively: false,
                  groups: [{ name: startChunk, debugName: "start" }],
                },
              },
            },
          },
          test: {
            // A hung test ends; a slow machine is no failure.
            testTimeout: 240_000,
            hookTimeout: 240_000,
            // What is waited for is there at once on a quiet machine; only a failure waits so long.
            expect: { poll: { timeout: 40_000 } },
            // The engine and the catalogue are loaded once for each worker, not once for each file.
            isolate: false,
            sequence: { sequencer: LongestFirst },
            // The tests of the page wait for the browser half of the time: more workers than there are cores.
            maxWorkers: Math.max(2, availableParallelism()) + 1,
            projects: [
              {
                extends: true,
                test: {
                  name: "browser",
                  include: ["tests/browser/**/*.test.ts"],
                  globalSetup: "tests/browser/chromium.ts",
                  // A busy machine may be too late once; what needed it is named at the end (second-attempts.mjs).
                  retry: process.env.ONCE ? 0 : 1,
                },
              },
              {
                extends: true,
                test: { name: "node", include: ["tests/{functions,src}/**/*.test.ts", "tests/*.test.ts"] },
              },
            ],
          },
        },
);
