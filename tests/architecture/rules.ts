/**
 * Who may import whom, as data: DEVELOPERS.md shows the same table. Anything not listed is forbidden.
 * A zone is src/ZONE/, or src/core/PART/; main.tsx is a zone by itself.
 */

/** How much of a zone is open: all of it, or its types. */
export type Opening = "all" | "types";

const light = { "core/spectrum": "all", "core/tables": "all" } as const;
const prediction = {
  "core/spectrum": "all",
  "core/colorimetry": "all",
  "core/optics": "all",
  "core/screen": "all",
} as const;
const evidence = { ...prediction, "core/prediction": "all" } as const;

/** "core" opens every part of core. Units are open to all but core. */
export const mayImport: Readonly<Record<string, Readonly<Record<string, Opening>>>> = {
  "core/spectrum": {},
  "core/tables": {},
  "core/screen": {},
  "core/colorimetry": light,
  "core/optics": light,
  "core/prediction": prediction,
  "core/evidence": evidence,
  "core/planning": { ...evidence, "core/evidence": "all" },
  // Turning a saved garment, mix or set-up into what the model takes is the documents' business, and needs core's functions.
  job: { core: "all", units: "all" },
  exchange: { job: "all", core: "all", units: "all" },
  storage: { job: "all", exchange: "all", units: "all" },
  artwork: { core: "all", job: "all", units: "all" },
  engine: { core: "all", job: "all", exchange: "all", artwork: "all", units: "all" },
  units: {},
  // The command-line twin does the work of the engine's workers in its own process.
  command: { job: "all", core: "all", exchange: "all", engine: "all", units: "all" },
  planner: { job: "all", core: "types", exchange: "types", engine: "all", artwork: "all", units: "all" },
};

/** main.tsx joins everything, and alone may reach beyond src: to the demo job. */
export const START_UP = "main.tsx";
export const outsideSource = ["demo-data/"];

/** Packages by zone; "core" stands for each part of it. "node:" opens Node's own modules. */
export const mayUsePackages: Readonly<Record<string, readonly string[]>> = {
  core: ["culori"],
  job: ["zod"],
  exchange: ["zod", "papaparse", "fast-xml-parser"],
  storage: ["idb", "browser-fs-access", "zod"],
  artwork: [],
  // highs: the mixed-integer solver, in a worker of its own.
  engine: ["comlink", "highs"],
  units: [],
  command: ["node:", "highs"],
  planner: ["react", "react-dom", "@tanstack/react-virtual", "zustand", "zundo", "d3-scale", "d3-shape"],
  [START_UP]: ["react", "react-dom", "zod"],
};

/** Where the same input must give the same output for ever: no clock, no chance, no console. */
export const pureZones = ["core", "job", "exchange"];
export const impure = [
  { name: "Date.now", pattern: /\bDate\s*\.\s*now\b/ },
  { name: "new Date(", pattern: /\bnew\s+Date\b/ },
  { name: "Math.random", pattern: /\bMath\s*\.\s*random\b/ },
  { name: "crypto", pattern: /\bcrypto\b/ },
  { name: "console", pattern: /\bconsole\b/ },
];

export const drawerName = /^(?:utils?|commons?|shared|helpers?|types|index)(?:\.[^/]*)?$/i;
export const LONGEST_FILE_LINES = 300;
