import { defineConfig } from "vitest/config";

/** Long simulations, run by hand: they write the tables in this folder. */
export default defineConfig({
  test: { include: ["test/studies/*.study.ts"], testTimeout: 900_000 },
});
