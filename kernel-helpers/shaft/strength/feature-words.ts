import type { ShaftFeature } from "./feature-types.js";

/**
 * A feature in words, for tables.
 *
 * @example featureWords({ shape: "keyseat", ends: "end-milled", corner: "sharp corner" }) // "end-milled keyseat"
 */
export function featureWords(feature: ShaftFeature): string {
  switch (feature.shape) {
    case "keyseat":
      return `${feature.ends} keyseat`;
    case "keyed hub":
      return feature.keys === 2 ? "hub on two keys" : "hub on a key";
    case "plain":
      return "plain";
    default:
      return feature.shape;
  }
}
