import { packageVersion } from "../../record/package-root.js";
import { protocolVersion } from "../wire/message.js";

/** What the kernel says of itself; `typescriptVersion` is the version that checks the cells. */
export function kernelInfo(typescriptVersion: string): Record<string, unknown> {
  return {
    status: "ok",
    protocol_version: protocolVersion,
    implementation: "journalbox",
    implementation_version: packageVersion(),
    banner: `Journalbox ${packageVersion()}, TypeScript ${typescriptVersion}, Node ${process.version}`,
    help_links: [],
    language_info: {
      name: "typescript",
      version: typescriptVersion,
      mimetype: "text/typescript",
      file_extension: ".ts",
      pygments_lexer: "typescript",
      nbconvert_exporter: "script",
      // JupyterLab and the classic notebook take the highlighting from different fields of this.
      codemirror_mode: { mode: "typescript", name: "javascript", typescript: true },
    },
  };
}
