/** Running worksheets: the kernel and its client, notebook files, the runner, and the registration with Jupyter. */
export { CellError, CellTimeoutError, KernelDiedError } from "./client/client-errors.js";
export { KernelClient, type KernelOptions } from "./client/kernel-client.js";
export { kernelProgram } from "./client/kernel-process.js";
export type { CellOptions, CellReply, KernelOutput } from "./client/running-kernel.js";
export { canonicalNotebook } from "./file/canonical-notebook.js";
export { NotebookFormatError } from "./file/check-notebook.js";
export { readNotebook, writeExecuted, writeNotebook } from "./file/notebook-file.js";
export type { Cell, CodeCell, MimeBundle, Notebook, Output, TextCell } from "./file/notebook-format.js";
export { notebookJson } from "./file/notebook-json.js";
export { prepareQuickStart } from "./kernel/quick-start/prepare-quick-start.js";
export {
  installKernelspec,
  type Kernelspec,
  type KernelspecOptions,
  kernelspec,
  type Registration,
  readRegistration,
  removeKernelspec,
  whereKernelspec,
} from "./kernelspec.js";
export { failureText } from "./runner/failure-text.js";
export { type Progress, type RunSheetsOptions, runSheets } from "./runner/run-sheets.js";
export type { FailedCell, Sheet, SheetError, SheetResult } from "./runner/sheet-result.js";
