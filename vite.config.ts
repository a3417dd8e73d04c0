import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { contentSecurityPolicy } from "./scripts/contentSecurityPolicy.mjs";
import { LEAST_PERCENT } from "./scripts/coverage.mjs";
import { offlineWorker } from "./scripts/offline.mjs";

export default defineConfig({
  base: "./",
  plugins: [react(), contentSecurityPolicy(), offlineWorker()],
  worker: { format: "es" },
  build: { target: "es2022", assetsInlineLimit: 0 },
  test: {
    // As many as there are cores: by itself it leaves one idle, which is half of what two cores can do.
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        test: {
          name: "node",
          // No test is timed: a slow machine must not fail one.
          testTimeout: 60_000,
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/browser/**"],
          setupFiles: ["tests/fixedSeed.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "planner",
          testTimeout: 60_000,
          environment: "jsdom",
          include: ["tests/**/*.test.tsx"],
          setupFiles: ["tests/fixedSeed.ts", "tests/planner/dom.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          environment: "node",
          include: ["tests/browser/**/*.browser.ts"],
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
    ],
    coverage: {
      provider: "v8",
      include: ["src/core/**/*.ts"],
      reporter: ["text", "json-summary"],
      thresholds: { lines: LEAST_PERCENT, branches: LEAST_PERCENT },
    },
  },
});
