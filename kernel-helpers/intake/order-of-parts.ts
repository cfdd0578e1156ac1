/**
 * An order in which each of several things comes after all it waits for: of those that are free, always the first of
 * the list (Kahn's way).
 *
 * @param names  all different
 * @param after  the names that must come before each
 * @returns the order; `ring` names those that wait for each other in a circle, in its order, empty where there is none
 * @example orderOfParts(["a", "b"], (name) => (name === "a" ? ["b"] : [])).order // ["b", "a"]
 * @source A. B. Kahn, Topological sorting of large networks, Communications of the ACM 5 (1962), 558-562
 */
export function orderOfParts(
  names: readonly string[],
  after: (name: string) => readonly string[],
): { readonly order: readonly string[]; readonly ring: readonly string[] } {
  const order: string[] = [];
  const left = new Set(names);
  while (left.size > 0) {
    const next = [...left].find((name) => after(name).every((before) => !left.has(before)));
    if (next === undefined) return Object.freeze({ order: Object.freeze(order), ring: ringIn(left, after) });
    order.push(next);
    left.delete(next);
  }
  return Object.freeze({ order: Object.freeze(order), ring: Object.freeze([]) });
}

/** Walks back from any of those left until one comes up again: a circle. */
function ringIn(left: ReadonlySet<string>, after: (name: string) => readonly string[]): readonly string[] {
  const walk: string[] = [];
  let at = [...left][0]!;
  while (!walk.includes(at)) {
    walk.push(at);
    at = after(at).find((before) => left.has(before))!;
  }
  return walk.slice(walk.indexOf(at));
}
