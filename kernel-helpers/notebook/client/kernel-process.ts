import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { packageRoot } from "../../record/package-root.js";
import type { Connection } from "../wire/connection.js";
import { KernelDiedError } from "./client-errors.js";
import { freePorts } from "./free-ports.js";

/** The program of the kernel, as built: a kernel runs as a process of its own, from the sources too. */
export function kernelProgram(): string {
  return join(packageRoot(), "dist", "notebook", "kernel", "main.js");
}

/** So much of what a kernel writes to its own error output is kept [characters]. */
const kept = 4000;

/** A kernel's process, its connection file, and how it ended. Leaves neither behind. */
export class KernelProcess {
  readonly connection: Connection;
  /** Rejects with KernelDiedError when the process ends, whatever the reason. */
  readonly died: Promise<never>;
  readonly #child: ChildProcess;
  readonly #folder: string;
  readonly #ended: Promise<void>;
  #lastWords = "";

  /** `program` is what Node is told to run: options, file, arguments. */
  static async start(
    directory: string,
    environment: NodeJS.ProcessEnv,
    program: readonly string[],
  ): Promise<KernelProcess> {
    const [shell, iopub, stdin, control, hb] = await freePorts(5);
    const connection: Connection = {
      transport: "tcp",
      ip: "127.0.0.1",
      shell_port: shell!,
      iopub_port: iopub!,
      stdin_port: stdin!,
      control_port: control!,
      hb_port: hb!,
      key: randomUUID(),
      signature_scheme: "hmac-sha256",
    };
    return new KernelProcess(connection, directory, environment, program);
  }

  private constructor(
    connection: Connection,
    directory: string,
    environment: NodeJS.ProcessEnv,
    program: readonly string[],
  ) {
    this.connection = connection;
    this.#folder = mkdtempSync(join(tmpdir(), "journalbox-kernel-"));
    const file = join(this.#folder, "connection.json");
    writeFileSync(file, JSON.stringify(connection), { mode: 0o600 });
    this.#child = spawn(process.execPath, [...program, "--config-path", file], {
      cwd: directory,
      env: { ...environment, JPY_PARENT_PID: String(process.pid) },
      stdio: ["ignore", "ignore", "pipe"],
    });
    this.#child.stderr?.on("data", (bytes: Buffer) => {
      this.#lastWords = (this.#lastWords + bytes.toString("utf8")).slice(-kept);
    });
    process.once("exit", this.kill);
    this.died = new Promise((_, reject) => {
      this.#child.once("error", (error) => {
        this.forgetFile();
        reject(error);
      });
      this.#child.once("close", (code, signal) => {
        process.removeListener("exit", this.kill);
        this.forgetFile();
        reject(new KernelDiedError(code, signal, this.#lastWords.trim()));
      });
    });
    this.#ended = this.died.catch(() => undefined);
  }

  get pid(): number | undefined {
    return this.#child.pid;
  }

  readonly kill = (): void => {
    this.#child.kill("SIGKILL");
  };

  /** The kernel has read its connection file: nobody needs it any more. */
  forgetFile(): void {
    rmSync(this.#folder, { recursive: true, force: true });
  }

  /** Waits for the end; a process that takes longer than allowed is killed. */
  async end(milliseconds: number): Promise<void> {
    const timer = setTimeout(this.kill, milliseconds);
    await this.#ended;
    clearTimeout(timer);
  }
}
