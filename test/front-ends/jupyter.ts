import { spawnSync } from "node:child_process";
import { cpSync } from "node:fs";
import { join } from "node:path";
import { installKernelspec } from "../../kernel-helpers/notebook/kernelspec.js";
import { templateFolder } from "../../kernel-helpers/record/find-sheets.js";
import { temporaryFolder } from "../support/temporary-folder.js";

/** Whether a program can be started here; where it cannot, a line says which tests are left out. */
export function isHere(program: readonly [command: string, ...args: string[]], what: string): boolean {
  const [command, ...args] = program;
  const here = spawnSync(command, args).status === 0;
  if (!here) process.stderr.write(`\nNOT TESTED HERE: ${what}, for there is no ${program.join(" ")}\n`);
  return here;
}

/** A rebuild with the demo's readings and the worksheets in it, far from the package, and Jupyter's own folders. */
export interface Bench {
  readonly folder: string;
  readonly sheets: string;
  /** In it, Jupyter knows our kernel, and nothing of this user's. */
  readonly environment: NodeJS.ProcessEnv;
}

export function newBench(): Bench {
  const folder = temporaryFolder();
  const sheets = join(folder, "mill", "sheets");
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), "demo", part), join(folder, "mill", part), { recursive: true });
  cpSync(templateFolder(), sheets, {
    recursive: true,
    filter: (path) => path === templateFolder() || path.endsWith(".ipynb"),
  });
  const environment = {
    ...process.env,
    HOME: folder,
    JUPYTER_DATA_DIR: join(folder, "data"),
    JUPYTER_CONFIG_DIR: join(folder, "config"),
    JUPYTER_RUNTIME_DIR: join(folder, "runtime"),
    JUPYTER_PATH: join(folder, "installed", "share", "jupyter"),
  };
  installKernelspec({ prefix: join(folder, "installed") });
  return { folder, sheets, environment };
}
