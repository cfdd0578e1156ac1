import { connect } from "node:net";
import { onTestFinished } from "vitest";
import { type RawData, WebSocket } from "ws";
import {
  type LiveEvent,
  type LiveServer,
  startLiveServer,
} from "../../../kernel-helpers/live/server/index.js";
import {
  type ChannelMessage,
  decodeFrame,
  encodeFrame,
  kernelSubprotocol,
} from "../../../kernel-helpers/live/server/kernels/websocket-frame.js";
import { newHeader } from "../../../kernel-helpers/notebook/wire/message.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

/** The least a rebuild is. */
export const rebuildJson = '{ "schema": 1, "title": "Pump shaft", "units": "inch" }\n';

/** A table without faults. */
export const goodTable = "station [in],diameter [in]\n1,2.4375\n2,2.4370\n3,2.4371\n";

/** The file of a worksheet with the given code cells, called c1, c2, ... */
export function sheetFile(...code: readonly string[]): string {
  const cells = code.map((source, i) => ({
    cell_type: "code",
    id: `c${i + 1}`,
    metadata: {},
    execution_count: null,
    outputs: [],
    source,
  }));
  return JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
}

export interface Reply {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
  readonly json: any;
}

/** A server of its own over a folder, and what a page would do with it. */
export interface Live {
  readonly directory: string;
  readonly server: LiveServer;
  readonly origin: string;
  /** Asks as the page does: with token, origin and header. */
  ask(
    method: string,
    path: string,
    body?: unknown,
    headers?: Readonly<Record<string, string>>,
  ): Promise<Reply>;
  /** Listens to events from now on; `until` resolves with the first that fits, past or to come. */
  listen(): Promise<EventEar>;
}

export interface EventEar {
  readonly heard: readonly LiveEvent[];
  until<T extends LiveEvent>(fits: (event: LiveEvent) => event is T): Promise<T>;
  until(fits: (event: LiveEvent) => boolean): Promise<LiveEvent>;
}

/** Starts a server over a new rebuild with the files given; it ends with the test. */
export async function liveRebuild(
  files: Readonly<Record<string, string | Uint8Array>> = {},
  options: { readonly warmKernel?: boolean; readonly kernelPatience?: number } = {},
): Promise<Live> {
  return liveFolder(temporaryFolder({ "rebuild.json": rebuildJson, ...files }), options);
}

/** The same over a folder that is there. */
export async function liveFolder(
  directory: string,
  options: { readonly warmKernel?: boolean; readonly port?: number; readonly kernelPatience?: number } = {},
): Promise<Live> {
  const server = await startLiveServer({ warmKernel: false, port: 0, ...options, directory });
  onTestFinished(() => server.close());
  const { token, port } = server.access;
  const origin = `http://127.0.0.1:${port}`;
  const live: Live = {
    directory,
    server,
    origin,
    async ask(method, path, body, headers = {}) {
      const response = await fetch(origin + path, {
        method,
        redirect: "manual",
        headers: {
          authorization: `token ${token}`,
          origin,
          "x-journalbox": "1",
          ...(body !== undefined && { "content-type": "application/json" }),
          ...headers,
        },
        ...(body !== undefined && { body: JSON.stringify(body) }),
      });
      const text = await response.text();
      const isJson = response.headers.get("content-type") === "application/json" && text !== "";
      return {
        status: response.status,
        headers: response.headers,
        text,
        json: isJson ? JSON.parse(text) : undefined,
      };
    },
    async listen() {
      const heard: LiveEvent[] = [];
      const waiting = new Set<() => void>();
      const socket = openSocket(live, "/api/events");
      onTestFinished(() => socket.terminate());
      socket.on("message", (data) => {
        heard.push(JSON.parse(String(data)));
        for (const look of waiting) look();
      });
      const until = (fits: (event: LiveEvent) => boolean): Promise<LiveEvent> =>
        new Promise((resolve) => {
          const look = (): void => {
            const found = heard.find(fits);
            if (found === undefined) return;
            waiting.delete(look);
            resolve(found);
          };
          waiting.add(look);
          look();
        });
      const ear = { heard, until } as EventEar;
      await ear.until(({ type }) => type === "hello");
      return ear;
    },
  };
  return live;
}

/** A WebSocket as the page opens it; `headers` may say otherwise. */
export function openSocket(
  { server, origin }: Pick<Live, "server" | "origin">,
  path: string,
  headers: Readonly<Record<string, string>> = {},
): WebSocket {
  return new WebSocket(origin.replace("http", "ws") + path, kernelSubprotocol, {
    headers: { authorization: `token ${server.access.token}`, origin, ...headers },
  });
}

/** Sends bytes as they are and gives all that comes back until the server closes. */
export function rawRequest(port: number, text: string, host = "127.0.0.1"): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, host, () => socket.write(text));
    let answer = "";
    socket.setEncoding("latin1");
    socket.on("data", (part) => {
      answer += part;
    });
    socket.on("close", () => resolve(answer));
    socket.on("error", (error: NodeJS.ErrnoException) => {
      // A server that closes on too much is still heard.
      if (answer === "" && error.code !== "ECONNRESET" && error.code !== "EPIPE") reject(error);
    });
  });
}

/** One page of a sheet, talking with its kernel. */
export class KernelPage {
  readonly heard: ChannelMessage[] = [];
  readonly id: string;
  readonly #socket: WebSocket;
  readonly #session = newHeader("", "").msg_id;
  readonly #waiting = new Set<() => void>();

  /** Opens the sheet's kernel, starting it where needed. */
  static async open(live: Live, sheet: string): Promise<KernelPage> {
    const path = `sheets/${sheet}.ipynb`;
    const { json } = await live.ask("POST", "/api/sessions", { path, name: sheet, type: "notebook" });
    const page = new KernelPage(live, json.kernel.id);
    await new Promise((open, fail) => page.#socket.once("open", open).once("error", fail));
    return page;
  }

  private constructor(live: Live, id: string) {
    this.id = id;
    this.#socket = openSocket(live, `/api/kernels/${id}/channels?session_id=${this.#session}`);
    onTestFinished(() => this.#socket.terminate());
    this.#socket.on("message", (data: RawData) => {
      this.heard.push(decodeFrame(data as Buffer));
      for (const look of this.#waiting) look();
    });
  }

  get socket(): WebSocket {
    return this.#socket;
  }

  /** Sends a cell; its id lets what comes of it be known. */
  send(code: string, cellId?: string): string {
    const header = newHeader("execute_request", this.#session);
    const content = { code, silent: false, store_history: true, stop_on_error: true, allow_stdin: false };
    const metadata = cellId === undefined ? {} : { cellId };
    this.#socket.send(encodeFrame({ channel: "shell", header, parent: {}, metadata, content }));
    return header.msg_id;
  }

  /** Runs a cell and gives the content of its reply. */
  async run(code: string, cellId?: string): Promise<Readonly<Record<string, unknown>>> {
    const id = this.send(code, cellId);
    const reply = await this.until((m) => m.parent.msg_id === id && m.header.msg_type === "execute_reply");
    return reply.content;
  }

  until(fits: (message: ChannelMessage) => boolean): Promise<ChannelMessage> {
    return new Promise((resolve) => {
      const look = (): void => {
        const found = this.heard.find(fits);
        if (found === undefined) return;
        this.#waiting.delete(look);
        resolve(found);
      };
      this.#waiting.add(look);
      look();
    });
  }
}
