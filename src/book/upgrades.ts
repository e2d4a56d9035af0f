/**
 * Brings an old book's data up one version at a time. `UPGRADES[0]` turns version 1 into 2, and
 * so on.
 */
type Data = Record<string, unknown>;

const UPGRADES: readonly ((old: Data) => Data)[] = [
  // Version 2 has cells that follow a fitting; a book of version 1 is one without them.
  (old) => old,
];

/** The data as the newest version has it. */
export function upgrade(data: object, version: number): Data {
  return UPGRADES.slice(version - 1).reduce<Data>((old, step) => step(old), { ...data } as Data);
}
