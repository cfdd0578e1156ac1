import dgram from "node:dgram";
import dns from "node:dns";
import net from "node:net";

/** The sandbox refused something. */
export class NotAllowedError extends Error {
  override readonly name = "NotAllowedError";
  constructor(what: string) {
    super(`the sandbox does not allow ${what}`);
  }
}

/**
 * Takes from this process what Node's permission model leaves open: signals to other processes, and, with a clear
 * message, the network. The network is closed by the operating system or by Node where they can; this says so in
 * words, and is no wall by itself.
 */
export function sealProcess(): void {
  const refuse = (what: string) => (): never => {
    throw new NotAllowedError(what);
  };
  const network = refuse("the network");
  const signals = refuse("signals to processes");
  const identity = refuse("to become another user");
  replace(process, ["kill", "_kill", "_debugProcess", "_debugEnd", "_startProfilerIdleNotifier"], signals);
  replace(process, ["setuid", "setgid", "seteuid", "setegid", "setgroups", "initgroups"], identity);
  replace(process, ["dlopen"], refuse("native modules"));
  replace(process, ["binding", "_linkedBinding"], refuse("the inner parts of Node"));
  replace(net.Socket.prototype, ["connect"], network);
  replace(net.Server.prototype, ["listen"], network);
  replace(dgram.Socket.prototype, ["bind", "connect", "send"], network);
  replace(dns, ["lookup", "resolve", "resolve4", "resolve6", "reverse"], network);
  replace(dns.promises, ["lookup", "resolve", "resolve4", "resolve6", "reverse"], network);
  replace(globalThis, ["fetch", "WebSocket", "EventSource"], network);
}

function replace(target: object, names: readonly string[], by: () => never): void {
  for (const name of names)
    if (name in target)
      Object.defineProperty(target, name, {
        value: by,
        writable: false,
        configurable: false,
        enumerable: true,
      });
}
