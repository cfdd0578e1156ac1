import { spawn } from "node:child_process";
import { launcherName } from "../parent-watch.js";
import { portTaken } from "../sockets.js";
import { dropQuickStart, quickStartOption } from "./quick-start-file.js";

/**
 * Starts the kernel anew from a prepared start, and stays beside it until it ends. A front end knows one command
 * only, and that must work whether or not there is a prepared start.
 *
 * @returns false where the kernel did not start in this way: it then starts in the usual one
 */
export function launch(quickStart: string): Promise<boolean> {
  const child = spawn(
    process.execPath,
    [...process.execArgv, ...quickStartOption(quickStart), ...process.argv.slice(1)],
    {
      stdio: ["inherit", "inherit", "inherit", "ipc"],
      env: { ...process.env, [launcherName]: String(process.pid) },
    },
  );
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => child.kill(signal));
  let started = false;
  child.once("message", () => {
    started = true;
  });
  return new Promise((resolve) => {
    const fallBack = (): void => {
      process.removeAllListeners("SIGINT");
      process.removeAllListeners("SIGTERM");
      dropQuickStart(quickStart);
      resolve(false);
    };
    child.once("error", fallBack);
    child.once("exit", (code, signal) => {
      if (started || code === portTaken) process.exit(code ?? 128 + signalNumber(signal));
      else fallBack();
    });
  });
}

/** Told by the kernel once it listens, and watches whoever launched it. */
export function tellLauncher(): void {
  if (process.env[launcherName] === undefined) return;
  delete process.env[launcherName]; // programs that a cell starts are not launched kernels
  process.send?.("started", undefined, undefined, () => process.disconnect());
}

/** A process ended by a signal ends its launcher with the usual number for it. */
function signalNumber(signal: NodeJS.Signals | null): number {
  return signal === "SIGKILL" ? 9 : signal === "SIGTERM" ? 15 : 1;
}
