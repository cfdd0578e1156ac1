import { startLightly } from "../start-lightly.js";
import { readConnection } from "../wire/connection.js";
import { launch } from "./quick-start/launch.js";
import { readyQuickStart } from "./quick-start/quick-start-file.js";
import { fail, startKernel } from "./start-kernel.js";

/** The program a front end starts: `main.js --config-path FILE`; with `--no-tooltips` where it will ask for none. */
const file = process.argv[process.argv.indexOf("--config-path") + 1];
if (!process.argv.includes("--config-path") || file === undefined) {
  process.stderr.write("give the connection file: --config-path FILE\n");
  process.exit(2);
}

startLightly();

/** Node loads a program as its main module, except where it starts from a prepared start. */
const isPrepared = require.main !== module;
const quickStart = isPrepared ? undefined : readyQuickStart();
// A prepared start knows the types by their whole text.
const unread = isPrepared
  ? "of Node's types"
  : process.argv.includes("--no-tooltips")
    ? "of all types"
    : "until asked";

async function start(path: string): Promise<void> {
  if (quickStart === undefined || !(await launch(quickStart)))
    await startKernel(readConnection(path), unread);
}

start(file).catch(fail);
