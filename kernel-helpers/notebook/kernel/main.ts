import { readConnection } from "../wire/connection.js";
import { portTaken } from "./sockets.js";
import { startKernel } from "./start-kernel.js";

/** The program a front end starts: `main.js --config-path FILE`. */
const file = process.argv[process.argv.indexOf("--config-path") + 1];
if (!process.argv.includes("--config-path") || file === undefined) {
  process.stderr.write("give the connection file: --config-path FILE\n");
  process.exit(2);
}
startKernel(readConnection(file)).catch((error: NodeJS.ErrnoException) => {
  process.stderr.write(`the kernel did not start: ${error.stack}\n`);
  process.exit(error.code === "EADDRINUSE" ? portTaken : 1);
});
