/**
 * Names the tests that failed and passed only when they ran once more: no failure of the run, but mostly a
 * fault of the page that comes by chance, and never to be passed over in silence.
 */

/** A reporter of vitest. */
export default class SecondAttempts {
  onTestRunEnd(modules) {
    const found = modules
      .flatMap((module) => [...module.children.allTests("passed")])
      .filter((test) => test.diagnostic()?.flaky);
    if (found.length === 0) return;
    process.stdout.write("Passed only at the second attempt:\n");
    for (const test of found) {
      const [first] = test.result().errors ?? [];
      const why = first ? `: ${first.message.split("\n")[0]}` : "";
      process.stdout.write(`  ${test.module.relativeModuleId}, “${test.fullName}”${why}\n`);
    }
  }
}
