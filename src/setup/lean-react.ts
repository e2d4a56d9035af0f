/**
 * Leaves parts of React out of the page that serve what the page does not use: pages that were rendered on a
 * server, view transitions, references to fragments, style sheets and scripts as elements, and a few more. The
 * functions that only these features call fail loudly in the page, and the bundler leaves out what only they
 * need. tests/src/setup/lean-react.test.ts holds that the page's source uses none of the features.
 */
import type { Plugin } from "vite";
import { nameOf, type Part, parsed } from "./program-parts.ts";

/** The functions that are left out, by the feature that calls them. */
export const LEFT_OUT: Readonly<Record<string, readonly string[]>> = {
  hydration: [
    "updateDehydratedSuspenseComponent",
    "canHydrateInstance",
    "prepareToHydrateHostInstance",
    "clearHydrationBoundary",
    "hideOrUnhideDehydratedBoundary",
    "attemptExplicitHydrationTarget",
    "attemptReplayContinuousQueuedEvent",
    "accumulateOrCreateContinuousQueuedReplayableEvent",
    "queueIfContinuousEvent",
    "getHydratableHoistableCache",
  ],
  Activity: ["updateActivityComponent"],
  ViewTransition: [
    "startViewTransition",
    "applyViewTransitionToHostInstancesRecursive",
    "measureViewTransitionHostInstancesRecursive",
    "restoreViewTransitionName",
  ],
  "references to fragments": ["commitNewChildToFragmentInstance", "deleteChildFromFragmentInstance"],
  "style sheets and scripts as elements": [
    "getResource",
    "acquireResource",
    "preload",
    "preloadModule",
    "preloadStylesheet",
    "preinitStyle",
    "preinitScript",
    "preinitModuleScript",
    "preconnectAs",
    "suspendResource",
    "insertStylesheetIntoRoot",
    "insertStylesheet",
  ],
  useActionState: ["mountActionState", "runActionStateAction", "dispatchActionState"],
  SuspenseList: ["updateSuspenseListComponent", "initSuspenseListRenderState", "cutOffTailIfNeeded"],
  "elements of one's own": ["setPropOnCustomElement"],
};

/** Statements that are left out: what these names are given. */
const STATEMENTS = /^(?:exports\.hydrateRoot|FragmentInstance\.prototype\.\w+) = /;

/** The library's module without what is left out; fails where it no longer has a function that is named here. */
export function leanReact(code: string): string {
  const features = new Map(
    Object.entries(LEFT_OUT).flatMap(([feature, names]) => names.map((name) => [name, feature] as const)),
  );
  let text = "";
  let at = 0;
  for (const statement of parsed(code).body as Part[]) {
    const { start, end } = statement;
    const feature = features.get(nameOf(statement.id));
    if (statement.type === "FunctionDeclaration" && feature) {
      features.delete(nameOf(statement.id));
      const body = statement.body as Part;
      text += `${code.slice(at, body.start)}{ throw Error("React's ${feature}: see src/setup/lean-react.ts"); }`;
      at = end;
    } else if (STATEMENTS.test(code.slice(start, start + 200))) {
      text += code.slice(at, start);
      at = end;
    }
  }
  if (features.size > 0)
    throw new Error(`React has changed: see src/setup/lean-react.ts (${[...features.keys()].join(", ")})`);
  return text + code.slice(at);
}

export const reactParts: Plugin = {
  name: "lean-react",
  apply: "build",
  transform: (code, id) =>
    /\/react-dom\/cjs\/react-dom-client\.production\.js$/.test(id.replaceAll("\\", "/"))
      ? { code: leanReact(code), map: null }
      : null,
};
