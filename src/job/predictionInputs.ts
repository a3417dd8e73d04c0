/** From the documents to what the prediction takes: a garment, an ink mix, and how the mix gets onto the cloth. */
import {
  blackInk,
  type Colourant as ColourantOptics,
  colourantCountedAs,
  tintFromMasstone,
  whiteInk,
} from "../core/optics/colourant.ts";
import type { FibreName } from "../core/optics/wetOut.ts";
import type { Application, ColourantPart, Garment, InkMix, MixPart } from "../core/prediction/inputs.ts";
import { depositUm, depositUmFromGsm, type Mesh } from "../core/screen/mesh.ts";
import { colourSpectrum } from "./colourSpectrum.ts";
import type { Fibre, GarmentLot } from "./garmentLotDocument.ts";
import type { Place } from "./jobDocument.ts";
import { recipeItem } from "./lookup.ts";
import type { Mix, MixComponent } from "./mixDocument.ts";
import { mixProblems } from "./mixProblems.ts";
import type { Problem } from "./problem.ts";
import type { Colourant, SetUp, Shelf } from "./shelfDocument.ts";
import { weighedDeposit } from "./weighedDeposit.ts";

const UM_PER_CM = 1e4;

interface Refused {
  readonly ok: false;
  readonly problems: readonly Problem[];
}

/** Wet-out strength of a ready-made ink as its own base: 1 unless known (model.md, symbols). */
const OWN_BASE_STRENGTH = 1;

function refused(code: string, where: string, more: Omit<Problem, "code" | "where"> = {}): Refused {
  return { ok: false, problems: [{ code, where, ...more }] };
}

function fibreName(fibre: Fibre, yarn: GarmentLot["yarn"]): FibreName {
  return fibre === "polyester" ? `polyester-${yarn}` : fibre;
}

/**
 * The garment of a lot. A screen colour has no geometry of its own and takes the shop's instrument's, so that it
 * compares with the shop's readings; `bareMoved` tells that it had to give up chroma to be one that cloth can have.
 * Paths in problems start at the lot; codes: `colour-no-cloth-has`, `colour-at-the-limit`.
 */
export function garmentFor(
  lot: GarmentLot,
  shelf: Shelf,
): { readonly ok: true; readonly garment: Garment; readonly bareMoved: boolean } | Refused {
  const bare = colourSpectrum(lot.bare, "bare");
  if (!bare.ok) return bare;
  const garment: Garment = {
    bare: bare.reflectance,
    bareSource: bare.source,
    readUnder: bare.readUnder,
    fibres: lot.blend.map(({ fibre, massFraction, dyed }) => ({
      fibre: fibreName(fibre, lot.yarn),
      massFraction,
      dyed,
    })),
    resistantFinish: lot.finish === "silicone" || lot.finish === "repellent",
    geometry: lot.bare.kind === "hex" ? shelf.defaults.instrument.geometry : lot.bare.geometry,
  };
  return { ok: true, garment, bareMoved: bare.moved };
}

function masstoneOptics(
  colourant: Colourant,
  where: string,
): { ok: true; optics: ColourantOptics } | Refused {
  if (colourant.optics.kind !== "masstone") throw new RangeError(`optics must be a masstone; got ${where}`);
  const { masstone, strengthPerUm } = colourant.optics;
  const values = { name: colourant.name };
  if (!(strengthPerUm > 0)) return refused("colourant-without-strength", where, { values });
  const found = colourSpectrum(masstone, where);
  if (!found.ok) return found;
  const isLayer = found.reflectance.every((value) => value > 0 && value <= 1);
  if (!isLayer || found.reflectance.every((value) => value === 1)) {
    return refused("masstone-impossible", where, { values });
  }
  const readyMade = tintFromMasstone(found.reflectance, strengthPerUm, "ready-made-ink");
  return { ok: true, optics: colourantCountedAs(readyMade, colourant.strengthDefinition) };
}

function colourantOptics(
  colourant: Colourant,
  where: string,
): { ok: true; optics: ColourantOptics } | Refused {
  switch (colourant.optics.kind) {
    case "black":
      return { ok: true, optics: colourantCountedAs(blackInk(), colourant.strengthDefinition) };
    case "white":
      // Ready-made white is already largely pigment: how much stronger a concentrate is, nobody has said.
      if (colourant.strengthDefinition !== "ready-made-ink") {
        return refused("white-not-ready-made", where, { values: { name: colourant.name } });
      }
      return { ok: true, optics: whiteInk() };
    case "masstone":
      return masstoneOptics(colourant, where);
  }
}

function mixPart(
  { itemId, massFraction }: MixComponent,
  where: string,
  shelf: Shelf,
): { ok: true; part: MixPart } | Refused {
  const found = recipeItem(shelf, itemId);
  if (found === null) return refused("component-missing", where, { detail: itemId });
  if (found.kind === "base") {
    const { strength, reference, hazePerUm, closedFraction } = found.item;
    return {
      ok: true,
      part: { kind: "base", massFraction, strength, reference, hazePerUm, closedFraction },
    };
  }
  const colourant = found.item;
  const optics = colourantOptics(colourant, where);
  if (!optics.ok) return optics;
  const part: ColourantPart = {
    kind: "colourant",
    massFraction,
    absorptionPerUm: optics.optics.absorptionPerUm,
    scatteringPerUm: optics.optics.scatteringPerUm,
    ownBaseStrength: colourant.strengthDefinition === "ready-made-ink" ? OWN_BASE_STRENGTH : null,
    family: colourant.optics.kind === "masstone" ? "tint" : colourant.optics.kind,
  };
  return { ok: true, part };
}

/**
 * The ink of a mix. Paths in problems start at the mix; codes as `mixProblems`, and of a colourant
 * `colourant-without-strength`, `masstone-impossible`, `white-not-ready-made`, or as `colourSpectrum`.
 */
export function inkMixFor(mix: Mix, shelf: Shelf): { readonly ok: true; readonly mix: InkMix } | Refused {
  return inkOf(mix, shelf, mixProblems(mix, shelf));
}

/** The ink of what was poured: as `inkMixFor`, but above a data sheet's limit too, since it is in the pot. */
export function pouredInkFor(
  mix: Pick<Mix, "recipe" | "clothCoverFraction">,
  shelf: Shelf,
): { readonly ok: true; readonly mix: InkMix } | Refused {
  const problems = mixProblems(mix, shelf).filter(({ code }) => code !== "above-data-sheet-limit");
  return inkOf(mix, shelf, problems);
}

function inkOf(
  mix: Pick<Mix, "recipe" | "clothCoverFraction">,
  shelf: Shelf,
  problems: Problem[],
): { readonly ok: true; readonly mix: InkMix } | Refused {
  const parts: MixPart[] = [];
  mix.recipe.forEach((component, index) => {
    const built = mixPart(component, `recipe[${index}].itemId`, shelf);
    if (built.ok) parts.push(built.part);
    else problems.push(...built.problems.filter((problem) => problem.code !== "component-missing"));
  });
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, mix: { parts, clothCoverFraction: mix.clothCoverFraction } };
}

/**
 * What keeps a set-up's deposit from being known, with paths inside the set-up: `mesh-missing`, `squeegee-missing`,
 * `mesh-without-opening`. A weighed set-up needs none of them.
 */
export function applicationProblems(setUp: SetUp, shelf: Shelf): Problem[] {
  if (setUp.weighed !== null) return [];
  const mesh = shelf.meshes.find((item) => item.id === setUp.meshId);
  const problems: Problem[] = [];
  if (mesh === undefined) problems.push({ code: "mesh-missing", where: "meshId", detail: setUp.meshId });
  else if (mesh.threadsPerCm * mesh.threadUm >= UM_PER_CM) {
    const { name, threadsPerCm, threadUm } = mesh;
    problems.push({
      code: "mesh-without-opening",
      where: "meshId",
      values: { name, threadsPerCm, threadUm },
    });
  }
  if (!shelf.squeegees.some((item) => item.id === setUp.squeegeeId)) {
    problems.push({ code: "squeegee-missing", where: "squeegeeId", detail: setUp.squeegeeId });
  }
  return problems;
}

/**
 * How a set-up prints at a place: the weighed deposit where there is one, otherwise mesh, strokes and blade.
 * @throws RangeError where `applicationProblems` finds any: ask it first.
 */
export function applicationFor(
  setUp: SetUp,
  place: Pick<Place, "halftoneFraction" | "smoothed">,
  shelf: Shelf,
): Application {
  const { halftoneFraction, smoothed } = place;
  const { weighed, strokeCount } = setUp;
  if (weighed !== null) {
    const { meanGsm, densityGramsPerCm3 } = weighedDeposit(weighed);
    const weighedUm = depositUmFromGsm(meanGsm, densityGramsPerCm3);
    return { depositUm: weighedUm, depositWeighed: true, halftoneFraction, smoothed };
  }
  const mesh = shelf.meshes.find((item) => item.id === setUp.meshId);
  const squeegee = shelf.squeegees.find((item) => item.id === setUp.squeegeeId);
  if (mesh === undefined || squeegee === undefined) {
    throw new RangeError(`set-up must have a mesh and a squeegee of the shelf; got ${setUp.name}`);
  }
  const woven: Mesh = {
    threadsPerCm: mesh.threadsPerCm,
    threadDiameterUm: mesh.threadUm,
    fabricThicknessUm: mesh.thicknessUm ?? undefined,
  };
  const estimatedUm = depositUm(woven, {
    strokeCount,
    harderBlade: squeegee.hard,
    transferFraction: setUp.transferFraction ?? undefined,
  });
  return { depositUm: estimatedUm, depositWeighed: false, halftoneFraction, smoothed };
}
