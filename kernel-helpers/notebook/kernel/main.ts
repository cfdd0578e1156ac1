import { readConnection } from "../wire/connection.js";
import { launch } from "./quick-start/launch.js";
import { readyQuickStart } from "./quick-start/quick-start-file.js";
import { fail, startKernel } from "./start-kernel.js";

/** The program a front end starts: `main.js --config-path FILE`. */
const file = process.argv[process.argv.indexOf("--config-path") + 1];
if (!process.argv.includes("--config-path") || file === undefined) {
  process.stderr.write("give the connection file: --config-path FILE\n");
  process.exit(2);
}

/** Node loads a program as its main module, except where it starts from a prepared start. */
const quickStart = require.main === module ? readyQuickStart() : undefined;

async function start(path: string): Promise<void> {
  if (quickStart === undefined || !(await launch(quickStart))) await startKernel(readConnection(path));
}

start(file).catch(fail);
