// A rebuild as a bundle for machines: a BagIt bag that is an RO-Crate too, in a folder or a ZIP archive.
export { type BagTag, makeBag, payloadFolder, sha256 } from "./bag.js";
export { type CrateFacts, crateFile, crateMetadata } from "./crate.js";
export { bytesOf, type Files, sortedPaths, textOf } from "./files.js";
export { filesToShare } from "./files-to-share.js";
export { foreignMark, foreignMarkText, isForeign, refuseLinks } from "./foreign.js";
export { leaveOut, type SharedFiles } from "./leave-out.js";
export {
  type LeftOut,
  type LeftOutFile,
  leftOutFile,
  leftOutSentences,
  leftOutText,
  readLeftOut,
  writeLeftOut,
} from "./left-out.js";
export { pathFault } from "./path-fault.js";
export { type PrivateList, type PrivateName, privateNames, privateSections } from "./private-list.js";
export { type Bundle, isBundle, readBundle } from "./read-bundle.js";
export { readZip, type ZipLimits } from "./read-zip.js";
export { type BagCheck, type BagFault, verifyBag } from "./verify-bag.js";
export { writeZip } from "./write-zip.js";
