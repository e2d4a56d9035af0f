/**
 * Gives the grid's library its private members back. The library comes as swc writes it for old browsers:
 * every module has nine functions of its own that keep private members in WeakMaps, 1.5 kB each time, and
 * every reading of a member calls three of them. Here `_class_private_field_get(this, _hot)` becomes
 * `this.#hot`, and a private method goes back into its class. A module of any other shape stays as it is.
 */
import type { Plugin } from "vite";
import { nameOf, type Part, parsed, partsIn } from "./program-parts.ts";

/** A call of one of swc's functions. */
interface HelperCall {
  readonly helper: string;
  readonly call: Part;
  readonly given: readonly Part[];
  /** The body of the class round the call, or the function of the module; null for none. */
  readonly within: Part | null;
  /** The call of which this is what is called, as in `_class_private_method_get(…).call(this, 1)`. */
  readonly calledBy: Part | null;
}

/** All calls of swc's functions in a program, the outer ones first, and how often each name is used. */
function look(program: Part) {
  const found: HelperCall[] = [];
  const uses = new Map<string, number>();
  const see = (part: Part, within: Part | null, calledBy: Part | null): void => {
    uses.set(nameOf(part), (uses.get(nameOf(part)) ?? 0) + 1);
    const [, helper] = /^_class_private_(\w+)$/.exec(nameOf(part.callee)) ?? [];
    if (helper) found.push({ helper, call: part, given: part.arguments as Part[], within, calledBy });
    const inside =
      part.type === "ClassBody" || (within === null && part.type === "FunctionDeclaration") ? part : within;
    for (const [field, one] of partsIn(part)) {
      if ((field === "property" || field === "key") && part.computed !== true) continue;
      const isCalled =
        (part.type === "CallExpression" && field === "callee") ||
        (part.type === "MemberExpression" && nameOf(part.property) === "call" && field === "object");
      see(one, inside, isCalled ? (part.type === "CallExpression" ? part : calledBy) : null);
    }
  };
  see(program, null, null);
  return { found, uses };
}

/** The value in `{ writable: true, value: … }`, which a member has at first. */
function firstValue(descriptor: Part | undefined): Part | null {
  const properties = (descriptor?.properties ?? []) as Part[];
  const names = properties.map(({ key }) => nameOf(key)).join();
  return names === "writable,value" ? (properties[1]!.value as Part) : null;
}

/** The module with private members; null when it has none, or when anything in it is not as swc writes them. */
export function withPrivateMembers(code: string): string | null {
  if (!code.includes("function _class_private_")) return null;
  const program = parsed(code);
  const functions = new Map(
    (program.body as Part[])
      .filter(({ type }) => type === "FunctionDeclaration")
      .map((part) => [nameOf(part.id), part]),
  );
  const isHelper = (part: Part | null) => /^_(?:class|check)_/.test(nameOf(part?.id));
  const { found, uses } = look(program);
  const calls = found.filter(({ within }) => !isHelper(within));

  /** The class of each member, and the function of each private method. */
  const classOf = new Map<string, Part>();
  const methods = new Map<string, Part>();
  for (const { helper, given, within } of calls) {
    const [, member, third] = given;
    if (helper.endsWith("_init") && within?.type === "ClassBody") classOf.set(nameOf(member), within);
    if (helper !== "method_get") continue;
    const method = functions.get(nameOf(third));
    if (!method) return null;
    methods.set(nameOf(member), method);
  }
  // What asks `_count.has(this)` needs the WeakMap itself.
  for (const member of classOf.keys()) {
    const inCalls = calls.filter(({ given }) => nameOf(given[1]) === member).length;
    if (uses.get(member) !== inCalls + 1) return null;
  }
  const homes = new Map<Part, Part>();
  for (const [member, method] of methods) {
    const home = classOf.get(member);
    // A method that is used by its name elsewhere has to stay where it is.
    const gets = calls.filter(({ given }) => nameOf(given[2]) === nameOf(method.id)).length;
    if (!home || uses.get(nameOf(method.id)) !== gets + 1) return null;
    homes.set(method, home);
  }

  const edits: (readonly [from: number, to: number, text: string])[] = [];
  for (const { helper, call, given, within, calledBy } of calls) {
    const [object, member, third] = given as [Part, Part, Part | undefined];
    const home = classOf.get(nameOf(member));
    if (!home || (within !== home && (!within || homes.get(within) !== home))) return null;
    const name = `#${nameOf(member).slice(1)}`;
    const [open, close] = object.type === "ThisExpression" ? ["", ""] : ["(", ")"];
    const first = helper === "field_init" ? firstValue(third) : null;
    const passed = (calledBy?.arguments ?? []) as Part[];
    if (first) edits.push([call.start, first.start, `this.${name} = `], [first.end, call.end, ""]);
    else if (helper === "method_init") edits.push([call.start, call.end, "0"]);
    else if (helper === "field_get" || helper === "method_get") {
      const [self, argument] = passed;
      const isOwn = object.type === "ThisExpression" && self?.type === "ThisExpression";
      edits.push([call.start, object.start, open]);
      if (helper === "method_get" && calledBy && isOwn)
        edits.push([object.end, argument?.start ?? calledBy.end - 1, `.${name}(`]);
      else edits.push([object.end, call.end, `${close}.${name}`]);
    } else if (helper === "field_set" && third)
      edits.push(
        [call.start, object.start, `(${open}`],
        [object.end, third.start, `${close}.${name} = `],
        [third.end, call.end, ")"],
      );
    else return null;
  }

  edits.sort(([a], [b]) => a - b);
  /** A part of the module with the edits of what stands in it. */
  const edited = (from: number, to: number): string => {
    let text = "";
    let at = from;
    for (const [start, end, by] of edits) {
      if (start < at || end > to) continue;
      text += code.slice(at, start) + by;
      at = end;
    }
    return text + code.slice(at, to);
  };
  const moved = [...methods].map(([member, method]) => {
    const { start, end } = method.id as Part;
    const kind = code.slice(method.start, start).replace("function", "");
    return { method, home: homes.get(method)!, text: `${kind}#${member.slice(1)}${edited(end, method.end)}` };
  });
  for (const { method, home, text } of moved)
    edits.push([method.start, method.end, ""], [home.start + 1, home.start + 1, `\n${text}\n`]);
  for (const { helper, given } of calls)
    if (helper === "field_init") {
      const member = nameOf(given[1]);
      const { start } = classOf.get(member)!;
      edits.push([start + 1, start + 1, `\n#${member.slice(1)};`]);
    }
  edits.sort(([a], [b]) => a - b);
  return edited(0, code.length);
}

export const privateMembers: Plugin = {
  name: "private-members",
  apply: "build",
  transform(code, id) {
    const changed = /\/handsontable\/.*\.mjs$/.test(id) ? withPrivateMembers(code) : null;
    return changed === null ? null : { code: changed, map: null };
  },
};
