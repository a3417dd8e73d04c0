/**
 * From the screen's mesh to the ink film on the garment: opening, open area, theoretical ink volume, deposit.
 * The geometry of a plain square weave is in every mesh maker's technical pages; the factors that turn the volume
 * into a deposit are defaults until a shop weighs its own prints.
 */

/** A plain-weave mesh as its label gives it. */
export interface Mesh {
  readonly threadsPerCm: number;
  readonly threadDiameterUm: number;
  /** Thickness of the woven fabric, um; left out when the label does not say. */
  readonly fabricThicknessUm?: number | undefined;
}

/** Theoretical ink volume, cm3/m2 = um, and whether the fabric thickness under it is an estimate. */
export interface InkVolume {
  readonly volumeUm: number;
  readonly thicknessEstimated: boolean;
}

/** How the print is pulled; what is left out takes the default. */
export interface Pull {
  readonly transferFraction?: number | undefined;
  readonly strokeCount?: number | undefined;
  readonly harderBlade?: boolean | undefined;
}

/** Fabric thickness over thread diameter when not given. Common practice, no source (1.5 to 1.7). */
export const THICKNESS_PER_THREAD = 1.6;

/** Share of the theoretical volume that leaves the mesh. Invented default; 0.4 to 0.8 on knit is common practice. */
export const DEFAULT_TRANSFER_FRACTION = 0.6;

/** Transfer at which ink to mix is counted until a print was weighed, so that batches do not run short. Invented. */
export const MIX_TRANSFER_FRACTION = 1;

/** What each stroke after the first multiplies the deposit by. Invented default. */
export const FURTHER_STROKE_FACTOR = 1.4;

/** What a harder blade multiplies the deposit by. Invented default; that it prints thinner is common practice. */
export const HARDER_BLADE_FACTOR = 0.85;

/** Density of cured plastisol, g/cm3. Common practice, no source: clear base 1.1 to 1.2. */
export const DEFAULT_DENSITY_GRAMS_PER_CM3 = 1.15;

/**
 * Opening w = 10^4/M - d between two threads, um (geometry of a square weave).
 * @throws RangeError for a count or thread that is not above 0, or threads that leave no opening.
 */
export function openingUm(mesh: Mesh): number {
  requireAboveZero("threadsPerCm", mesh.threadsPerCm);
  requireAboveZero("threadDiameterUm", mesh.threadDiameterUm);
  const opening = 1e4 / mesh.threadsPerCm - mesh.threadDiameterUm;
  if (!(opening > 0)) {
    throw new RangeError(
      `threadDiameterUm must be below the pitch of ${1e4 / mesh.threadsPerCm} um; got ${mesh.threadDiameterUm}`,
    );
  }
  return opening;
}

/** Open area (w / (w + d))^2, 0..1. @throws RangeError as `openingUm`. */
export function openAreaFraction(mesh: Mesh): number {
  const opening = openingUm(mesh);
  const side = opening / (opening + mesh.threadDiameterUm);
  return side * side;
}

/**
 * Theoretical ink volume, open area times fabric thickness, um (= cm3/m2). A thickness not given is taken as 1.6
 * thread diameters and the result says so. @throws RangeError as `openingUm`, and for a thickness not above 0.
 */
export function theoreticalInkVolume(mesh: Mesh): InkVolume {
  const openArea = openAreaFraction(mesh);
  const { fabricThicknessUm } = mesh;
  if (fabricThicknessUm === undefined) {
    return { volumeUm: openArea * THICKNESS_PER_THREAD * mesh.threadDiameterUm, thicknessEstimated: true };
  }
  requireAboveZero("fabricThicknessUm", fabricThicknessUm);
  return { volumeUm: openArea * fabricThicknessUm, thicknessEstimated: false };
}

/**
 * Deposit X on the garment, um: theoretical volume x transfer x 1.4 per further stroke x 0.85 for a harder blade
 * (model.md §8; ours). For ink to mix pass `transferFraction: MIX_TRANSFER_FRACTION`.
 * @param pull transferFraction above 0, at most 1; strokeCount a whole number >= 1.
 * @throws RangeError outside these ranges and as `theoreticalInkVolume`.
 */
export function depositUm(mesh: Mesh, pull: Pull = {}): number {
  const { transferFraction = DEFAULT_TRANSFER_FRACTION, strokeCount = 1, harderBlade = false } = pull;
  if (!(transferFraction > 0 && transferFraction <= 1)) {
    throw new RangeError(`transferFraction must be in 0..1, above 0; got ${transferFraction}`);
  }
  if (!(Number.isInteger(strokeCount) && strokeCount >= 1)) {
    throw new RangeError(`strokeCount must be a whole number >= 1; got ${strokeCount}`);
  }
  const strokes = FURTHER_STROKE_FACTOR ** (strokeCount - 1);
  const blade = harderBlade ? HARDER_BLADE_FACTOR : 1;
  return theoreticalInkVolume(mesh).volumeUm * transferFraction * strokes * blade;
}

/**
 * Deposit from a weighed figure, um: g/m2 over g/cm3. It replaces mesh and transfer, for colour and for ink to mix.
 * @param gsm ink on the printed area, g/m2, >= 0. @param densityGramsPerCm3 > 0.
 * @throws RangeError outside these ranges.
 */
export function depositUmFromGsm(
  gsm: number,
  densityGramsPerCm3: number = DEFAULT_DENSITY_GRAMS_PER_CM3,
): number {
  if (!(gsm >= 0 && gsm < Infinity)) throw new RangeError(`gsm must be >= 0 and finite; got ${gsm}`);
  requireAboveZero("densityGramsPerCm3", densityGramsPerCm3);
  return gsm / densityGramsPerCm3;
}

function requireAboveZero(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) {
    throw new RangeError(`${name} must be above 0 and finite; got ${value}`);
  }
}
