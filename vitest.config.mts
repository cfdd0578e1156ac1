import { defineConfig } from "vitest/config";

// Tests that drive a browser or Jupyter in front of the whole program: `npm run test:browser`.
export const inFrontOfAPerson: readonly string[] = [
  "test/live/page/**/*.test.ts",
  "test/live/grid/*.test.ts",
  "test/front-ends/**/*.test.ts",
];

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: [...inFrontOfAPerson],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    benchmark: { include: ["test/**/*.bench.ts"] },
  },
});
