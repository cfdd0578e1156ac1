import { basename } from "node:path";
import { kernelDisplayName, kernelName } from "../../../notebook/file/canonical-notebook.js";
import { bodyLimits } from "../body.js";
import { HttpError } from "../http-error.js";
import type { KernelEvent } from "../live-event.js";
import { sheetNamed } from "../rebuild-files.js";
import { type Answer, type Route, route } from "../router.js";
import { LiveKernel } from "./live-kernel.js";
import { SpareKernels } from "./spare-kernels.js";

/** What a page asked a session for. */
interface SessionNames {
  readonly path: string;
  readonly name: string;
  readonly type: string;
}

export interface KernelRoomOptions {
  readonly directory: string;
  /** Whether a kernel is started before one is asked for. */
  readonly warm: boolean;
  readonly tell: (event: KernelEvent) => void;
  /** So long a kernel is kept that no page is connected to [ms]. */
  readonly patience: number;
}

/** The kernels of a server: one for each sheet that was opened, and a spare one. */
export class KernelRoom {
  readonly #directory: string;
  readonly #tell: (event: KernelEvent) => void;
  readonly #patience: number;
  readonly #spares: SpareKernels;
  readonly #kernels = new Map<string, LiveKernel>();
  /** The names under which pages opened a kernel, by its id, which is the id of its session too. */
  readonly #names = new Map<string, SessionNames>();

  constructor(options: KernelRoomOptions) {
    const { directory, tell, warm, patience } = options;
    this.#directory = directory;
    this.#tell = tell;
    this.#patience = patience;
    this.#spares = new SpareKernels(directory, warm);
  }

  find(id: string): LiveKernel | undefined {
    return this.#kernels.get(id);
  }

  ofSheet(sheet: string): LiveKernel | undefined {
    return [...this.#kernels.values()].find((kernel) => kernel.sheet === sheet);
  }

  async close(): Promise<void> {
    await Promise.all([this.#spares.close(), ...[...this.#kernels.values()].map((kernel) => kernel.close())]);
  }

  /**
   * What pages ask of kernels, as Jupyter's front ends do.
   *
   * @source Jupyter Server documentation, "The REST API": kernelspecs, kernels, sessions
   */
  routes(): readonly Route[] {
    const kernel = (id: string | undefined): LiveKernel => {
      const found = this.#kernels.get(id ?? "");
      if (found === undefined) throw new HttpError(404, "there is no such kernel");
      return found;
    };
    const all = (): readonly LiveKernel[] => [...this.#kernels.values()];
    return [
      route("GET", "/api/kernelspecs", () => ({ json: kernelspecs })),
      route("GET", "/api/kernels", () => ({ json: all().map(({ model }) => model) })),
      route("POST", "/api/kernels", async ({ body }) => {
        const { path } = await body(bodyLimits.small);
        return { status: 201, json: this.#open({ path: String(path), name: "", type: "notebook" }).model };
      }),
      route("GET", "/api/kernels/:id", ({ params }) => ({ json: kernel(params.id).model })),
      route("DELETE", "/api/kernels/:id", ({ params }) => this.#end(kernel(params.id))),
      route("POST", "/api/kernels/:id/interrupt", ({ params }) => {
        kernel(params.id).interrupt();
        return { status: 204 };
      }),
      route("POST", "/api/kernels/:id/restart", async ({ params }) => {
        const found = kernel(params.id);
        await found.restart();
        return { json: found.model };
      }),
      route("GET", "/api/sessions", () => ({ json: all().map((each) => this.#session(each)) })),
      route("POST", "/api/sessions", async ({ body }) => {
        const asked = await body(bodyLimits.small);
        const names = {
          path: String(asked.path),
          name: String(asked.name ?? ""),
          type: String(asked.type ?? "notebook"),
        };
        return { status: 201, json: this.#session(this.#open(names)) };
      }),
      route("GET", "/api/sessions/:id", ({ params }) => ({ json: this.#session(kernel(params.id)) })),
      route("PATCH", "/api/sessions/:id", async ({ params, body }) => {
        const found = kernel(params.id);
        const { kernel: wanted } = await body(bodyLimits.small);
        const other = (wanted as { id?: unknown } | undefined)?.id;
        // There is one kind of kernel and one kernel a sheet: another one is the same one, anew.
        if (wanted !== undefined && other !== found.id) await found.restart();
        return { json: this.#session(found) };
      }),
      route("DELETE", "/api/sessions/:id", ({ params }) => this.#end(kernel(params.id))),
    ];
  }

  /** The kernel of the sheet at a path such as "04-shaft-survey.ipynb"; a dead one is started anew. */
  #open(names: SessionNames): LiveKernel {
    const sheet = basename(names.path, ".ipynb");
    sheetNamed(this.#directory, sheet);
    const there = this.ofSheet(sheet);
    if (there !== undefined) {
      if (there.isDead) void there.restart();
      return there;
    }
    const [directory, spares, tell] = [this.#directory, this.#spares, this.#tell];
    const kernel: LiveKernel = new LiveKernel({
      name: kernelName,
      directory,
      sheet,
      spares,
      tell,
      patience: this.#patience,
      onForsaken: () => void this.#end(kernel),
    });
    this.#kernels.set(kernel.id, kernel);
    this.#names.set(kernel.id, names);
    return kernel;
  }

  async #end(kernel: LiveKernel): Promise<Answer> {
    this.#kernels.delete(kernel.id);
    this.#names.delete(kernel.id);
    await kernel.close();
    return { status: 204 };
  }

  #session(kernel: LiveKernel): unknown {
    const { path, name, type } = this.#names.get(kernel.id)!;
    return { id: kernel.id, path, name, type, kernel: kernel.model, notebook: { path, name } };
  }
}

const kernelspecs = {
  default: kernelName,
  kernelspecs: {
    [kernelName]: {
      name: kernelName,
      spec: {
        argv: [],
        display_name: kernelDisplayName,
        language: "typescript",
        metadata: {},
        env: {},
      },
      resources: {},
    },
  },
};
