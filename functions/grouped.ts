/** Items by a key of each, in their order; keys in the order in which they first occur. */
export function grouped<K, T>(items: Iterable<T>, keyOf: (item: T) => K): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const others = groups.get(key);
    if (others) others.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
