/**
 * Leaves parts of React out of the page that serve what the page does not use: pages that were rendered on a
 * server, view transitions, references to fragments, style sheets and scripts as elements, and a few more. The
 * functions that only these features call fail loudly in the page, those that look for such a feature find none,
 * and the bundler leaves out what only they need. tests/src/setup/lean-react.test.ts holds that the page's source uses none of the features.
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
    "pushTreeId",
  ],
  Activity: ["updateActivityComponent"],
  ViewTransition: [
    "startViewTransition",
    "applyViewTransitionToHostInstancesRecursive",
    "measureViewTransitionHostInstancesRecursive",
    "restoreViewTransitionName",
    "flushAfterMutationEffects",
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
  "html, head and body as elements": [
    "resolveSingletonInstance",
    "releaseSingletonInstance",
    "commitHostSingletonAcquisition",
  ],
  useActionState: [
    "mountActionState",
    "runActionStateAction",
    "dispatchActionState",
    "updateActionStateImpl",
    "rerenderActionState",
  ],
  useEffectEvent: ["useEffectEventImpl"],
  useOptimistic: ["dispatchOptimisticSetState"],
  useTransition: ["startTransition"],
  "functions as actions of forms": ["requestFormReset", "recursivelyResetForms", "startHostTransition"],
  compiler: ["useMemoCache"],
  SuspenseList: ["updateSuspenseListComponent", "initSuspenseListRenderState", "cutOffTailIfNeeded"],
  "elements of one's own": ["setPropOnCustomElement"],
};

/**
 * The functions that are called whatever the page uses, and that look for a feature which the page does not use:
 * each has only its answer for a page without that feature.
 */
export const ANSWERS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  hydration: { popHydrationState: "return false;", retryIfBlockedOn: "" },
  ViewTransition: {
    commitDeletedPairViewTransitions: "",
    commitExitViewTransitions: "",
    commitEnterViewTransitions: "",
    commitNestedViewTransitions: "",
    commitAppearingPairViewTransitions: "",
    restoreNestedViewTransitions: "",
    restoreEnterOrExitViewTransitions: "",
    restorePairedViewTransitions: "",
    measureNestedViewTransitions: "",
  },
  "style sheets and scripts as elements": { isHostHoistableType: "return false;" },
  createContext: {
    propagateContextChanges: "",
    propagateParentContextChanges: "return false;",
    checkIfContextChanged: "return false;",
  },
  "functions as actions of forms": { extractEvents$1: "" },
  "events that the browser does not have by the same name": {
    getNativeBeforeInputChars: "return null;",
    getFallbackBeforeInputChars: "return null;",
    accumulateEnterLeaveListenersForEvent: "",
  },
  "the names of the components round a fault": { getStackByFiberInDevAndProd: 'return "";' },
  "the browser's own sign of a transition": { defaultOnDefaultTransitionIndicator: "" },
};

/** Statements that are left out: what these names are given. */
const STATEMENTS =
  /^(?:exports\.hydrateRoot|ReactDOMSharedInternals\.findDOMNode|FragmentInstance\.prototype\.\w+) = /;

/** The library's module without what is left out; fails where it no longer has a function that is named here. */
export function leanReact(code: string): string {
  const bodies = new Map([
    ...Object.entries(LEFT_OUT).flatMap(([feature, names]) =>
      names.map(
        (name) =>
          [
            name,
            `throw Error(${JSON.stringify(`React's ${feature}: see src/setup/lean-react.ts`)});`,
          ] as const,
      ),
    ),
    ...Object.values(ANSWERS).flatMap((answers) => Object.entries(answers)),
  ]);
  let text = "";
  let at = 0;
  for (const statement of parsed(code).body as Part[]) {
    const { start, end } = statement;
    const given = bodies.get(nameOf(statement.id));
    if (statement.type === "FunctionDeclaration" && given !== undefined) {
      bodies.delete(nameOf(statement.id));
      const body = statement.body as Part;
      text += `${code.slice(at, body.start)}{ ${given} }`;
      at = end;
    } else if (STATEMENTS.test(code.slice(start, start + 200))) {
      text += code.slice(at, start);
      at = end;
    }
  }
  if (bodies.size > 0)
    throw new Error(`React has changed: see src/setup/lean-react.ts (${[...bodies.keys()].join(", ")})`);
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
