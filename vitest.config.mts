import { defineConfig } from "vitest/config";

// Tests that drive a browser or Jupyter in front of the whole program: `npm run test:browser`.
export const inFrontOfAPerson: readonly string[] = [
  "test/live/page/**/*.test.ts",
  "test/live/grid/*.test.ts",
  "test/front-ends/**/*.test.ts",
  "test/installed/*.test.ts",
];

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: [...inFrontOfAPerson],
    globalSetup: "test/support/shared-folder.ts",
    // A test that registers the kernel must not write a prepared start into the cache of whoever runs it.
    env: { JOURNALBOX_QUICK_START: "off" },
    // One worker for each processor: most wait for kernels and programs of their own half of the time.
    maxWorkers: "100%",
    testTimeout: 60_000,
    hookTimeout: 120_000,
    benchmark: { include: ["test/**/*.bench.ts"] },
  },
});
