/** The colour of a print without its spectrum, by the band kernel: what a spread asks for dozens of times per cell. */
import { compress, labFromTristimulus, lightnessFromLuminanceRatio } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { blendValue, STEARNS_NOECHEL_CONSTANT, STEARNS_NOECHEL_FLOOR } from "../optics/fibreBlend.ts";
import { reflectanceFromAbsorptionOverScattering } from "../optics/kubelkaMunk.ts";
import { EXTERNAL_REFLECTION, INTERNAL_REFLECTION } from "../optics/saunderson.ts";
import { type BandKernel, bandKernel } from "./kernel/bandKernel.ts";
import { addressOf, CLOTH_AT, LIST_AT, residency, SPECTRUM_BYTES, SUMS_AT } from "./kernel/residentBands.ts";
import { colourOver, type Workspace, wetCloth } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { LEAVING } from "./printedReflectance.ts";
import type { WettableGarment } from "./wettableGarment.ts";

const SUMS = SUMS_AT / 8;
const BLEND_FLOOR = STEARNS_NOECHEL_FLOOR * (1 - STEARNS_NOECHEL_CONSTANT);

/** Whose wetted cloth lies in the kernel's memory, and from which wetting. */
let wettedRoom: Workspace | null = null;
let wettedAt = -1;

/** A heather's wetted cloth into the kernel's memory, as `wetInto` has it. */
function wetHeatherInKernel(kernel: BandKernel, room: Workspace, cloth: WettableGarment): void {
  const { gains } = room;
  const { massFractions, dyed, undyedKs } = cloth;
  const dyedKs = addressOf(cloth.resident) + SPECTRUM_BYTES;
  let undyed = 0;
  for (let i = 0; i < gains.length; i++) {
    if (dyed[i]) continue;
    const reflectance = reflectanceFromAbsorptionOverScattering(Math.exp(gains[i]!) * undyedKs);
    undyed += massFractions[i]! * blendValue(reflectance);
  }
  let fresh: 0 | 1 = 1;
  for (let i = 0; i < gains.length; i++) {
    if (!dyed[i]) continue;
    const factor = Math.exp(gains[i]!);
    const mass = massFractions[i]!;
    kernel.addFibre(dyedKs, CLOTH_AT, factor, mass, STEARNS_NOECHEL_CONSTANT, BLEND_FLOOR, fresh, undyed);
    fresh = 0;
  }
  kernel.remix(CLOTH_AT, STEARNS_NOECHEL_CONSTANT, BLEND_FLOOR);
}

/** D of an evenly dyed cloth, as `wetSolidInto` has it. */
function darkeningOf(room: Workspace, { dyeShares }: WettableGarment): number {
  const { gains } = room;
  let factor = 0;
  for (let i = 0; i < gains.length; i++) {
    if (dyeShares[i]! > 0) factor += dyeShares[i]! * Math.exp(gains[i]!);
  }
  return factor;
}

/** A halftone is not a sum over bands, and brightened bands are held back: for these the plain form. */
const isForKernel = (cloth: WettableGarment, film: PrintedFilm): boolean =>
  !cloth.isBrightened && film.halftoneFraction === 1;

const mustWet = (room: Workspace): boolean => wettedRoom !== room || wettedAt !== room.wetting;

function noteWetted(room: Workspace): void {
  wettedRoom = room;
  wettedAt = room.wetting;
}

/** Leaves the tristimulus values of `film` over the wetted cloth in the kernel's sums. */
function sumOver(
  kernel: BandKernel,
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number,
): void {
  let factor = 0;
  if (mustWet(room)) {
    if (cloth.dyedFibreKs === null || room.wettedAsSolid) factor = darkeningOf(room, cloth);
    else wetHeatherInKernel(kernel, room, cloth);
    noteWetted(room);
  }
  const open = 1 - closedFraction;
  const both = open + closedFraction * LEAVING;
  const inside = INTERNAL_REFLECTION * open;
  let ks: number;
  let weights: number;
  let at: number;
  let before: number;
  do {
    before = residency();
    ks = factor === 0 ? 0 : addressOf(cloth.resident);
    weights = addressOf(cloth.weights.resident);
    at = addressOf(film.resident);
  } while (residency() !== before);
  kernel.seenOver(ks, factor, CLOTH_AT, at, weights, SUMS_AT, both, inside, INTERNAL_REFLECTION);
}

/** What the closed surface mirrors into every band, and what the film leaves uncovered, are added to the sums. */
function seen(sum: number, bare: number, white: number, mirrored: number, coverFraction: number): number {
  return bare + coverFraction * (sum + mirrored * white - bare);
}

const mirroredBy = (cloth: WettableGarment, closedFraction: number): number =>
  cloth.garment.geometry === "specular-included" ? closedFraction * EXTERNAL_REFLECTION : 0;

/** Colour of `film` over the wetted cloth in `room`, as `colourOver` without the spectrum. */
export function labOver(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): Lab {
  if (bandKernel === null || !isForKernel(cloth, film)) return colourOver(room, cloth, film, closedFraction);
  sumOver(bandKernel, room, cloth, film, closedFraction);
  const { numbers } = bandKernel;
  const { bareTristimulus: bare, weights } = cloth;
  const { white } = weights;
  const mirrored = mirroredBy(cloth, closedFraction);
  const cover = film.coverFraction;
  const X = seen(numbers[SUMS]!, bare.X, white.X, mirrored, cover);
  const Y = seen(numbers[SUMS + 1]!, bare.Y, white.Y, mirrored, cover);
  const Z = seen(numbers[SUMS + 2]!, bare.Z, white.Z, mirrored, cover);
  return labFromTristimulus({ X, Y, Z }, white);
}

/**
 * Colours of `films`, which share all but their optics, over the wetted cloth in `room`, as L*, a*, b* one after the other
 * into `out`: `labOver` of each, the light of all but the first summed in one call.
 */
export function labsOver(
  out: Float64Array,
  room: Workspace,
  cloth: WettableGarment,
  films: readonly PrintedFilm[],
): void {
  const first = films[0]!;
  if (bandKernel === null || !isForKernel(cloth, first)) {
    for (let f = 0; f < films.length; f++) {
      const lab = colourOver(room, cloth, films[f]!);
      out[3 * f] = lab.L;
      out[3 * f + 1] = lab.a;
      out[3 * f + 2] = lab.b;
    }
    return;
  }
  const { closedFraction, coverFraction: cover } = first;
  if (mustWet(room)) sumOver(bandKernel, room, cloth, first, closedFraction);
  const open = 1 - closedFraction;
  const both = open + closedFraction * LEAVING;
  const inside = INTERNAL_REFLECTION * open;
  const { numbers, integers } = bandKernel;
  const count = films.length;
  let weightsAt: number;
  let before: number;
  do {
    before = residency();
    weightsAt = addressOf(cloth.weights.resident);
    for (let f = 0; f < count; f++) integers[LIST_AT / 4 + f] = addressOf(films[f]!.resident);
  } while (residency() !== before);
  bandKernel.seenOverEach(LIST_AT, count, CLOTH_AT, weightsAt, SUMS_AT, both, inside, INTERNAL_REFLECTION);
  const { bareTristimulus: bare, weights } = cloth;
  const { white } = weights;
  const mirrored = mirroredBy(cloth, closedFraction);
  for (let f = 0; f < count; f++) {
    const at = SUMS + 3 * f;
    const fx = compress(seen(numbers[at]!, bare.X, white.X, mirrored, cover) / white.X);
    const fy = compress(seen(numbers[at + 1]!, bare.Y, white.Y, mirrored, cover) / white.Y);
    const fz = compress(seen(numbers[at + 2]!, bare.Z, white.Z, mirrored, cover) / white.Z);
    out[3 * f] = 116 * fy - 16;
    out[3 * f + 1] = 500 * (fx - fy);
    out[3 * f + 2] = 200 * (fy - fz);
  }
}

/** L* alone of `labOver`. */
export function lightnessOver(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): number {
  if (bandKernel === null || !isForKernel(cloth, film))
    return colourOver(room, cloth, film, closedFraction).L;
  sumOver(bandKernel, room, cloth, film, closedFraction);
  const white = cloth.weights.white.Y;
  const mirrored = mirroredBy(cloth, closedFraction);
  const sum = bandKernel.numbers[SUMS + 1]!;
  const Y = seen(sum, cloth.bareTristimulus.Y, white, mirrored, film.coverFraction);
  return lightnessFromLuminanceRatio(Y / white);
}

/** Expected colour of `film` on `cloth`, as `printedColour` without the spectrum. */
export function printedLab(room: Workspace, cloth: WettableGarment, film: PrintedFilm): Lab {
  wetCloth(room, cloth, film);
  return labOver(room, cloth, film);
}
