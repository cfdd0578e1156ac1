export { bundleName } from "./bundle-name.js";
export { type SharedRebuild, type ShareOptions, shareRebuild } from "./share-rebuild.js";
