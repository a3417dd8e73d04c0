/** Where a mix is printed: per place and set-up the garments that chose it, the film, and grams per print. */

import { labFromHex } from "../../core/colorimetry/hex.ts";
import { dyeMigrationRisk } from "../../core/planning/ink/dyeMigration.ts";
import { gramsPerPrint, printedAreaM2 } from "../../core/planning/ink/inkQuantity.ts";
import { printQualityNotes } from "../../core/planning/ink/printQualityNotes.ts";
import { spoilageFraction, spoiledPieceCount } from "../../core/planning/ink/spoilage.ts";
import { publishedWetHeightUm } from "../../core/planning/ink/wetHeightRule.ts";
import type { LabDocument } from "../colourDocument.ts";
import type { Documents } from "../documents.ts";
import type { GarmentLot } from "../garmentLotDocument.ts";
import type { Line, Place } from "../jobDocument.ts";
import { lineName } from "../lineName.ts";
import { chosenCandidate, linesAt, lotOfLine, pieceCount, setUpOf } from "../lookup.ts";
import { depositFigures, meshFigures } from "../meshFigures.ts";
import type { Mix } from "../mixDocument.ts";
import type { Problem } from "../problem.ts";
import { bareLab } from "../screenColour.ts";
import type { SetUp, Shelf } from "../shelfDocument.ts";
import { weighedDeposit } from "../weighedDeposit.ts";
import type { InkUse, InkUseDeposit, InkUseLine } from "./inkBatch.ts";

/** The regions of risky colours are stated for it. */
const MIGRATION_VIEWING = { illuminant: "D65", observer: "10deg" } as const;

/** A screen colour is near enough to tell a red from a navy; readings stand under their own light. */
function bareColour({ bare }: GarmentLot): LabDocument | null {
  return bare.kind === "hex" ? labFromHex(bare.hex) : (bareLab(bare, MIGRATION_VIEWING)?.lab ?? null);
}

function inkUseLine(documents: Documents, line: Line, whiteFraction: number): InkUseLine {
  const lot = lotOfLine(documents, line);
  const bare = lot === null ? null : bareColour(lot);
  const dyedPolyesterFraction = (lot?.blend ?? [])
    .filter((part) => part.dyed && part.fibre === "polyester")
    .reduce((sum, part) => sum + part.massFraction, 0);
  return {
    lineId: line.id,
    name: lot === null ? "" : lineName(lot),
    pieceCount: pieceCount(line),
    thirsty: lot?.finish === "wicking",
    dyeMigration:
      lot === null || bare === null
        ? null
        : dyeMigrationRisk({ bare, dyedPolyesterFraction, whiteFraction, bleeds: lot.bleeds }),
  };
}

function wovenMesh(setUp: SetUp, shelf: Shelf) {
  const mesh = shelf.meshes.find((one) => one.id === setUp.meshId);
  if (mesh === undefined || meshFigures(mesh) === null) return null;
  const { threadsPerCm, threadUm, thicknessUm } = mesh;
  return { threadsPerCm, threadDiameterUm: threadUm, fabricThicknessUm: thicknessUm ?? undefined };
}

function inkUseOf(
  documents: Documents,
  ink: { readonly whiteFraction: number; readonly densityGramsPerCm3: number },
  place: Place,
  setUp: SetUp,
  chosen: readonly Line[],
): InkUse | readonly Problem[] {
  const { shelf } = documents.library;
  const figures = depositFigures(setUp, shelf);
  if (!figures.ok) {
    const at = `library.shelf.setUps[${shelf.setUps.indexOf(setUp)}]`;
    return figures.problems.map((problem) => ({ ...problem, where: `${at}.${problem.where}` }));
  }
  const woven = wovenMesh(setUp, shelf);
  const lines = chosen.map((line) => inkUseLine(documents, line, ink.whiteFraction));
  const pieces = lines.reduce((sum, line) => sum + line.pieceCount, 0);
  const areaM2 = printedAreaM2(place);
  const deposit: InkUseDeposit = {
    colourUm: figures.depositUm,
    inkToMixUm: figures.inkToMixUm,
    weighed: setUp.weighed === null ? null : weighedDeposit(setUp.weighed),
    publishedWetHeightUm: woven === null ? null : publishedWetHeightUm(woven),
  };
  const { spoilageRule } = shelf.defaults;
  return {
    id: `${place.id} ${setUp.id}`,
    placeId: place.id,
    placeName: place.name,
    setUpId: setUp.id,
    setUpName: setUp.name,
    lines,
    pieceCount: pieces,
    spoilageFraction: spoilageFraction(spoilageRule, pieces),
    spoiledPieceCount: spoiledPieceCount(spoilageRule, pieces),
    printedAreaM2: areaM2,
    deposit,
    mixedGramsPerPrint: gramsPerPrint(areaM2, deposit.inkToMixUm, ink.densityGramsPerCm3),
    expectedGramsPerPrint: gramsPerPrint(areaM2, deposit.colourUm, ink.densityGramsPerCm3),
    notes:
      woven === null
        ? []
        : printQualityNotes({
            threadsPerCm: woven.threadsPerCm,
            depositUm: deposit.colourUm,
            thirsty: lines.some((line) => line.thirsty),
          }),
  };
}

/** The uses of a mix in the job's order, and why some cannot be counted; paths in the archive. */
export function inkUses(
  documents: Documents,
  mix: Mix,
  ink: { readonly whiteFraction: number; readonly densityGramsPerCm3: number },
): { readonly uses: readonly InkUse[]; readonly problems: readonly Problem[] } {
  const { job, library } = documents;
  const uses: InkUse[] = [];
  const problems: Problem[] = [];
  job.places.forEach((place, placeIndex) => {
    const bySetUp = new Map<string, Line[]>();
    for (const line of linesAt(job, place)) {
      const candidate = chosenCandidate(job, line.id, place.id);
      if (candidate?.mixId !== mix.id) continue;
      bySetUp.set(candidate.setUpId, [...(bySetUp.get(candidate.setUpId) ?? []), line]);
    }
    for (const [setUpId, lines] of bySetUp) {
      const setUp = setUpOf(library.shelf, setUpId);
      if (setUp === null) {
        problems.push({
          code: "set-up-missing",
          where: `job.places[${placeIndex}].candidates`,
          detail: setUpId,
        });
        continue;
      }
      const use = inkUseOf(documents, ink, place, setUp, lines);
      if ("id" in use) uses.push(use);
      else problems.push(...use);
    }
  });
  return { uses, problems };
}
