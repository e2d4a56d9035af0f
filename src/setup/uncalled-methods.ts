/**
 * Leaves out the methods of HyperFormula, of the parser inside it, and of the grid's library that nothing calls.
 * A bundler keeps a class whole, since any of its methods may be called; here a method is kept when code that is
 * itself kept names it, be it as a member or as a text of this one word, on any object. These libraries call
 * methods by no other names: they put none together at run time.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Plugin } from "vite";
import { replacement } from "./lean-libraries.ts";
import { withPrivateMembers } from "./private-members.ts";
import { nameOf, type Part, parsed, partsIn } from "./program-parts.ts";

const ROOT = join(import.meta.dirname, "../..");

const filesIn = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((path) => /\.(?:mjs|js|tsx?)$/.test(path) && !/\.d\.ts$|^i18n.languages/.test(path))
    .map((path) => join(ROOT, folder, path).replaceAll("\\", "/"));

/** The modules of a package that the files of a folder import, and those that these import in turn. */
function modulesImported(name: string, folder: string): string[] {
  const entries = filesIn(folder).flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(/^import .*"([^"]+)";$/gm)].map(([, path]) => path!),
  );
  const wanted = entries
    .filter((path) => path.startsWith(`${name}/`) && !path.endsWith(".css"))
    .map((path) => join(ROOT, "node_modules", path))
    .map((path) => (existsSync(`${path}.mjs`) ? `${path}.mjs` : join(path, "index.mjs")));
  const found = new Set<string>();
  for (let file = wanted.pop(); file !== undefined; file = wanted.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    for (const { source } of parsed(readFileSync(file, "utf8")).body as Part[]) {
      const path = String((source as Part | null)?.value ?? "");
      if (path.startsWith(".")) wanted.push(join(dirname(file), path));
    }
  }
  return [...found].map((file) => file.replaceAll("\\", "/"));
}

/** Libraries whose methods are looked at together. */
interface Libraries {
  readonly modules: () => readonly string[];
  /** The folders of what uses them: our own, and the packages that they are made of. */
  readonly callers: readonly string[];
  /** A module as the rules of the build before this one leave it. */
  readonly given: (code: string, file: string) => string;
}

const LIBRARIES: readonly Libraries[] = [
  {
    modules: () => ["node_modules/hyperformula/es", "node_modules/chevrotain/lib_esm/src"].flatMap(filesIn),
    callers: ["src/engine", "src/exchange", "node_modules/regexp-to-ast/lib", "node_modules/tiny-emitter"],
    given: (code, file) => replacement(file) ?? code,
  },
  {
    modules: () => modulesImported("handsontable", "src/app/grid"),
    callers: ["src/app"],
    given: (code, file) => replacement(file) ?? withPrivateMembers(code) ?? code,
  },
];

/** A method that can be left out: `name() {}` in a class, or a function that `Class.prototype.name` or `this.name` is given. */
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
  const object = left.object as Part | undefined;
  const isOwn = object?.type === "ThisExpression" || nameOf(object?.property) === "prototype";
  return isOwn && /^(?:Arrow)?Function/.test(right.type) && !left.computed && nameOf(left.property)
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
      // The whole of what stands under an `if` has to leave a statement.
      if (part.type === "ExpressionStatement") text += ";";
      at = part.end;
    } else for (const [, one] of partsIn(part)) see(one);
  };
  see(program);
  return text + code.slice(at);
}

/** A file by its place among the packages, wherever these are. */
const placeOf = (path: string): string => path.slice(path.lastIndexOf("/node_modules/") + 1);

/** The libraries' files without what nothing calls, by their places, with the code that this rule is given. */
function lessened({
  modules,
  callers,
  given,
}: Libraries): [place: string, { readonly code: string; readonly less: string }][] {
  const read = (file: string, change: Libraries["given"]) => {
    const code = change(readFileSync(file, "utf8"), file);
    return { file, code, program: parsed(code, file) };
  };
  const own = modules().map((file) => read(file, given));
  const others = callers.flatMap(filesIn).map((file) => read(file, (code) => code));
  const inUse = namesInUse([...own, ...others].map(({ program }) => program));
  return own.map(({ file, code, program }) => [
    placeOf(file),
    { code, less: withoutUncalled(code, program, inUse) },
  ]);
}

let files: ReadonlyMap<string, { readonly code: string; readonly less: string }> | undefined;

export const uncalledMethods: Plugin = {
  name: "uncalled-methods",
  apply: "build",
  transform(code, id) {
    const place = placeOf(id.replaceAll("\\", "/"));
    if (!/^node_modules\/(?:hyperformula|chevrotain|handsontable)\//.test(place)) return null;
    files ??= new Map(LIBRARIES.flatMap(lessened));
    const file = files.get(place);
    // A module that another rule of the build has changed keeps its methods.
    return file && file.code === code ? { code: file.less, map: null } : null;
  },
};
