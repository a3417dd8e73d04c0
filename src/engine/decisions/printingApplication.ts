/** How a printing gets onto the cloth: by the shelf's own set-up where there is one, else scaled from its nearest relative. */
import type { Printing } from "../../core/planning/decisions/recoverChanges.ts";
import type { Application } from "../../core/prediction/inputs.ts";
import { depositUm, type Mesh } from "../../core/screen/mesh.ts";
import type { Place } from "../../job/jobDocument.ts";
import { applicationFor, applicationProblems } from "../../job/predictionInputs.ts";
import type { SetUp, Shelf } from "../../job/shelfDocument.ts";

export interface PrintingApplication {
  readonly application: Application;
  /** The shelf's set-up, by which records are found; a key of its own where there is none. */
  readonly setUpKey: string;
  readonly setUpId: string | null;
}

function estimatedUm({ screenKey, squeegeeKey, strokeCount }: Printing, shelf: Shelf): number | null {
  const mesh = shelf.meshes.find(({ id }) => id === screenKey);
  const squeegee = shelf.squeegees.find(({ id }) => id === squeegeeKey);
  if (mesh === undefined || squeegee === undefined) return null;
  const woven: Mesh = {
    threadsPerCm: mesh.threadsPerCm,
    threadDiameterUm: mesh.threadUm,
    fabricThicknessUm: mesh.thicknessUm ?? undefined,
  };
  return depositUm(woven, { strokeCount, harderBlade: squeegee.hard });
}

const pullOf = ({ meshId, squeegeeId, strokeCount }: SetUp, printing: Printing): Printing => ({
  ...printing,
  screenKey: meshId,
  squeegeeKey: squeegeeId,
  strokeCount,
});

/**
 * A set-up of the same mesh, blade and strokes is taken as it is. Other strokes or another blade on a mesh: the deposit of a
 * set-up of that mesh, the weighed one first, times the ratio that the mesh rule gives; it counts as an estimate.
 * @returns null where the shelf knows no deposit for that mesh.
 */
export function printingApplication(
  printing: Printing,
  place: Place,
  shelf: Shelf,
): PrintingApplication | null {
  const at = { halftoneFraction: printing.halftoneFraction, smoothed: place.smoothed };
  const ofMesh = shelf.setUps.filter(
    (setUp) => setUp.meshId === printing.screenKey && applicationProblems(setUp, shelf).length === 0,
  );
  const same = ofMesh.find(
    ({ squeegeeId, strokeCount }) =>
      squeegeeId === printing.squeegeeKey && strokeCount === printing.strokeCount,
  );
  if (same !== undefined) {
    return { application: applicationFor(same, at, shelf), setUpKey: same.id, setUpId: same.id };
  }
  const near = ofMesh.find(({ weighed }) => weighed !== null) ?? ofMesh[0];
  const wanted = estimatedUm(printing, shelf);
  const of = near === undefined ? null : estimatedUm(pullOf(near, printing), shelf);
  if (near === undefined || wanted === null || of === null) return null;
  const known = applicationFor(near, at, shelf);
  return {
    application: { ...known, depositUm: (known.depositUm * wanted) / of, depositWeighed: false },
    setUpKey: [printing.screenKey, printing.squeegeeKey, printing.strokeCount].join(" "),
    setUpId: null,
  };
}
