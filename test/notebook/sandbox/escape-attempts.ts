import { homedir } from "node:os";
import { join } from "node:path";

/** What a foreign cell may try, and what keeps it from it. */
export interface EscapeAttempt {
  readonly what: string;
  readonly code: string;
  /** How it is refused; that the sandbox does not allow it, where not given. */
  readonly refusal?: RegExp;
}

/** What lies outside may be refused, or not even be there to be seen. */
const unseen = /the sandbox does not allow|Cannot find module/;

/** Things of the machine the attempts are after. */
export interface Targets {
  /** A folder outside the sandbox, with a file `secret.txt`. */
  readonly outside: string;
  /** A port of 127.0.0.1 at which somebody listens. */
  readonly port: number;
  /** A socket in the file system at which somebody listens. */
  readonly socket: string;
  /** A process that must go on. */
  readonly pid: number;
  /** A native module. */
  readonly addon: string;
}

/** Attempts that must be refused, each with an error in the cell. */
export function escapeAttempts({ outside, port, socket, pid, addon }: Targets): readonly EscapeAttempt[] {
  const out = (name: string): string => JSON.stringify(`${outside}/${name}`);
  const fs = 'const fs = await import("node:fs"); ';
  const fsp = 'const fsp = await import("node:fs/promises"); ';
  const any = "const p: any = process; ";
  return [
    { what: "read /etc/passwd", code: `${fs}fs.readFileSync("/etc/passwd")` },
    { what: "read a file outside", code: `${fs}fs.readFileSync(${out("secret.txt")}, "utf8")` },
    { what: "read it with promises", code: `${fsp}await fsp.readFile(${out("secret.txt")})` },
    {
      what: "read it up the folders",
      code: `${fs}fs.readFileSync("../../../../../../../..${outside}/secret.txt")`,
    },
    { what: "read it as a Buffer path", code: `${fs}fs.readFileSync(Buffer.from(${out("secret.txt")}))` },
    {
      what: "read it as an address",
      code: `${fs}fs.readFileSync(new URL("file://" + ${out("secret.txt")}))`,
    },
    {
      what: "stream it",
      code: `${fs}await new Promise((_, no) => fs.createReadStream(${out("secret.txt")}).on("error", no))`,
    },
    { what: "open it as a blob", code: `${fs}await (fs as any).openAsBlob(${out("secret.txt")})` },
    {
      what: "list the keys of the user",
      code: `${fs}fs.readdirSync(${JSON.stringify(join(homedir(), ".ssh"))})`,
    },
    { what: "list a folder outside", code: `${fs}fs.readdirSync(${JSON.stringify(outside)})` },
    { what: "read the environment of another process", code: `${fs}fs.readFileSync("/proc/${pid}/environ")` },
    { what: "read its own memory map", code: `${fs}fs.readFileSync("/proc/self/maps")` },
    {
      what: "load a file outside as a module",
      code: `const m = await import("node:module"); m.createRequire("/")(${out("secret.json")})`,
      refusal: unseen,
    },
    {
      what: "import a file outside",
      code: `const file: string = ${out("secret.mjs")}; await import(file)`,
      refusal: unseen,
    },
    { what: "write outside", code: `${fs}fs.writeFileSync(${out("written.txt")}, "x")` },
    { what: "append outside", code: `${fs}fs.appendFileSync(${out("secret.txt")}, "x")` },
    {
      what: "stream to a file outside",
      code: `${fs}await new Promise((_, no) => fs.createWriteStream(${out("written.txt")}).on("error", no))`,
    },
    { what: "open for writing with promises", code: `${fsp}await fsp.open(${out("written.txt")}, "w")` },
    { what: "make a folder outside", code: `${fs}fs.mkdirSync(${out("made")})` },
    { what: "remove a file outside", code: `${fs}fs.rmSync(${out("secret.txt")})` },
    {
      what: "move a result outside",
      code: `${fs}fs.writeFileSync("out/x", ""); fs.renameSync("out/x", ${out("written.txt")})`,
    },
    { what: "copy a file in", code: `${fs}fs.copyFileSync(${out("secret.txt")}, "out/copy.txt")` },
    { what: "link to a file outside", code: `${fs}fs.symlinkSync(${out("secret.txt")}, "out/link.txt")` },
    { what: "link relatively", code: `${fs}fs.symlinkSync("../../secret.txt", "out/link.txt")` },
    { what: "hard-link a file outside", code: `${fs}fs.linkSync(${out("secret.txt")}, "out/hard.txt")` },
    { what: "change rights outside", code: `${fs}fs.chmodSync(${out("secret.txt")}, 0o777)` },
    { what: "alter its own readings", code: `${fs}fs.writeFileSync("tables/t.csv", "x")` },
    { what: "alter its own sheets", code: `${fs}fs.writeFileSync("sheets/01-t.ipynb", "x")` },
    { what: "alter rebuild.json", code: `${fs}fs.rmSync("rebuild.json")` },
    { what: "run a command", code: 'const c = await import("node:child_process"); c.execSync("id")' },
    {
      what: "spawn a program",
      code: 'const c = await import("node:child_process"); await new Promise((_, no) => c.spawn("/bin/id").on("error", no))',
    },
    { what: "fork itself", code: 'const c = await import("node:child_process"); c.fork("sheets/x.js")' },
    { what: "form a cluster", code: 'const c = await import("node:cluster"); c.default.fork()' },
    {
      what: "start a thread",
      code: 'const w = await import("node:worker_threads"); new w.Worker("1", { eval: true })',
    },
    { what: "load a native module", code: `process.dlopen({ exports: {} }, ${JSON.stringify(addon)})` },
    {
      what: "require a native module",
      code: `const m = await import("node:module"); m.createRequire(${JSON.stringify(addon)})(${JSON.stringify(addon)})`,
    },
    { what: "reach the inner parts of Node", code: `${any}p.binding("spawn_sync")` },
    { what: "reach them another way", code: `${any}p._linkedBinding("fs")` },
    {
      what: "attach the inspector",
      code: 'const i = await import("node:inspector"); new i.Session().connect()',
    },
    { what: "open the inspector", code: 'const i = await import("node:inspector"); i.open(0)' },
    {
      what: "run WASI",
      code: 'const w = await import("node:wasi"); new w.WASI({ version: "preview1", preopens: { "/": "/" } } as never)',
    },
    { what: "signal another process", code: `process.kill(${pid}, 0)` },
    { what: "end everything", code: "process.kill(-1)" },
    { what: "signal behind the curtain", code: `${any}p._kill(${pid}, 9)` },
    { what: "debug another process", code: `${any}p._debugProcess(${pid})` },
    { what: "become another user", code: `${any}p.setuid(12345)` },
    { what: "stand elsewhere", code: 'process.chdir("/etc")' },
    { what: "write a diagnostic report", code: `${any}p.report.writeReport(${out("report.json")})` },
    {
      what: "write the heap",
      code: `const v = await import("node:v8"); v.writeHeapSnapshot(${out("heap")})`,
    },
    { what: "fetch", code: `await (globalThis as any).fetch("http://127.0.0.1:${port}/fetch")` },
    {
      what: "fetch over http",
      code: `const h = await import("node:http"); await new Promise((_, no) => h.get("http://127.0.0.1:${port}/http").on("error", no))`,
    },
    { what: "connect", code: `const n = await import("node:net"); n.connect(${port}, "127.0.0.1")` },
    {
      what: "connect with a socket of its own",
      code: `const n = await import("node:net"); new n.Socket().connect(${port})`,
    },
    {
      what: "connect to a socket in the file system",
      code: `const n = await import("node:net"); n.connect(${JSON.stringify(socket)})`,
    },
    {
      what: "connect with TLS",
      code: `const t = await import("node:tls"); await new Promise((_, no) => t.connect(${port}, "127.0.0.1").on("error", no))`,
    },
    { what: "listen", code: 'const n = await import("node:net"); n.createServer().listen(0)' },
    {
      what: "send a datagram",
      code: `const d = await import("node:dgram"); d.createSocket("udp4").send("x", ${port}, "127.0.0.1")`,
    },
    { what: "ask for a name", code: 'const d = await import("node:dns"); d.lookup("example.org", () => {})' },
  ];
}
