/**
 * Leaves out the methods of HyperFormula, and of the parser inside it, that nothing calls. A bundler keeps a
 * class whole, since any of its methods may be called; here a method is kept when code that is itself kept
 * names it, be it as a member or as a text of this one word, on any object. HyperFormula calls methods by
 * no other names: it puts none together at run time.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";
import { nameOf, type Part, parsed, partsIn } from "./program-parts.ts";

const ROOT = join(import.meta.dirname, "../..");

/** The modules whose methods are looked at. */
const LIBRARIES: readonly string[] = ["node_modules/hyperformula/es", "node_modules/chevrotain/lib_esm/src"];

/** What uses them: the engine, what reads and writes spreadsheets, and the packages that they are made of. */
const CALLERS: readonly string[] = [
  "src/engine",
  "src/exchange",
  "node_modules/regexp-to-ast/lib",
  "node_modules/tiny-emitter",
];

/** A method that can be left out: `name() {}` in a class, or `Class.prototype.name = function () {}`. */
interface Method {
  readonly name: string;
  readonly part: Part;
}

/** Names that the language calls by itself, such as `toString` and `next`: those of its own objects. */
const LANGUAGE: ReadonlySet<string> = new Set(
  Object.getOwnPropertyNames(globalThis).flatMap((name) => {
    const { value } = Object.getOwnPropertyDescriptor(globalThis, name)!;
    return [value, value?.prototype].flatMap((one) => (one ? Object.getOwnPropertyNames(Object(one)) : []));
  }),
);

function methodOf(part: Part): Method | null {
  if (part.type === "MethodDefinition" && !part.computed && part.kind !== "constructor")
    return nameOf(part.key) ? { name: nameOf(part.key), part } : null;
  const { expression } = part as { expression?: Part };
  if (part.type !== "ExpressionStatement" || expression?.type !== "AssignmentExpression") return null;
  const { left, right } = expression as Part & { left: Part; right: Part };
  const isPrototype = nameOf((left.object as Part | undefined)?.property) === "prototype";
  return isPrototype && right.type === "FunctionExpression" && !left.computed
    ? { name: nameOf(left.property), part }
    : null;
}

/** The name that a part of a program uses, "" for none: a member that is read or called, or a text of one word. */
function usedBy(part: Part, within: Part | null): string {
  if (part.type === "MemberExpression" && !part.computed) return nameOf(part.property);
  if (part.type === "Property" && within?.type === "ObjectPattern") return nameOf(part.key);
  return part.type === "Literal" && typeof part.value === "string" && /^[\w$]+$/.test(part.value)
    ? part.value
    : "";
}

/** The names that the programs use, but for those that only methods use which are named nowhere else. */
export function namesInUse(programs: readonly Part[]): ReadonlySet<string> {
  /** What the methods of each name use in turn; under "" what stands outside of methods. */
  const uses = new Map<string, Set<string>>();
  const see = (part: Part, within: Part | null, owner: string): void => {
    const method = methodOf(part);
    if (!method) uses.get(owner)!.add(usedBy(part, within));
    const inside = method?.name ?? owner;
    if (!uses.has(inside)) uses.set(inside, new Set());
    for (const [, one] of partsIn(part)) see(one, method ? null : part, inside);
  };
  uses.set("", new Set(LANGUAGE));
  for (const program of programs) see(program, null, "");
  const found = new Set<string>();
  const wanted = [""];
  for (let name = wanted.pop(); name !== undefined; name = wanted.pop())
    for (const used of uses.get(name) ?? [])
      if (!found.has(used)) {
        found.add(used);
        wanted.push(used);
      }
  return found;
}

/** The module without the methods whose names are not in use. */
export function withoutUncalled(code: string, program: Part, inUse: ReadonlySet<string>): string {
  let text = "";
  let at = 0;
  const see = (part: Part): void => {
    const method = methodOf(part);
    if (method && !inUse.has(method.name)) {
      text += code.slice(at, part.start);
      at = part.end;
    } else for (const [, one] of partsIn(part)) see(one);
  };
  see(program);
  return text + code.slice(at);
}

const filesIn = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((path) => /\.(?:mjs|js|ts)$/.test(path) && !/\.d\.ts$|^i18n.languages/.test(path))
    .map((path) => join(ROOT, folder, path).replaceAll("\\", "/"));

/** A file by its place among the packages, wherever these are. */
const placeOf = (path: string): string => path.slice(path.lastIndexOf("/node_modules/") + 1);

/** The libraries' files without what nothing calls, by their places, with the code that they have on the disk. */
function lessened(): ReadonlyMap<string, { readonly code: string; readonly less: string }> {
  const read = (file: string) => {
    const code = readFileSync(file, "utf8");
    return { file, code, program: parsed(code, file) };
  };
  const modules = LIBRARIES.flatMap(filesIn).map(read);
  const inUse = namesInUse([...modules, ...CALLERS.flatMap(filesIn).map(read)].map(({ program }) => program));
  return new Map(
    modules.map(({ file, code, program }) => [
      placeOf(file),
      { code, less: withoutUncalled(code, program, inUse) },
    ]),
  );
}

let files: ReturnType<typeof lessened> | undefined;

export const uncalledMethods: Plugin = {
  name: "uncalled-methods",
  apply: "build",
  transform(code, id) {
    const place = placeOf(id.replaceAll("\\", "/"));
    if (!LIBRARIES.some((folder) => place.startsWith(`${folder}/`))) return null;
    files ??= lessened();
    const file = files.get(place);
    // A module that another rule of the build has changed keeps its methods.
    return file && file.code === code ? { code: file.less, map: null } : null;
  },
};
