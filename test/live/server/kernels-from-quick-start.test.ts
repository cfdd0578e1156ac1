// All that kernels.test.ts asks of live kernels, once more of kernels from a prepared start.
import "../../notebook/kernel/prepared-start.js";
import "./kernels.test.js";
import { existsSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  quickStartFile,
  readyQuickStart,
} from "../../../kernel-helpers/notebook/kernel/quick-start/quick-start-file.js";
import { KernelPage, liveRebuild, sheetFile } from "./live-client.js";

const files = { "sheets/01-a.ipynb": sheetFile("1 + 1") };

/** What a cell gives in the kernel of a page. */
async function shownBy(page: KernelPage, code: string): Promise<unknown> {
  const id = page.send(code);
  const { content } = await page.until(
    (m) => m.parent.msg_id === id && m.header.msg_type === "execute_result",
  );
  return (content.data as Record<string, unknown>)["text/plain"];
}

describe("the kernels of live pages", () => {
  it("do start from a prepared start", async () => {
    expect(readyQuickStart()).toBeDefined();
    const page = await KernelPage.open(await liveRebuild(files), "01-a");
    expect(await shownBy(page, "process.mainModule === undefined")).toBe("true");
  });

  it("start in the usual way where it is broken, which is then taken away", async () => {
    const file = quickStartFile();
    writeFileSync(file, "no snapshot");
    const page = await KernelPage.open(await liveRebuild(files), "01-a");
    expect(await shownBy(page, "process.mainModule === undefined")).toBe("false");
    expect(existsSync(file)).toBe(false);
  });
});
