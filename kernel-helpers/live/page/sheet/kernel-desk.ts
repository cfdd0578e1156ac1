import type { Kernel } from "@jupyterlab/services";
import { KernelConnection } from "@jupyterlab/services/lib/kernel/default";
import { Signal } from "@lumino/signaling";
import { Refused, request } from "../api/request.js";
import { serverSettings } from "./server-settings.js";

/** How the kernel stands, as far as the page knows. */
export type KernelState = "none" | "starting" | "idle" | "busy" | "restarting" | "dead";

interface SessionModel {
  readonly id: string;
  readonly path: string;
  readonly kernel: { readonly id: string; readonly name: string };
}

interface KernelModel {
  readonly id: string;
  readonly execution_state?: string;
}

const kernelName = "journalbox";

/**
 * The kernel of one sheet. All pages of the sheet share it, and it stays when they are closed, so that a reload
 * finds its names again.
 */
export class KernelDesk {
  readonly changed: Signal<this, KernelState> = new Signal(this);
  readonly #sheet: string;
  #state: KernelState = "none";
  #session: SessionModel | undefined;
  #kernel: KernelConnection | undefined;

  constructor(sheet: string) {
    this.#sheet = sheet;
  }

  get state(): KernelState {
    return this.#state;
  }

  get kernel(): Kernel.IKernelConnection | undefined {
    return this.#kernel?.isDisposed === false ? this.#kernel : undefined;
  }

  /**
   * Connects to the sheet's kernel, or starts one; resolves when it answers.
   *
   * @throws ServerAway, Refused  it cannot be had
   */
  async start(): Promise<void> {
    this.#set("starting");
    try {
      this.#session = (await this.#running()) ?? (await this.#startSession());
      this.#connect(this.#session.kernel);
      await this.#kernel!.info;
    } catch (error) {
      this.#set("none");
      throw error;
    }
    if (this.#state === "starting") this.#set("idle");
  }

  /** Ends what is left of a kernel that died, and starts another. */
  async startAgain(): Promise<void> {
    this.#kernel?.dispose();
    await this.#endSession();
    await this.start();
  }

  /** Starts the kernel over: its names are gone, the sheet stays. */
  async restart(): Promise<void> {
    const kernel = this.kernel;
    if (kernel === undefined) return this.startAgain();
    this.#set("restarting");
    await kernel.restart();
    await kernel.info;
    this.#set("idle");
  }

  async interrupt(): Promise<void> {
    await this.kernel?.interrupt();
  }

  /**
   * After the server was away: takes the line to the kernel up again, or starts a kernel where that one is gone.
   *
   * @returns whether it still is the same kernel, with its names
   */
  async resume(): Promise<boolean> {
    const kernel = this.kernel;
    if (kernel !== undefined && (await isAlive(kernel.id))) {
      await kernel.reconnect();
      this.#set(kernel.status === "busy" ? "busy" : "idle");
      return true;
    }
    this.#kernel?.dispose();
    await this.#endSession();
    await this.start();
    return false;
  }

  async #running(): Promise<SessionModel | undefined> {
    const { json } = await request<SessionModel[]>("GET", "/api/sessions");
    const found = json.find(({ path }) => path === this.#path);
    return found !== undefined && (await isAlive(found.kernel.id)) ? found : undefined;
  }

  async #startSession(): Promise<SessionModel> {
    const asked = {
      path: this.#path,
      name: this.#sheet,
      type: "notebook",
      kernel: { name: kernelName },
    };
    return (await request<SessionModel>("POST", "/api/sessions", asked)).json;
  }

  async #endSession(): Promise<void> {
    if (this.#session === undefined) return;
    await request("DELETE", `/api/sessions/${this.#session.id}`, undefined, [404]);
    this.#session = undefined;
  }

  get #path(): string {
    return `sheets/${this.#sheet}.ipynb`;
  }

  #connect(model: SessionModel["kernel"]): void {
    this.#kernel?.dispose();
    const kernel = new KernelConnection({ model, serverSettings, handleComms: false });
    this.#kernel = kernel;
    kernel.statusChanged.connect((_, status) => this.#hear(kernel, status));
  }

  #hear(kernel: KernelConnection, status: Kernel.Status): void {
    if (kernel !== this.#kernel) return;
    if (status === "dead" || status === "idle" || status === "busy") this.#set(status);
    if (status === "restarting" || status === "autorestarting") this.#set("restarting");
  }

  #set(state: KernelState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.changed.emit(state);
  }
}

async function isAlive(id: string): Promise<boolean> {
  try {
    const { json } = await request<KernelModel>("GET", `/api/kernels/${id}`);
    return json.execution_state !== "dead";
  } catch (error) {
    if (error instanceof Refused) return false;
    throw error;
  }
}
