import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { contentSecurityPolicy } from "./scripts/contentSecurityPolicy.mjs";

export default defineConfig({
  base: "./",
  plugins: [react(), contentSecurityPolicy()],
  worker: { format: "es" },
  build: { target: "es2022", assetsInlineLimit: 0 },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: "node",
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
          environment: "jsdom",
          include: ["tests/**/*.test.tsx"],
          setupFiles: ["tests/fixedSeed.ts", "tests/planner/dom.ts"],
        },
      },
    ],
    coverage: {
      provider: "v8",
      include: ["src/core/**"],
      reporter: ["text", "json-summary"],
      thresholds: { lines: 95, branches: 95 },
    },
  },
});
