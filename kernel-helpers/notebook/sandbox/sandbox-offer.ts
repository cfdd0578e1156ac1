import { spawnSync } from "node:child_process";
import { realpathSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, sep } from "node:path";
import { packageRoot } from "../../record/package-root.js";

/** What this machine offers to keep foreign code in. */
export interface SandboxOffer {
  /** The switch of Node's permission model; undefined where this Node has none. */
  readonly permission: "--permission" | "--experimental-permission" | undefined;
  /** What closes the network: a namespace of Linux, Node's own permission model (from version 25), or nothing. */
  readonly network: "namespace" | "node" | "open";
  /** Whether other processes, and sockets in the file system, are out of reach by the operating system. */
  readonly apart: boolean;
}

/** The first version of Node whose permission model covers the network. */
const firstWithNetwork = 25;

/** Looks what this machine offers. Takes some milliseconds: on Linux the namespaces are tried. */
export function sandboxOffer(): SandboxOffer {
  const flags = process.allowedNodeEnvironmentFlags;
  const permission = flags.has("--permission")
    ? "--permission"
    : flags.has("--experimental-permission")
      ? "--experimental-permission"
      : undefined;
  const apart = canUnshare();
  const nodeCloses = Number(process.versions.node.split(".")[0]) >= firstWithNetwork;
  return Object.freeze({ permission, network: apart ? "namespace" : nodeCloses ? "node" : "open", apart });
}

/** What the sandbox keeps from the code, a sentence each. */
export function sandboxSentences({ permission, network, apart }: SandboxOffer): readonly string[] {
  if (permission === undefined)
    return ["This Node.js has no permission model: nothing can be kept from the code."];
  return [
    "It reads its own folder and nothing else, writes only the results in it, starts no programs and no threads, loads no native modules, and sees nothing of your environment (Node's permission model).",
    network === "namespace"
      ? "It has no network (a network namespace of its own)."
      : network === "node"
        ? "It has no network (Node's permission model)."
        : "The network CANNOT be closed to it on this machine.",
    apart
      ? "It sees no other processes (a process namespace of its own)."
      : "Other processes are kept from it by Node alone, not by the operating system.",
    "It may use 2 GB of memory, and each cell ten minutes.",
  ];
}

/** The program that puts a process into namespaces of its own, with its arguments; what is to be run follows. */
export function unshareCommand(folder: string): readonly [program: string, ...args: string[]] {
  const namespaces = ["--user", "--map-root-user", "--net", "--pid", "--ipc", "--uts", "--mount"];
  return [
    "unshare",
    ...namespaces,
    "--fork",
    "--kill-child",
    "--mount-proc",
    "sh",
    "-c",
    hideSockets,
    "sh",
    ...hidden(folder),
    "--",
  ];
}

/**
 * Puts empty folders over those where programs keep their sockets. The folder of the code stays: it is bound to a
 * place aside and moved back. Arguments: the folder, the folders to hide, "--", what to run.
 */
const hideSockets = `set -e
folder=$1; shift
mount -t tmpfs none /run
mkdir /run/kept
mount --bind "$folder" /run/kept
while [ "$1" != -- ]; do mount -t tmpfs none "$1"; shift; done
shift
mkdir -p "$folder"
mount --move /run/kept "$folder"
cd "$folder"
ulimit -c 0
exec "$@"`;

/** The folder, then the folders to hide: never one that holds this program or Node itself. */
function hidden(folder: string): readonly string[] {
  const needed = [packageRoot(), dirname(process.execPath)].map((path) => `${realpathSync(path)}${sep}`);
  const candidates = [...new Set(["/tmp", realpathSync(tmpdir())])].filter((path) => path !== "/");
  return [folder, ...candidates.filter((path) => !needed.some((place) => place.startsWith(`${path}${sep}`)))];
}

function canUnshare(): boolean {
  if (process.platform !== "linux") return false;
  const folder = realpathSync(tmpdir());
  const [program, ...args] = unshareCommand(folder);
  return spawnSync(program, [...args, "true"], { stdio: "ignore", timeout: 5000 }).status === 0;
}
