import { spawnSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import ts from "@tslab/typescript-for-tslab";
import { expect, it } from "vitest";

const root = join(__dirname, "..");
const dist = join(root, "dist");

function buildIfMissing(): void {
  if (existsSync(join(dist, "index.d.ts"))) return;
  const compiler = join(root, "node_modules", "typescript", "bin", "tsc");
  const built = spawnSync(process.execPath, [compiler, "-p", join(root, "tsconfig.build.json")], {
    encoding: "utf8",
  });
  if (built.status !== 0) throw new Error(`the build failed:\n${built.stdout}${built.stderr}`);
}

/** What tslab's TypeScript says to declaration files, each on a line; those of other packages are left out. */
function faultsIn(files: readonly string[]): string[] {
  const program = ts.createProgram(files, {
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2022.d.ts"],
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.NodeJs,
    esModuleInterop: true,
    noEmit: true,
    skipLibCheck: false,
    strict: true,
    types: ["node"],
    typeRoots: [join(root, "node_modules", "@types")],
  });
  const own = new Set(files.map((file) => program.getSourceFile(file)));
  return [...own].flatMap((file) =>
    [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
      (fault) => `${fault.file?.fileName}: ${ts.flattenDiagnosticMessageText(fault.messageText, "\n")}`,
    ),
  );
}

it("every built declaration can be read by the TypeScript of tslab, without skipping checks", () => {
  buildIfMissing();
  const files = readdirSync(dist, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".d.ts"))
    .map((path) => join(dist, path).replaceAll("\\", "/"));
  expect(files.length).toBeGreaterThan(0);
  expect(ts.version).toBe("5.0.4");
  expect(faultsIn(files)).toEqual([]);
});

it("the check finds a declaration that is too new for it", () => {
  const newer = join(__dirname, "support", "too-new.d.ts").replaceAll("\\", "/");
  expect(faultsIn([newer]).join()).toMatch(/NoInfer/);
});
