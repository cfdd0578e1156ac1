/**
 * The value of a key in a map, made and kept when it is first asked for.
 *
 * @example valueFor(new Map([["a", 1]]), "b", () => 2) // 2
 */
export function valueFor<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}
