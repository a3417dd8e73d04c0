/** What follows from a mesh's label and from a set-up: figures to be shown beside what was entered, never stored. */
import {
  depositUm,
  type Mesh as MeshGeometry,
  MIX_TRANSFER_FRACTION,
  openAreaFraction,
  openingUm,
  THICKNESS_PER_THREAD,
  theoreticalInkVolume,
} from "../core/screen/mesh.ts";
import { applicationFor, applicationProblems } from "./predictionInputs.ts";
import type { Problem } from "./problem.ts";
import type { Mesh, SetUp, Shelf } from "./shelfDocument.ts";

export interface MeshFigures {
  readonly openingUm: number;
  readonly openAreaFraction: number;
  /** As entered, or 1.6 thread diameters. */
  readonly thicknessUm: number;
  readonly thicknessEstimated: boolean;
  /** Theoretical ink volume, cm3/m2 = um. */
  readonly volumeUm: number;
}

type Woven = Pick<Mesh, "threadsPerCm" | "threadUm" | "thicknessUm">;

const UM_PER_CM = 1e4;

function geometry({ threadsPerCm, threadUm, thicknessUm }: Woven): MeshGeometry {
  return { threadsPerCm, threadDiameterUm: threadUm, fabricThicknessUm: thicknessUm ?? undefined };
}

/** The figures of a mesh; null where its threads leave no opening. */
export function meshFigures(mesh: Woven): MeshFigures | null {
  if (mesh.threadsPerCm * mesh.threadUm >= UM_PER_CM) return null;
  const woven = geometry(mesh);
  const { volumeUm, thicknessEstimated } = theoreticalInkVolume(woven);
  return {
    openingUm: openingUm(woven),
    openAreaFraction: openAreaFraction(woven),
    thicknessUm: mesh.thicknessUm ?? THICKNESS_PER_THREAD * mesh.threadUm,
    thicknessEstimated,
    volumeUm,
  };
}

export type DepositFigures =
  | { readonly ok: true; readonly depositUm: number; readonly weighed: boolean; readonly inkToMixUm: number }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * The film of a set-up as the prediction takes it, and the film for which ink is mixed: a weighed one is both, an
 * estimated one is mixed for at full transfer so that the pot does not run short (model.md §8).
 */
export function depositFigures(setUp: SetUp, shelf: Shelf): DepositFigures {
  const problems = applicationProblems(setUp, shelf);
  if (problems.length > 0) return { ok: false, problems };
  const solid = applicationFor(setUp, { halftoneFraction: 1, smoothed: false }, shelf);
  const mesh = shelf.meshes.find((item) => item.id === setUp.meshId);
  const squeegee = shelf.squeegees.find((item) => item.id === setUp.squeegeeId);
  const weighed = solid.depositWeighed || mesh === undefined || squeegee === undefined;
  const inkToMixUm = weighed
    ? solid.depositUm
    : depositUm(geometry(mesh), {
        strokeCount: setUp.strokeCount,
        harderBlade: squeegee.hard,
        transferFraction: MIX_TRANSFER_FRACTION,
      });
  return { ok: true, depositUm: solid.depositUm, weighed: solid.depositWeighed, inkToMixUm };
}
