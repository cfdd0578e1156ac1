import { isForeign } from "../record/bundle/foreign.js";
import { isBundle } from "../record/bundle/read-bundle.js";
import { findRebuild } from "../record/find-rebuild.js";

/** A rebuild of somebody else: a bundle, or a folder unpacked from one. */
export interface ForeignRebuild {
  readonly path: string;
  readonly packed: boolean;
}

/** The rebuild of somebody else among the words of a call, or where the caller stands; undefined where it is none. */
export function foreignIn(args: readonly string[]): ForeignRebuild | undefined {
  const named = args.filter((word) => !word.startsWith("-"));
  const bundle = named.find(isBundle);
  if (bundle !== undefined) return { path: bundle, packed: true };
  for (const from of named.length === 0 ? [process.cwd()] : named) {
    const found = findRebuild(from);
    if (found !== undefined && isForeign(found)) return { path: found, packed: false };
  }
  return undefined;
}
