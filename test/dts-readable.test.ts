import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "@tslab/typescript-for-tslab";
import { beforeAll, expect, it } from "vitest";
import { buildTimeout, ensureBuilt } from "./support/built.js";

const root = join(__dirname, "..");

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

beforeAll(ensureBuilt, buildTimeout);

it("the declarations that cells are checked against can be read by the TypeScript of tslab, without skipping checks", () => {
  const { types } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { types: string };
  expect(ts.version).toBe("5.0.4");
  expect(faultsIn([join(root, types).replaceAll("\\", "/")])).toEqual([]);
});

it("the check finds a declaration that is too new for it", () => {
  const newer = join(__dirname, "support", "too-new.d.ts").replaceAll("\\", "/");
  expect(faultsIn([newer]).join()).toMatch(/NoInfer/);
});
