import { defineConfig } from "vitest/config";
import { inFrontOfAPerson } from "./vitest.config.mjs";

// One file at a time: a browser, a kernel and a build beside each other make a small machine wait.
export default defineConfig({
  test: {
    include: [...inFrontOfAPerson],
    env: { JOURNALBOX_QUICK_START: "off" },
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 180_000,
    retry: 1,
  },
});
