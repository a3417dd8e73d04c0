/** How the demo's two masters were made: weighed to the gram as wanted, all invented. */
import type { Dilution, PotEntry, SheetLine } from "../../src/job/potDocument.ts";
import { demoId } from "./seededIds.ts";

const MADE_AT = "2026-01-12T08:30:00.000Z";
const BY = "Demo";
const BATCH_GRAMS = 500;

const CLEAR = demoId("item Curable clear");
const BLACK = demoId("item Black");

function clear(grams: number): SheetLine {
  const contents = [{ itemId: CLEAR, massFraction: 1 }];
  return { id: CLEAR, role: "base", name: "Curable clear", contents, exactGrams: grams, grams };
}

/** The 10 % one from neat black, the 2 % one let down from it. */
const TINTS: readonly { readonly massFraction: number; readonly line: SheetLine }[] = [
  {
    massFraction: 0.1,
    line: {
      id: BLACK,
      role: "colourant",
      name: "Black",
      contents: [{ itemId: BLACK, massFraction: 1 }],
      exactGrams: 50,
      grams: 50,
    },
  },
  {
    massFraction: 0.02,
    line: {
      id: demoId("master black 0.1"),
      role: "master",
      name: "Black, 10 % in Curable clear",
      contents: [
        { itemId: BLACK, massFraction: 0.1 },
        { itemId: CLEAR, massFraction: 0.9 },
      ],
      exactGrams: 100,
      grams: 100,
    },
  },
];

export function demoDilutions(): Dilution[] {
  return TINTS.map(({ massFraction, line }) => ({
    id: demoId(`dilution black ${massFraction}`),
    colourantId: BLACK,
    baseId: CLEAR,
    massFraction,
    madeOn: "2026-01-12",
    scaleStepGrams: 0.1,
    batchGrams: BATCH_GRAMS,
    lines: [clear(BATCH_GRAMS - line.grams), line],
    baseLots: [{ itemId: CLEAR, code: "CC-2511" }],
    by: BY,
    at: MADE_AT,
    expiresOn: "2026-07-12",
    note: "",
    supersedesId: null,
  }));
}

/** Every line of both, weighed as written. */
export function demoDilutionEntries(): PotEntry[] {
  return demoDilutions().flatMap((dilution) =>
    dilution.lines.map((line) => ({
      id: demoId(`entry ${dilution.massFraction} ${line.name}`),
      potId: dilution.id,
      kind: "weighed" as const,
      lineId: line.id,
      grams: line.grams,
      by: BY,
      at: MADE_AT,
      note: "",
      supersedesId: null,
    })),
  );
}
