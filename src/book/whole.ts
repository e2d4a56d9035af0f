/**
 * What a file says beside what its shape asks for: fields that a newer Ellwand wrote and this one
 * does not know, and groups with keys that have a meaning of their own in JavaScript. The schema
 * library drops both without a word; here they are carried along.
 */
import * as v from "valibot";
import type { Damage } from "./damage.ts";
import type { Other } from "./shape.ts";

/** The parts of a schema that are walked through; the library gives no common type for them. */
interface Part extends v.GenericSchema {
  readonly entries?: Readonly<Record<string, Part>>;
  readonly item?: Part;
  readonly value?: Part;
  readonly wrapped?: Part;
  readonly default?: unknown;
  readonly options?: readonly Part[];
}

type Group = Readonly<Record<string, unknown>>;

/** How deep groups and lists may lie within one another in a field that is not known. */
const MOST_DEEP = 100;

/** Keys that the schema library passes over, whatever stands under them. */
const PASSED_OVER = new Set(["__proto__", "prototype", "constructor"]);

/** Data that fit a schema, nothing left out; `other` holds the unknown fields of each group. Or what is wrong. */
export function whole(schema: v.GenericSchema, data: unknown): { readonly data: unknown } | Damage {
  let damage: Damage | null = null;
  const walk = (part: Part, given: unknown, path: NonNullable<Damage["path"]>): unknown => {
    const inner = (next: Part, key: unknown, value: unknown): unknown =>
      walk(next, value, [...path, { key, value, input: given }]);
    switch (part.type) {
      case "optional":
        return given === undefined ? part.default : walk(part.wrapped!, given, path);
      case "variant": {
        const option = part.options!.find((one) => v.is(one, given));
        return option ? walk(option, given, path) : given;
      }
      case "array": {
        const { item } = part;
        // Texts, such as a row of typed cells, hold nothing that could be left out.
        if (item!.type === "string") return given;
        return (given as readonly unknown[]).map((one, i) => inner(item!, i, one));
      }
      case "record":
        return Object.fromEntries(
          Object.entries(given as Group).map(([key, one]) => {
            if (PASSED_OVER.has(key)) {
              const found = v.safeParse(part.value!, one, { abortEarly: true });
              const issue = found.issues?.[0] as unknown as Damage | undefined;
              if (issue)
                damage ??= {
                  ...issue,
                  path: [...path, { key, value: one, input: given }, ...(issue.path ?? [])],
                };
            }
            return [key, damage ? one : inner(part.value!, key, one)];
          }),
        );
      case "object": {
        const entries = part.entries!;
        const known = Object.keys(entries).map(
          (key) => [key, inner(entries[key]!, key, own(given, key))] as const,
        );
        const unknown = Object.entries(given as Group).filter(([key]) => !Object.hasOwn(entries, key));
        for (const [key, value] of unknown)
          if (isTooDeep(value))
            damage ??= {
              type: "deep",
              expected: null,
              received: "",
              input: value,
              requirement: MOST_DEEP,
              path: [...path, { key, value, input: given }],
            };
        const other: Other | undefined = unknown.length > 0 ? Object.fromEntries(unknown) : undefined;
        return {
          ...Object.fromEntries(known.filter(([, value]) => value !== undefined)),
          ...(other && { other }),
        };
      }
      default:
        return given;
    }
  };
  const all = walk(schema as Part, data, []);
  return damage ?? { data: all };
}

const own = (given: unknown, key: string): unknown =>
  Object.hasOwn(given as object, key) ? (given as Group)[key] : undefined;

/** Whether a value would be too deep to be written again; without recursion, which a deep one would exhaust. */
function isTooDeep(value: unknown): boolean {
  let layer = [value];
  for (let depth = 0; layer.length > 0; depth += 1) {
    if (depth > MOST_DEEP) return true;
    layer = layer.flatMap((one) => (typeof one === "object" && one !== null ? Object.values(one) : []));
  }
  return false;
}
