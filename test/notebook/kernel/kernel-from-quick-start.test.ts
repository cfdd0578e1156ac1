// All that kernel.test.ts asks of a kernel, once more of a kernel from a prepared start.
import "./prepared-start.js";
import "./kernel.test.js";
import { describe, expect, it } from "vitest";
import { KernelClient } from "../../../kernel-helpers/notebook/client/kernel-client.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

describe("the kernel of these tests", () => {
  it("did start from a prepared start", async () => {
    const kernel = await KernelClient.start({ directory: temporaryFolder() });
    const { outputs } = await kernel
      .execute("process.mainModule === undefined")
      .finally(() => kernel.close());
    expect(outputs.at(-1)?.content.data).toEqual({ "text/plain": "true" });
  });
});
