import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { writeFile } from "../record/write-file.js";
import { kernelProgram } from "./client/kernel-process.js";
import { kernelDisplayName, kernelName } from "./file/canonical-notebook.js";

/** Where to register the kernel. */
export interface KernelspecOptions {
  /** An installation of its own, such as a virtual environment; the user's own data folder where not given. */
  readonly prefix?: string;
}

/** How Jupyter is told to start the kernel. */
export interface Kernelspec {
  readonly argv: readonly string[];
  readonly display_name: string;
  readonly language: string;
  readonly interrupt_mode: "signal" | "message";
  readonly metadata: Readonly<Record<string, unknown>>;
}

/** The kernel as Jupyter is told of it: this very Node, this very installation. */
export function kernelspec(): Kernelspec {
  return {
    argv: [process.execPath, kernelProgram(), "--config-path", "{connection_file}"],
    display_name: kernelDisplayName,
    language: "typescript",
    interrupt_mode: "message", // heard by a thread of its own, while a cell keeps the kernel busy
    metadata: { debugger: false },
  };
}

/** The folder in which Jupyter looks for this kernel; it need not be there yet. */
export function whereKernelspec(options: KernelspecOptions = {}): string {
  const data = options.prefix === undefined ? jupyterDataFolder() : join(options.prefix, "share", "jupyter");
  return join(data, "kernels", kernelName);
}

/** What Jupyter would start, and why it would not start. */
export interface Registration {
  readonly folder: string;
  /** The Node.js and the kernel's file it names. */
  readonly node: string;
  readonly kernel: string;
  /** Whether it starts the very installation and Node.js that ask. */
  readonly isThisOne: boolean;
  /** What is named and not there any more, each with what to do; empty where the kernel can start. */
  readonly faults: readonly string[];
}

/**
 * Reads a registration and looks whether what it names is still there: a project moved, a Node.js replaced.
 *
 * @returns undefined where the kernel is not registered
 */
export function readRegistration(options: KernelspecOptions = {}): Registration | undefined {
  const folder = whereKernelspec(options);
  const file = join(folder, "kernel.json");
  if (!existsSync(file)) return undefined;
  const [node, kernel] = argvIn(file);
  const faults = [
    ...(existsSync(node)
      ? []
      : [`Node.js is no longer there: ${node || "(none named)"}. It was moved or removed.`]),
    ...(existsSync(kernel)
      ? []
      : [
          `the kernel is no longer there: ${kernel || "(none named)"}. The project was moved or removed, or is not built.`,
        ]),
  ];
  const isThisOne = node === process.execPath && kernel === kernelProgram();
  return Object.freeze({ folder, node, kernel, isThisOne, faults: Object.freeze(faults) });
}

/** Program and first argument; empty where the file is no kernelspec. */
function argvIn(file: string): readonly [node: string, kernel: string] {
  try {
    const { argv } = JSON.parse(readFileSync(file, "utf8")) as { readonly argv: readonly unknown[] };
    return [String(argv[0] ?? ""), String(argv[1] ?? "")];
  } catch {
    return ["", ""];
  }
}

/**
 * Registers the kernel with Jupyter, without asking Python; registering again is harmless.
 *
 * @returns the folder written
 * @throws Error the kernel has not been built, or the folder cannot be written
 */
export function installKernelspec(options: KernelspecOptions = {}): string {
  if (!existsSync(kernelProgram()))
    throw new Error(`installKernelspec: the kernel must be built first, got no ${kernelProgram()}`);
  const folder = whereKernelspec(options);
  mkdirSync(folder, { recursive: true });
  writeFile(join(folder, "kernel.json"), `${JSON.stringify(kernelspec(), null, 1)}\n`);
  return folder;
}

/** Takes the registration back. @returns whether there was one */
export function removeKernelspec(options: KernelspecOptions = {}): boolean {
  const folder = whereKernelspec(options);
  const wasThere = existsSync(folder);
  rmSync(folder, { recursive: true, force: true });
  return wasThere;
}

/**
 * The user's data folder of Jupyter.
 *
 * @source Jupyter documentation, "Common Directories and File Locations", data files
 */
function jupyterDataFolder(): string {
  const { JUPYTER_DATA_DIR, APPDATA, XDG_DATA_HOME } = process.env;
  if (JUPYTER_DATA_DIR) return JUPYTER_DATA_DIR;
  if (process.platform === "darwin") return join(homedir(), "Library", "Jupyter");
  if (process.platform === "win32") return join(APPDATA ?? join(homedir(), "AppData", "Roaming"), "jupyter");
  return join(XDG_DATA_HOME || join(homedir(), ".local", "share"), "jupyter");
}
