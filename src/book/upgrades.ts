/**
 * Brings an old book's data up one version at a time. `UPGRADES[0]` turns version 1 into 2, and
 * so on; version 1 is the first, so there is no step yet.
 */
type Data = Record<string, unknown>;

const UPGRADES: readonly ((old: Data) => Data)[] = [];

/** The data as the newest version has it. */
export function upgrade(data: object, version: number): Data {
  return UPGRADES.slice(version - 1).reduce<Data>((old, step) => step(old), { ...data } as Data);
}
