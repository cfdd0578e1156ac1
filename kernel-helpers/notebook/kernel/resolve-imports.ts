import Module from "node:module";
import { basename, delimiter, dirname, join, parse } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { packageName, packageRoot } from "../../record/package-root.js";

/**
 * Lets a cell import from anywhere, the same way for types and at run time:
 *
 * - the package itself is always this installation, wherever the notebook lies;
 * - any other package is looked for as Node does, from the notebook's folder upward;
 * - last come the packages installed beside this one.
 */
export function resolveImports(ts: typeof TypeScript): void {
  const root = packageRoot();
  const beside = [join(root, "node_modules"), dirname(root)].filter(
    (folder) => basename(folder) === "node_modules",
  );
  resolveTypes(ts.sys, root, beside);
  resolveAtRunTime(root, beside);
}

type NodeResolver = (request: string, ...rest: unknown[]) => string;

function resolveAtRunTime(root: string, beside: readonly string[]): void {
  process.env.NODE_PATH = [process.env.NODE_PATH, ...beside].filter(Boolean).join(delimiter);
  // Node reads NODE_PATH once, at its start; these two members are undocumented but have been there since Node 0.x.
  const loader = Module as unknown as { _initPaths(): void; _resolveFilename: NodeResolver };
  loader._initPaths();
  const asNodeDoes = loader._resolveFilename;
  loader._resolveFilename = function (request, ...rest): string {
    const own = request === packageName || request.startsWith(`${packageName}/`);
    return asNodeDoes.call(this, own ? join(root, request.slice(packageName.length)) : request, ...rest);
  };
}

/** TypeScript asks the file system through these; each takes a path first. */
const lookUps = [
  "fileExists",
  "directoryExists",
  "readFile",
  "readDirectory",
  "getDirectories",
  "realpath",
] as const;

function resolveTypes(sys: TypeScript.System, root: string, beside: readonly string[]): void {
  const exists = [sys.fileExists, sys.directoryExists].map((ask) => ask.bind(sys));
  const found = (path: string): boolean => exists.some((ask) => ask(path));

  // TypeScript looks for each part of its own library in a package first that nobody has.
  const library = /\/node_modules\/@typescript(\/lib-[^/]*)?$/;
  const { directoryExists } = sys;
  sys.directoryExists = (path) => !library.test(path) && directoryExists.call(sys, path);

  const redirect = (path: string): string => {
    const cwd = sys.getCurrentDirectory().replaceAll("\\", "/");
    const own = `${cwd}/node_modules/${packageName}`;
    if (path === own || path.startsWith(`${own}/`)) return root + path.slice(own.length);
    // The topmost node_modules is where TypeScript looks last, as NODE_PATH is for Node.
    const topmost = `${parse(cwd).root.replaceAll("\\", "/")}node_modules`;
    if (path !== topmost && !path.startsWith(`${topmost}/`)) return path;
    if (found(path)) return path;
    return beside.map((folder) => folder + path.slice(topmost.length)).find(found) ?? path;
  };

  const patched = sys as unknown as Record<string, (path: string, ...rest: unknown[]) => unknown>;
  for (const name of lookUps) {
    const original = patched[name]!;
    patched[name] = (path, ...rest) => original.call(sys, redirect(path), ...rest);
  }
  // Installed packages do not change under a running kernel: watching them costs handles and time.
  const watchFile = sys.watchFile!;
  sys.watchFile = (path, ...rest) =>
    /\/node_modules\/|\/lib\.[^/]*\.d\.ts$/.test(path) ? { close() {} } : watchFile.call(sys, path, ...rest);
  // TypeScript remembers the first answer; a kernel may move to another folder.
  sys.getCurrentDirectory = () => process.cwd();
}
